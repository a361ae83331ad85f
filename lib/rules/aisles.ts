import { dot, type Point } from "../geometry";
import { depthOf, widthOf, type Item } from "../layout";
import { placed, type Context, type Raw, type SceneView } from "./context";
import { aisleInches } from "./formulas";
import { onWays } from "./maps";
import { openEnds } from "./row-length";
import { blockOf, centreAisle, lookOf, type Block } from "./rows";
import { isWheelchairSpace, runsOf, type FloorMap } from "./ways";

/** Two ends of rows leave an aisle between them from this gap on, mm; less is a gap between chairs. */
const GAP = 450;
/** Gaps whose middles lie within this of each other are one aisle, mm. */
const ONE = 500;

type Run = { readonly items: readonly Item[]; readonly lo: number; readonly hi: number; readonly along: number; readonly deep: number };
type Gap = { readonly left: Run; readonly right: Run };

/** Runs of chairs that look the block's way. */
function runsAcross(block: Block, items: readonly Item[]): readonly Run[] {
  const straight = runsOf(items).filter((r) => r.every((i) => dot(lookOf(i.seats[0]?.facing ?? 0), block.look) > 0.998));
  return straight.flatMap((list): readonly Run[] => {
    const first = list[0];
    if (!first) return [];
    const across = list.flatMap((i) => [dot(i.at, block.side) - widthOf(i.shape) / 2, dot(i.at, block.side) + widthOf(i.shape) / 2]);
    return [{ items: list, lo: Math.min(...across), hi: Math.max(...across), along: dot(first.at, block.look), deep: depthOf(first.shape) }];
  });
}

/** Neighbouring runs of one row with an aisle between them; where a wheelchair's space stands between, it is no aisle. */
function gapsOf(runs: readonly Run[], taken: readonly { readonly across: number; readonly along: number; readonly deep: number }[]): readonly Gap[] {
  const sorted = [...runs].sort((a, b) => a.lo - b.lo);
  /** The first of those that begin past a place along the row. */
  const past = (at: number): number => { let lo = 0, hi = sorted.length; while (lo < hi) { const m = (lo + hi) >> 1; if ((sorted[m]?.lo ?? Infinity) > at) hi = m; else lo = m + 1; } return lo; };
  const nextTo = (left: Run): Run | undefined => {
    for (let k = past(left.hi - 1); k < sorted.length; k++) { const r = sorted[k]; if (r && r !== left && Math.abs(r.along - left.along) < Math.max(r.deep, left.deep) / 2) return r; }
    return undefined;
  };
  return runs.flatMap((left) => {
    const right = nextTo(left);
    if (!right || right.lo - left.hi < GAP) return [];
    return taken.some((w) => w.across > left.hi && w.across < right.lo && Math.abs(w.along - left.along) < w.deep) ? [] : [{ left, right }];
  });
}

/**
 * An aisle between rows of chairs is as wide as the places that it serves ask: 42 in, 36 in under 50 places, 30 in under 15 and no
 * accessible route, and 0.2 in a place where that is more: IBC 2018 1029.9.1(4), 1029.6.1(4). A run of chairs that is open at both ends
 * is shared between the two. Rows that bend are judged by the centre aisle alone.
 */
export function aisles(v: SceneView, c: Context): readonly Raw[] {
  const block = blockOf(v.scene.items);
  return block ? onWays(v, c, (map) => aislesBy(v, c, map, block)) : [];
}

function aislesBy(v: SceneView, c: Context, map: FloorMap, block: Block): readonly Raw[] {
  const runs = runsAcross(block, v.scene.items);
  const spaces = v.scene.items.filter(isWheelchairSpace);
  const gaps = gapsOf(runs, spaces.map((i) => ({ across: dot(i.at, block.side), along: dot(i.at, block.look), deep: depthOf(i.shape) })));
  const middleOf = (g: Gap): number => (g.left.hi + g.right.lo) / 2;
  const clusters: Gap[][] = [];
  for (const g of [...gaps].sort((a, b) => middleOf(a) - middleOf(b))) {
    const last = clusters.at(-1), end = last?.at(-1);
    if (last && end && middleOf(g) - middleOf(end) <= ONE) last.push(g); else clusters.push([g]);
  }
  const shares = new Map<Run, number>();
  const share = (r: Run): number => {
    const known = shares.get(r) ?? r.items.length / Math.max(1, openEnds(v, map, r.items));
    shares.set(r, known);
    return known;
  };
  return clusters.flatMap((cluster): readonly Raw[] => {
    const served = Math.round(cluster.reduce((n, g) => n + share(g.left) + share(g.right), 0));
    const limit = Math.round(aisleInches(served, 2, spaces.length > 0) * 25.4);
    const lo = Math.max(...cluster.map((g) => g.left.hi)), hi = Math.min(...cluster.map((g) => g.right.lo));
    const width = Math.floor(hi - lo + 1e-6);
    const first = cluster[0]?.left.items.at(-1);
    // Gaps with a row across between them are no aisle; one alone may lie where a column took a chair.
    const alongs = cluster.flatMap((g) => [g.left.along, g.right.along]);
    const shut = runs.some((r) => r.along > Math.min(...alongs) + 1 && r.along < Math.max(...alongs) - 1 && r.lo < hi - 1 && r.hi > lo + 1);
    // Gaps that do not lie behind one another leave no aisle: rows without one are told of by other rules.
    if (!first || shut || cluster.length < 2 || hi - lo < GAP || width >= limit - 1) return [];
    // A centre aisle past 50 seats that is too narrow has been told of by the rule of its own.
    if (limit <= c.values.centreAisle && served >= c.values.aisleFrom && centreAisle(v, c).length > 0) return [];
    const at: Point = placed(first.at);
    return [{
      code: "aisle-width", level: "must", source: "IBC 2018 1029.9.1(4), 1029.6.1(4)", scene: v.scene.id, items: [...new Set(cluster.flatMap((g) => [g.left, g.right].flatMap((r) => r.items.map((i) => i.id))))],
      at, measured: Math.max(0, width), limit, unit: "mm", data: { width: Math.max(0, width), limit, served },
    }];
  });
}
