import { add, rectangle, scale, turn, type Point, type Polygon } from "../../geometry";
import { LEAST_CLEAR } from "./formula";
import { along, block, liesIn, place, surelyIn, type Frame, type Ground } from "./ground";

/** A place for one chair: row counted from the front, side of the aisle, number counted from the aisle; how far it is from the couple, mm, and how far to their side for each millimetre before them. */
export type Slot = { readonly row: number; readonly side: -1 | 1; readonly n: number; readonly at: Point; readonly bend: number; readonly body: Polygon; readonly reach: number; readonly aside: number };

export type Setting = {
  readonly frame: Frame;
  /** Distance of the couple from the wall, and of the first row's chair fronts, mm. */
  readonly couple: number;
  readonly first: number;
  readonly aisle: number;
  readonly lanes: readonly [left: number, right: number];
  /** Free floor behind the last row, mm. */
  readonly behind: number;
  readonly pitch: number;
  readonly gap: number;
  readonly chair: { readonly width: number; readonly depth: number };
  readonly curve: boolean;
};

/** Kept between a chair and a wall or column, mm. */
const OFF = 20;
/** Clear floor ahead of each chair, mm, with a hair for whole millimetres. */
export const AHEAD = Math.ceil(LEAST_CLEAR) + 1;
const MOST_ROWS = 400;
/** Rows bent about the couple stop short of standing beside them, degrees. */
const WIDEST = 48;
/** The arcs' centre lies this far behind the couple, mm: rows bend gently and each still looks to them. */
export const BEHIND = 1200;

/** Rows reach at most this many times as far back as to the side, once everyone is seated. */
const DEEPEST = 2.2;
const widthAt = (s: Setting, c: Slot): number => s.aisle / 2 + (c.n + 1) * (s.chair.width + s.gap);

/** Direction in which a chair in the frame looks, given how far round the couple it sits (degrees). */
export const bodyAt = (s: Setting, u: number, d: number, bend: number, size = s.chair): Polygon =>
  rectangle([0, 0], size.width, size.depth, -bend).map((p) => place(s.frame, u + p[0], d + p[1]));

/** What may stand at each spot before one front: settings that differ in lanes alone ask for the same spots. */
export type Stands = { readonly straight: Map<string, boolean>; readonly curved: Map<string, readonly Bent[]> };
export const noStands = (): Stands => ({ straight: new Map(), curved: new Map() });
/** A place of a bent row, and whether its floor is free. */
type Bent = Slot & { readonly u: number; readonly d: number; readonly fits: boolean };
type Wanted = { readonly enough: number; readonly stands: Stands };

function straight(s: Setting, ground: Ground, { enough, stands }: Wanted): readonly Slot[][] {
  const step = s.chair.width + s.gap;
  const may = (u: number, d: number): boolean => {
    const key = `${u} ${d}`, known = stands.straight.get(key);
    if (known !== undefined) return known;
    const d0 = d - s.chair.depth / 2, d1 = d + s.chair.depth / 2, half = s.chair.width / 2;
    // 305 mm ahead are clear of columns and pieces too, not of other rows alone.
    const fits = liesIn(ground.free, block(s.frame, u - half - OFF, u + half + OFF, d0 - OFF, d1 + OFF)) && liesIn(ground.bare, block(s.frame, u - half, u + half, d0 - AHEAD, d0));
    stands.straight.set(key, fits);
    return fits;
  };
  const rows: Slot[][] = [];
  let empty = 0, total = 0;
  for (let row = 0; row < MOST_ROWS && empty < 6; row++) {
    const d = s.first + s.chair.depth / 2 + row * s.pitch;
    const d0 = d - s.chair.depth / 2, d1 = d + s.chair.depth / 2;
    const found: Slot[] = [];
    for (const side of [-1, 1] as const) {
      const lane = side < 0 ? s.lanes[0] : s.lanes[1];
      for (let n = 0; ; n++) {
        const inner = s.aisle / 2, outer = inner + n * step + s.chair.width;
        const u = side * (outer - s.chair.width / 2);
        // The strip from the aisle to the chair's outer end, its lane and the floor behind must be this room's floor.
        const far = outer + Math.max(lane, OFF);
        if (!liesIn(ground.floor, block(s.frame, Math.min(0, side * far), Math.max(0, side * far), d0 - OFF, d1 + Math.max(s.behind, OFF)))) break;
        if (!may(u, d)) continue;
        found.push({ row, side, n, at: place(s.frame, u, d), bend: 0, body: block(s.frame, u - s.chair.width / 2, u + s.chair.width / 2, d0, d1), reach: Math.hypot(u, d - s.couple), aside: Math.abs(u) / (d - s.couple) });
      }
    }
    empty = found.length === 0 ? empty + 1 : 0;
    rows.push(found);
    total += found.length;
    if (total >= enough && d > s.couple + DEEPEST * found.reduce((m, c) => Math.max(m, widthAt(s, c)), 0)) break;
  }
  return rows;
}

