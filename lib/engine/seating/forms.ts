import { boxOf, turn, type Point } from "../../geometry";
import { isRound } from "../../layout";
import { PLACE } from "../../rules";
import { composedGrids } from "./grids";
import { END_WALL, groundFor, groupFooting, type Hall } from "./hall";
import type { Draft, Work } from "./drafts";
import { shareSides, sideReach } from "./seats";
import type { Family, Sides } from "./types";
import { layUnit, placesAt, type Spot, type Unit } from "./units";

export type Form = "u" | "e" | "t" | "hollow-square";
export const FORMS: readonly Form[] = ["u", "e", "t", "hollow-square"];
const LEGS: Record<Form, number> = { u: 2, e: 3, t: 1, "hollow-square": 2 };
const headsOf = (form: Form): number => (form === "hollow-square" ? 2 : 1);
/** Tables of a form with so many in its head and in each leg. */
const tablesIn = (form: Form, head: number, leg: number): number => head * headsOf(form) + LEGS[form] * leg;
/** The fewest joined tables that make a form: its head, or two, and its legs of one table each. */
export const leastTables = (form: Form): number => tablesIn(form, 1, 1);

/** Forms are weighed only up to this many tables a side. */
const MOST_SIDE = 8;

/** `inset`: how far the outer legs stand in from the ends of the head, mm. */
type Plan = { readonly form: Form; readonly head: number; readonly leg: number; readonly inset: number };

/** The tables of a form about its own middle, the head level and the legs hanging down the page. */
function spotsOf(hall: Hall, f: Family, perTable: number, plan: Plan): readonly Spot[] | null {
  if (isRound(f.shape)) return null;
  const { width: w, depth: d } = f.shape;
  const { form, head, leg, inset } = plan;
  const one = shareSides(f.shape, perTable, [true, f.ends, true, f.ends], 0);
  const side = Math.max(one[0], one[2]), end = f.ends ? Math.max(one[1], one[3]) : 0;
  const long = head * w, legs = LEGS[form];
  const outer = (long - d) / 2 - inset;
  const legXs = form === "t" ? [0] : form === "e" ? [-outer, 0, outer] : [-outer, outer];
  const between = legs === 1 ? Infinity : (2 * outer - (legs - 1) * d) / (legs - 1);
  if (between < 0 || (legs > 1 && form !== "hollow-square" && between < 2 * (sideReach(hall.chair) + 2))) return null;
  // Inside, places face one another; inside a closed square nobody could get out.
  const inner = form !== "hollow-square" && between >= hall.tableGap + Math.max(0, hall.slack);
  if (legs > 1 && form === "e" && !inner) return null;
  const out: Spot[] = [];
  const row = (y: number, sides: (i: number, x: number) => Sides): void => {
    for (let i = 0; i < head; i++) { const x = (i - (head - 1) / 2) * w; out.push({ at: [x, y], angle: 0, sides: sides(i, x) }); }
  };
  const touched = (x: number): boolean => legXs.some((l) => Math.abs(l - x) < (w + d) / 2 + sideReach(hall.chair) - 1);
  row(0, (i, x) => [side, i === head - 1 ? end : 0, touched(x) || !(inner || legs === 1) ? 0 : side, i === 0 ? end : 0]);
  for (const x of legXs) for (let k = 0; k < leg; k++) {
    // Next to the head's edge a place keeps its own width; where none is beside it, the outermost sits as near its table's end as it likes.
    const beside = (to: -1 | 1): number => (k === 0 && Math.abs(x + (to * d) / 2) < long / 2 - 1 ? Math.min(side, Math.floor(w / PLACE)) : side);
    const left = legs === 1 || inner || x < -1 ? beside(-1) : 0, right = legs === 1 || inner || x > 1 ? beside(1) : 0;
    const tip = k === leg - 1 && form !== "hollow-square" ? end : 0;
    // At 90 degrees the table's top looks right and its own right end looks down the page.
    out.push({ at: [x, d / 2 + w / 2 + k * w], angle: 90, sides: [right, tip, left, 0] });
  }
  if (form === "hollow-square") row(d + leg * w, (i) => [0, i === head - 1 ? end : 0, side, i === 0 ? end : 0]);
  // From the head's outer edge to the legs' tips, or to the other head's.
  const down = Math.round((leg * w + (form === "hollow-square" ? d : 0)) / 2);
  return out.map((s) => ({ ...s, at: [s.at[0], s.at[1] - down] }));
}

function unitOf(hall: Hall, f: Family, perTable: number, plan: Plan, by: number): Unit | null {
  const level = spotsOf(hall, f, perTable, plan);
  if (!level || isRound(f.shape)) return null;
  const spots = level.map((s) => ({ ...s, at: turn(s.at, by), angle: (s.angle + by) % 360 }));
  const places = spots.reduce((n, s) => n + s.sides.reduce((a, b) => a + b, 0), 0);
  const xs = spots.map((s) => s.at[0]), ys = spots.map((s) => s.at[1]);
  const w = Math.max(...xs) - Math.min(...xs) + f.shape.width, h = Math.max(...ys) - Math.min(...ys) + f.shape.width;
  const footing = groupFooting(hall, `${plan.form} ${plan.head} ${plan.leg} ${plan.inset} ${by} ${f.stock} ${perTable}`, f.shape, spots.map((s) => ({ at: s.at, angle: s.angle, laid: s.sides.map((n) => n > 0) })));
  return {
    family: f, count: spots.length, round: false, places, perTable, w, h, px: Math.ceil(w + hall.tableGap), py: Math.ceil(h + hall.tableGap),
    upright: false, ends: f.ends, footing, spots,
  };
}

