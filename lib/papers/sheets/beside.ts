import type { Element } from "../document";
import { flowThrough, type Region } from "../flow";
import { bodyOf, columns, HEAD, type Desk, type Setup } from "./page";

/** Some plans in a part of a page, and the least scale of them: millimetres of paper that a metre takes. */
export type Drawn = { readonly perMetre: number; readonly figures: readonly Element[] };
export type Beside = { readonly figures: readonly Element[]; readonly said: readonly Element[]; readonly artifacts: Desk["artifacts"]; readonly pages: number };

/** A list that may stand beside the plan, under it, or some of it here and the rest there. */
export type Rest = {
  /** What the list is and how it is to be read: under a heading, or all in one line where it runs across the plan. */
  readonly line: (to: Desk, across?: boolean) => readonly Element[];
  readonly list: (to: Desk, part: { readonly from: number; readonly to: number }) => readonly Element[];
  readonly rows: number;
  /** The least width of a column of it, mm. */
  readonly column: number;
};
/** What is said of a plan. Each part is asked for more than once: it must set the same words each time. */
export type Said = { readonly first: (to: Desk) => readonly Element[]; readonly rest?: Rest; readonly draw: (into: Region) => Drawn };

/** Letter is the narrower sheet: there the plan takes what the words can spare. */
const sideOf = (width: number): number => (width > 290 ? 96 : 86);
const GUTTER = 7;

/** A plan on one page may be drawn this much smaller than on two, and never smaller than 1:250. */
const SMALLER = 1.5, LEAST = 4;

type Page = { readonly plan: Region; readonly side: Region };

/** The plan at the left under the heading, words at its right. */
function pageOf(page: number, setup: Setup): Page {
  const body = bodyOf(page, setup.sheet);
  const side = sideOf(setup.sheet.width);
  const under = { ...body, y: body.y + HEAD, height: body.height - HEAD };
  return { plan: { ...under, width: body.width - side - GUTTER }, side: { ...under, x: body.x + body.width - side, width: side } };
}

type Set = { readonly said: readonly Element[]; readonly artifacts: Desk["artifacts"]; /** Columns of the next page that were needed. */ readonly over: number };

/** Columns of the page that follows. */
const overleaf = (rest: Rest | undefined): number => ((rest?.column ?? 0) > 80 ? 2 : 3);

/** All beside the plan; where it finds no room there, the whole list overleaf. */
function setBeside(from: number, by: Setup, { first, rest }: Said): Set {
  const { side } = pageOf(from, by);
  const set = (turn: boolean): Set => {
    const to = columns(from, by, { first: [side], count: overleaf(rest) });
    const said = [...first(to)];
    if (!rest) return { said, artifacts: to.artifacts, over: to.flow.region() };
    if (turn) to.flow.turn();
    return { said: [...said, ...rest.line(to), ...rest.list(to, { from: 0, to: rest.rows })], artifacts: to.artifacts, over: to.flow.region() };
  };
  const here = set(false);
  return rest && (here.over > 0 || rest.column > side.width) ? set(true) : here;
}

/** Less than this of the list beside the plan is not worth the break in it. */
const FEW = 4;

/** What of the list still fits beside the plan, with all that is said before it. Null where even that does not fit. */
function besideFirst(from: number, by: Setup, { first, rest }: Said & { readonly rest: Rest }): { readonly said: readonly Element[]; readonly artifacts: Desk["artifacts"]; readonly rows: number } | null {
  const { side } = pageOf(from, by);
  const most = rest.column > side.width ? 0 : rest.rows - 1;
  for (const rows of [...Array.from({ length: Math.max(0, most - FEW + 1) }, (_, i) => most - i), 0]) {
    const to = columns(from, by, { first: [side], count: 3 });
    const said = [...first(to), ...(rows > 0 ? [...rest.line(to), ...rest.list(to, { from: 0, to: rows })] : [])];
    if (to.flow.region() === 0) return { said, artifacts: to.artifacts, rows };
  }
  return null;
}

/** The list goes on under the plan, in the least height of level columns that holds it. */
function setUnder(from: number, by: Setup, what: Said): (Set & { readonly plan: Region }) | null {
  const { plan } = pageOf(from, by);
  const { rest } = what;
  const begun = rest ? besideFirst(from, by, { ...what, rest }) : null;
  if (!rest || !begun) return null;
  const n = Math.max(1, Math.floor((plan.width + GUTTER) / (rest.column + GUTTER)));
  const width = (plan.width - GUTTER * (n - 1)) / n;
  for (let height = 12; height < plan.height * 0.6; height += 2) {
    const top = plan.y + plan.height - height;
    const line: Desk = { flow: flowThrough(() => ({ ...plan, y: top, height })), measure: by.measure, artifacts: [...begun.artifacts] };
    const head = begun.rows === 0 ? rest.line(line, true) : [];
    const used = (line.flow.used()[0] ?? 0) + (head.length > 0 ? 0.6 : 0);
    const to: Desk = { ...line, flow: flowThrough((k) => ({ ...plan, x: plan.x + k * (width + GUTTER), y: top + used, width, height: height - used })) };
    const listed = rest.list(to, { from: begun.rows, to: rest.rows });
    if (to.flow.region() < n) return { said: [...begun.said, ...head, ...listed], artifacts: line.artifacts, over: 0, plan: { ...plan, height: plan.height - height - 2 } };
  }
  return null;
}

/**
 * A plan with what is said of it. All on one page where the words find room beside the plan, or under it if the plan keeps most of its
 * scale; else the words go on overleaf.
 */
export function besidePlan(from: number, by: Setup, what: Said): Beside {
  const plain = setBeside(from, by, what), whole = what.draw(pageOf(from, by).plan);
  const beside: Beside = { figures: whole.figures, said: plain.said, artifacts: plain.artifacts, pages: 1 + Math.ceil(plain.over / overleaf(what.rest)) };
  const under = plain.over === 0 ? null : setUnder(from, by, what);
  const less = under && what.draw(under.plan);
  if (!under || !less || less.perMetre * SMALLER < whole.perMetre || less.perMetre < LEAST) return beside;
  return { figures: less.figures, said: under.said, artifacts: under.artifacts, pages: 1 };
}