/** The places of one bent row on one side, from the aisle to the widest bend. */
function bentRow(s: Setting, ground: Ground, { stands }: Wanted, row: number, side: -1 | 1): readonly Bent[] {
  const key = `${s.couple} ${s.first} ${s.aisle} ${s.gap} ${row} ${side}`, known = stands.curved.get(key);
  if (known) return known;
  const centre = s.couple - BEHIND, half = s.chair.width / 2, deep = s.chair.depth / 2;
  const radius = s.first - centre + deep + row * s.pitch, front = radius - deep;
  const deg = (r: number): number => (r * 180) / Math.PI;
  // Chairs are nearest at their front corners; the first keeps its front corner out of the aisle: front·sin − half·cos = aisle / 2.
  const step = deg(2 * Math.atan((half + s.gap / 2) / front));
  const start = deg(Math.asin(Math.min(1, s.aisle / 2 / Math.hypot(front, half))) + Math.atan2(half, front));
  const clear = { width: s.chair.width + 2 * OFF, depth: s.chair.depth + 2 * OFF };
  const out: Bent[] = [];
  for (let n = 0, bend = side * start; Math.abs(bend) <= WIDEST; n++, bend = side * (start + n * step)) {
    const [u, y] = turn([0, radius], -bend), d = centre + y;
    const before = turn([0, -(deep + AHEAD / 2)], -bend), at = place(s.frame, u, d);
    const fits = liesIn(ground.free, bodyAt(s, u, d, bend, clear))
      && liesIn(ground.bare, bodyAt(s, u + before[0], d + before[1], bend, { width: s.chair.width, depth: AHEAD }));
    out.push({ row, side, n, at, bend, body: bodyAt(s, u, d, bend), reach: Math.hypot(u, d - s.couple), aside: Math.abs(u) / (d - s.couple), u, d, fits });
  }
  stands.curved.set(key, out);
  return out;
}

function curved(s: Setting, ground: Ground, wanted: Wanted): readonly Slot[][] {
  const rows: Slot[][] = [];
  const half = s.chair.width / 2, deep = s.chair.depth / 2;
  let empty = 0, total = 0;
  for (let row = 0; row < MOST_ROWS && empty < 6; row++) {
    const found: Slot[] = [];
    for (const side of [-1, 1] as const) {
      const lane = side < 0 ? s.lanes[0] : s.lanes[1];
      // Its lane and the floor behind it lie within this of a chair.
      const about = Math.max(Math.hypot(half + Math.max(lane, OFF), deep), Math.hypot(half, deep + s.behind));
      for (const slot of bentRow(s, ground, wanted, row, side)) {
        const { u, d, bend } = slot;
        if (surelyIn(ground.floor, slot.at[0], slot.at[1], about) === true) {
          if (slot.fits) found.push(slot);
          continue;
        }
        const away = turn([1, 0], -bend);
        const shift = (side * (Math.max(lane, OFF) + s.chair.width / 2)) / 2;
        const withLane = bodyAt(s, u + away[0] * shift, d + away[1] * shift, bend, { width: s.chair.width / 2 + Math.max(lane, OFF), depth: s.chair.depth });
        if (!liesIn(ground.floor, withLane) || !liesIn(ground.floor, block(s.frame, u - half, u + half, d, d + deep + s.behind))) break;
        if (slot.fits) found.push(slot);
      }
    }
    empty = found.length === 0 ? empty + 1 : 0;
    rows.push(found);
    total += found.length;
    if (total >= 2 * wanted.enough) break;
  }
  return rows;
}

/**
 * Every chair place that the room offers with this setting, row by row from the front; past `enough` of them only as far back as a
 * well-shaped block may reach.
 */
export const slotsOf = (s: Setting, ground: Ground, wanted: Wanted): readonly Slot[][] =>
  (s.curve ? curved(s, ground, wanted).map(mirrored) : straight(s, ground, wanted)).map(withNeighbours);

/** Bent rows keep to what both sides of the aisle have: an arc with one arm looks broken. */
const mirrored = (row: readonly Slot[]): Slot[] => row.filter((c) => row.some((o) => o.side !== c.side && o.n === c.n));

/** A chair alone beyond a column looks forgotten: it is left out where the row has others. */
const withNeighbours = (row: readonly Slot[]): Slot[] =>
  row.filter((c) => row.some((o) => o.side === c.side && Math.abs(o.n - c.n) === 1) || (c.n === 0 && row.length <= 2));

/** The clear floor of a wheelchair place in the first row between two slots, its back in line with the chairs' backs. */
export function wheelchairBody(s: Setting, a: Slot, b: Slot, size: { readonly width: number; readonly depth: number }): { readonly at: Point; readonly bend: number; readonly body: Polygon } {
  const bend = (a.bend + b.bend) / 2;
  const back = turn([0, 1], -bend);
  const between: Point = [(a.at[0] + b.at[0]) / 2, (a.at[1] + b.at[1]) / 2];
  const at = add(between, along(s.frame, scale(back, s.chair.depth / 2 - size.depth / 2)));
  const local = rectangle([0, 0], size.width, size.depth, -bend);
  return { at, bend, body: local.map((p) => add(at, along(s.frame, p))) };
}

/** The floor straight ahead of a chair, so many millimetres deep. */
export function aheadOf(s: Setting, c: Slot, deep: number): Polygon {
  const way = turn([0, -(s.chair.depth + deep) / 2], -c.bend);
  const at = add(c.at, along(s.frame, way));
  const local = rectangle([0, 0], s.chair.width, deep, -c.bend);
  return local.map((p) => add(at, along(s.frame, p)));
}
