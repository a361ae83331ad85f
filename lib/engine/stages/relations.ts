import { add, area, bearing, distance, dot, edges, middle, pointSegmentDistance, polygonClearance, rectangle, scale, sub, turn, type Point, type Polygon, type Segment } from "../../geometry";
import { meets, type Placed, type RoomFloor, type Spot } from "../place";

/** What a spot is weighed against: 0 is worst, 1 best; each relation is one line of one table. */
export type Surroundings = {
  readonly f: RoomFloor;
  /** Where guests come in. */
  readonly entry: Point;
  /** The couple's table, and where it stands. */
  readonly top?: Placed;
  readonly focus?: Point;
  /** Where those at the couple's table look. */
  readonly ahead?: Point;
  readonly floor?: Point;
  readonly music?: Point;
  readonly bar?: Point;
};

const fall = (d: number, over: number): number => Math.max(0, 1 - d / over);
const near = (a: Point, b: Point | undefined, over: number): number => (b ? fall(distance(a, b), over) : 0);

const segments = (f: RoomFloor, is: "feature" | "plain" | "mirror"): readonly Segment[] =>
  f.room.walls.filter((w) => w.is === is).map((w) => [w.from, w.to] as const);
const atWall = (p: Point, list: readonly Segment[], over = 1500): number => (list.length === 0 ? 0 : fall(Math.min(...list.map((s) => pointSegmentDistance(p, s))), over));
const windows = (f: RoomFloor): readonly Segment[] => f.room.windows.map((w) => [w.from, w.to] as const);
const sockets = (f: RoomFloor): readonly Point[] => f.room.sockets.map((s): Point => (isPoint(s) ? s : s.at));
const isPoint = (s: RoomFloor["room"]["sockets"][number]): s is Point => Array.isArray(s);
export const socketNear = (f: RoomFloor, p: Point, over = 4000): number => {
  const all = sockets(f);
  return all.length === 0 ? 0.5 : fall(Math.min(...all.map((s) => distance(s, p))), over);
};
const doorNear = (f: RoomFloor, p: Point, over: number): number =>
  f.gates.length === 0 ? 0 : fall(Math.min(...f.gates.map((g) => distance(g.at, p))), over);
/** Centred on its wall, or on a feature of it. */
const centred = (s: Spot): number => 1 - Math.min(1, Math.abs(s.along - 0.5) * 2);
const cornered = (s: Spot): number => Math.abs(s.along - 0.5) * 2;
/** How squarely a spot faces a point. */
const faces = (s: Spot, p: Point | undefined): number => {
  if (!p || !s.wall) return 0;
  const d = sub(p, s.at);
  const n = Math.hypot(d[0], d[1]) || 1;
  const t = sub(s.wall[1], s.wall[0]);
  const wn = Math.hypot(t[0], t[1]) || 1;
  const inward: Point = [-t[1] / wn, t[0] / wn];
  return Math.max(0, dot(inward, d) / n);
};

/** Area of a ring on the right of a line through a point. */
function rightOf(ring: Polygon, at: Point, along: Point): number {
  const side = (p: Point): number => (p[1] - at[1]) * along[0] - (p[0] - at[0]) * along[1];
  const cut = edges(ring).flatMap(([a, b]): Point[] => {
    const [u, v] = [side(a), side(b)], here: Point[] = u >= 0 ? [a] : [];
    return u >= 0 === v >= 0 ? here : [...here, [a[0] + ((b[0] - a[0]) * u) / (u - v), a[1] + ((b[1] - a[1]) * u) / (u - v)]];
  });
  return cut.length < 3 ? 0 : area(cut);
}
/** A room as good as even on both sides of a spot that looks into it counts as even; a room so much fuller on one side counts for nothing. */
const EVEN = 0.12, LOPSIDED = 0.6;
/** How evenly the floor lies on both sides of who sits at a spot with their back to the wall. */
const even = (s: Spot, f: RoomFloor): number => {
  const along = turn([0, 1], s.angle), all = f.floor.reduce((n, p) => n + area(p.outer), 0);
  const off = Math.abs(2 * f.floor.reduce((n, p) => n + rightOf(p.outer, s.at, along), 0) - all) / Math.max(1, all);
  return 1 - Math.min(1, Math.max(0, off - EVEN) / (LOPSIDED - EVEN));
};

/** How deep the way in before a door is, mm; a queue before what is served, and how far it spreads beside it; how near is squeezed, edge to edge: common practice, no source. */
const WAY_IN = 1_800, QUEUE = 1_800, SPREAD = 450, SQUEEZED = 1_800;

/** The floor on which guests come in by each of their doors. */
const waysIn = (f: RoomFloor): readonly Polygon[] => f.gates.filter((g) => g.door.for.includes("guests"))
  .map((g) => rectangle(add(g.at, scale(g.inward, WAY_IN / 2)), g.width, WAY_IN, bearing(sub(g.to, g.from))));
/** Whether a body lies on one of them. */
export const inTheWay = (body: Polygon, f: RoomFloor): boolean => waysIn(f).some((w) => meets(w, body));