/** Joined tables that are weighed in all, where their form is asked for and where it is not. */
const TRIES = 48, FEW = 16;
/** What legs that stand in from the ends of the head look like beside legs at its ends. */
const SET_IN = 0.25;
/** What a form off the line on which the couple look looks like beside one on it. */
const OFF_LINE = 1;

/** How far in legs may stand: not at all, or so that they are as far apart as two columns, on one axis of the hall. */
function insetsFor(hall: Hall, { form, head }: Plan, { shape }: Family, axis: 0 | 1): readonly number[] {
  if (isRound(shape) || LEGS[form] < 2 || form === "hollow-square") return [0];
  const middles = hall.solids.map((s) => { const b = boxOf(s); return axis === 0 ? (b.minX + b.maxX) / 2 : (b.minY + b.maxY) / 2; });
  const flush = head * shape.width - shape.depth, gaps = LEGS[form] - 1;
  const insets = middles.flatMap((a, i) => middles.slice(i + 1).map((b) => Math.round((flush - gaps * Math.abs(a - b)) / 2)));
  return [0, ...[...new Set(insets.filter((n) => n > 0 && n <= shape.width))].sort((a, b) => a - b)];
}

/** One U, E, T or hollow square of joined long tables, for a number of places or the most that goes. */
export function formDrafts(work: Work, f: Family, form: Form, places: number | null): readonly Draft[] {
  const { hall } = work;
  if (isRound(f.shape) || !f.joins) return [];
  const perTable = placesAt(f, work.ask, work.ask.chair);
  const plans: { plan: Plan; places: number; tables: number }[] = [];
  for (let head = 1; head <= MOST_SIDE; head++) for (let leg = 1; leg <= MOST_SIDE; leg++) {
    const tables = tablesIn(form, head, leg);
    if (tables > f.count) continue;
    const spots = spotsOf(hall, f, perTable, { form, head, leg, inset: 0 });
    if (!spots) continue;
    plans.push({ plan: { form, head, leg, inset: 0 }, tables, places: spots.reduce((n, s) => n + s.sides.reduce((a, b) => a + b, 0), 0) });
  }
  const ratio = (p: Plan): number => Math.abs(Math.log(p.head / p.leg));
  const enough = places === null ? [] : plans.filter((p) => p.places >= places).sort((a, b) => a.tables - b.tables || ratio(a.plan) - ratio(b.plan) || a.places - b.places);
  const rest = plans.filter((p) => places === null || p.places < places).sort((a, b) => b.places - a.places || a.tables - b.tables || ratio(a.plan) - ratio(b.plan));
  const spanX = Math.max(...hall.floor.map((p) => p.box.maxX)) - Math.min(...hall.floor.map((p) => p.box.minX));
  const spanY = Math.max(...hall.floor.map((p) => p.box.maxY)) - Math.min(...hall.floor.map((p) => p.box.minY));
  let tries = work.ask.form === form ? TRIES : FEW;
  for (const { plan, places: most } of [...enough.slice(0, 8), ...rest]) {
    const reaches = places !== null && most >= places;
    const found: Draft[] = [];
    for (const by of [0, 90, 180, 270]) {
      const long = plan.head * f.shape.width, down = plan.leg * f.shape.width;
      // The head's outer side keeps the wall gap; every other edge at least an end's.
      const across = long + 2 * END_WALL, deep = down + f.shape.depth + hall.wallGap + END_WALL;
      if ((by % 180 === 0 ? across : deep) > spanX || (by % 180 === 0 ? deep : across) > spanY) continue;
      const open: Point = turn([0, 1], by), before = found.length;
      // Legs at the ends of the head first; where they find no floor, as far apart as the columns are.
      for (const inset of insetsFor(hall, plan, f, by % 180 === 0 ? 0 : 1)) {
        if (found.length > before) break;
        if (tries-- <= 0) return found;
        const unit = unitOf(hall, f, perTable, { ...plan, inset }, by);
        if (!unit || (places !== null && reaches && unit.places < places)) continue;
        const ground = groundFor(hall, unit.footing), onLine = composedGrids(hall, unit, ground, 1, { keep: 1 });
        // Off the line on which the couple look only where it finds no floor on it.
        const off = onLine.length === 0 && (hall.mirrorX ?? hall.mirrorY) !== null;
        for (const s of off ? composedGrids({ ...hall, mirrorX: null, mirrorY: null }, unit, ground, 1, { keep: 1 }) : onLine) {
          const at = s.points[0];
          if (!at) continue;
          const toFocus = hall.focus ? ((hall.focus[0] - at[0]) * open[0] + (hall.focus[1] - at[1]) * open[1] > 0 ? 0.3 : 0) : 0;
          found.push({ laid: layUnit(unit, at, 1), kind: "long", form, score: s.score + toFocus - 0.6 - (inset > 0 ? SET_IN : 0) - (off ? OFF_LINE : 0) });
        }
      }
    }
    if (found.length > 0) return found.sort((a, b) => b.score - a.score).slice(0, 1);
  }
  return [];
}