/** Where people queue before an oblong that looks along its angle. */
function queueAt({ at, angle, body: [a, b, c] }: Pick<Spot, "at" | "angle" | "body">): Polygon {
  const [wide, deep] = a && b && c ? [distance(a, b), distance(b, c)] : [0, 0];
  return rectangle(add(at, turn([0, (deep + QUEUE) / 2], angle)), wide + 2 * SPREAD, QUEUE, angle);
}
/** 1 where its queue and that of another piece meet, or one of them comes to the other piece. */
function crosses(s: Spot, f: RoomFloor, kinds: ReadonlySet<string>): number {
  const own = queueAt(s);
  return f.placed.some((p) => {
    if (!kinds.has(p.item.kind) || "diameter" in p.item.shape) return false;
    const other = queueAt({ at: p.item.at, angle: p.item.angle, body: p.body });
    return meets(own, other) || meets(own, p.body) || meets(other, s.body);
  }) ? 1 : 0;
}
const SERVING: ReadonlySet<string> = new Set(["bar", "buffet"]);
/** 1 hard against music, 0 where a way is left between. */
const squeezed = (s: Spot, f: RoomFloor): number => Math.max(0, ...f.placed.filter((p) => p.item.kind === "dj" || p.item.kind === "band").map((p) => fall(polygonClearance(s.body, p.body), SQUEEZED)));

type Weigh = (s: Spot, a: Surroundings) => number;

/** By the brief's word for a piece (common practice, no source). */
export const RELATIONS: Readonly<Record<string, Weigh>> = {
  dj: (s, a) => 3 * near(s.at, a.floor, 12_000) + faces(s, a.floor) + 0.8 * socketNear(a.f, s.at) + 0.3 * cornered(s) - 0.5 * doorNear(a.f, s.at, 2500) - 1.5 * near(s.at, a.focus, 4000),
  band: (s, a) => 3 * near(s.at, a.floor, 13_000) + faces(s, a.floor) + 0.8 * socketNear(a.f, s.at) + 0.4 * centred(s) - 0.5 * doorNear(a.f, s.at, 2500) - 1.5 * near(s.at, a.focus, 4500),
  bar: (s, a) => 0.8 * centred(s) - 0.8 * doorNear(a.f, s.at, 3000) - 0.6 * near(s.at, a.focus, 4000) - 1.2 * squeezed(s, a.f) - crosses(s, a.f, SERVING) + 0.2 * atWall(s.at, segments(a.f, "plain")),
  "second-bar": (s, a) => 0.6 * centred(s) - 0.8 * doorNear(a.f, s.at, 3000) - near(s.at, a.bar, 6000) - 1.2 * squeezed(s, a.f) - crosses(s, a.f, SERVING),
  buffet: (s, a) => centred(s) - 0.8 * doorNear(a.f, s.at, 2000) - 0.5 * near(s.at, a.focus, 4000) - 0.8 * squeezed(s, a.f) - crosses(s, a.f, SERVING),
  cake: (s, a) => 1.6 * atWall(s.at, segments(a.f, "feature")) + 0.6 * near(s.at, a.focus, 9000) - 0.5 * atWall(s.at, windows(a.f), 1200) - 0.6 * doorNear(a.f, s.at, 2500) + 0.4 * centred(s),
  welcome: (s, a) => 2 * near(s.at, a.entry, 7000) + 0.2 * centred(s),
  cards: (s, a) => 1.2 * near(s.at, a.entry, 9000) - 0.5 * near(s.at, a.entry, 1500) + 0.2 * centred(s),
  "guest-book": (s, a) => 1.2 * near(s.at, a.entry, 9000) - 0.5 * near(s.at, a.entry, 1500) + 0.2 * centred(s),
  photographs: (s, a) => near(s.at, a.entry, 9000) + 0.4 * atWall(s.at, segments(a.f, "plain")),
  "seating-plan": (s, a) => near(s.at, a.entry, 8000) - 0.4 * near(s.at, a.entry, 1200),
  favours: (s, a) => 0.5 * near(s.at, a.entry, 9000),
  "photo-booth": (s, a) => atWall(s.at, segments(a.f, "plain")) + 0.6 * cornered(s) + 0.5 * socketNear(a.f, s.at) - 0.5 * atWall(s.at, windows(a.f), 1200),
  appetisers: (s, a) => 0.6 * atWall(s.at, segments(a.f, "plain")) - doorNear(a.f, s.at, 3000) + 0.3 * centred(s),
  lounge: (s, a) => 0.6 * cornered(s) - 0.3 * near(s.at, a.bar, 2500) + 0.3 * near(s.at, a.bar, 6000),
  "children-corner": (s, a) => cornered(s) - near(s.at, a.music, 7000) - 0.4 * doorNear(a.f, s.at, 3000),
  "cocktail-tables": (s, a) => 0.5 * near(s.at, a.bar, 6000) - 0.8 * doorNear(a.f, s.at, 2000),
  top: (s, a) => 1.5 * atWall(s.at, segments(a.f, "feature")) + 0.8 * centred(s) + 0.8 * even(s, a.f) - 0.6 * doorNear(a.f, s.at, 3000) + 0.2 * atWall(s.at, windows(a.f), 800),
};

export const weigh = (word: string, s: Spot, a: Surroundings): number => (RELATIONS[word] ?? ((x) => 0.2 * centred(x)))(s, a);

/** Where guests come into a room: a guests' door to the outside, else a guests' door, else any door, else its middle. */
export function entryOf(f: RoomFloor): Point {
  const guests = f.gates.filter((g) => g.door.for.includes("guests"));
  const first = guests.find((g) => g.door.leads === "outside") ?? guests[0] ?? f.gates[0];
  const box = f.floor[0]?.box;
  return first ? first.at : box ? middle([box.minX, box.minY], [box.maxX, box.maxY]) : [0, 0];
}
