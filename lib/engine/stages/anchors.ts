import { add, bearing, distance, dot, inwardNormal, middle, pointSegmentDistance, rectangle, roundPoint, scale, sub, turn, type Point, type Segment } from "../../geometry";
import { type Item } from "../../layout";
import { canStand, floorSpots, meets, placedOf, useFloor, wallSpots, wallsOf, withPlaced, type Placed, type RoomFloor, type Spot } from "../place";
import type { Spec } from "./demand";
import { entryOf, inTheWay, weigh, type Surroundings } from "./relations";

/** A way of standing some pieces in one room, and how well they stand to one another. */
export type Stand = { readonly f: RoomFloor; readonly score: number; readonly placed: readonly Placed[]; readonly left: readonly Spec[] };

/** A piece to stand, and how: off the wall by so much, or free on the floor. */
export type Wanted = { readonly spec: Spec; readonly standOff?: number; readonly free?: boolean; readonly optional?: boolean };

const tidy = (d: number): number => Math.round((((d % 360) + 360) % 360) * 1000) / 1000;

export const sizeOf = (spec: Spec): { readonly width: number; readonly depth: number } =>
  "diameter" in spec.shape ? { width: spec.shape.diameter, depth: spec.shape.diameter } : spec.shape;

export function itemOf(spec: Spec, room: string, spot: { readonly at: Point; readonly angle: number }): Item {
  return {
    id: spec.id, kind: spec.kind, ...(spec.role ? { role: spec.role } : {}), ...(spec.also ? { also: [...spec.also] } : {}), label: spec.label,
    room, from: spec.from, shape: spec.shape, at: spot.at, angle: "diameter" in spec.shape ? 0 : spot.angle, seats: [],
  };
}

export function surroundings(f: RoomFloor): Surroundings {
  const find = (test: (i: Item) => boolean): Point | undefined => f.placed.find((p) => test(p.item))?.item.at;
  const top = f.placed.find((p) => p.item.role === "top");
  return {
    f, entry: entryOf(f),
    ...(top ? { focus: top.item.at, top, ahead: turn([0, 1], top.item.angle) } : {}), floor: find((i) => i.kind === "dance-floor"),
    music: find((i) => i.kind === "dj" || i.kind === "band"), bar: find((i) => i.kind === "bar"),
  };
}

/** Spots for one piece, best first: along the walls, or on the floor where it stands free. */
export function rankedSpots(f: RoomFloor, want: Wanted): readonly (Spot & { readonly score: number })[] {
  const size = sizeOf(want.spec), around = want.spec.around;
  const a = surroundings(f);
  const spots = want.free
    ? [...floorSpots(f, size, around, { doors: want.spec.kind !== "dance-floor", turns: size.width === size.depth ? [0] : [0, 90] }), ...(want.spec.kind === "dance-floor" ? aheadSpots(f, size, a) : [])]
    : backed(f, want, size);
  const box = f.floor[0]?.box;
  const centre: Point = box ? middle([box.minX, box.minY], [box.maxX, box.maxY]) : [0, 0];
  const reach = box ? Math.hypot(box.maxX - box.minX, box.maxY - box.minY) : 1;
  // Places stand in the floor behind a top table: no door may open there.
  const seated = want.spec.role === "top";
  const asked = want.free ? [] : namedSpots(f, want, size);
  return [...asked, ...spots].filter((s) => !seated || !s.use || !f.doorFloor.some((d) => s.use && meets(s.use, d)))
    .map((s) => ({ ...s, score: want.spec.kind === "dance-floor" ? floorScore(s, a, { centre, reach }) : weigh(want.spec.word, s, a) + preferred(f, want.spec, s) - (s.wall || want.free ? 0 : UNBACKED) }))
    .sort((x, y) => y.score - x.score || x.at[0] - y.at[0] || x.at[1] - y.at[1] || x.angle - y.angle);
}

/** Spots with a wall at the back; and, where hardly a wall is long enough, spots on the open floor as well, which count for less. */
function backed(f: RoomFloor, { spec, standOff = 0 }: Wanted, size: { readonly width: number; readonly depth: number }): readonly Spot[] {
  const walls = wallSpots(f, size, spec.around, 200, standOff);
  return walls.length >= FEW || !OPEN.has(spec.kind) ? walls : [...walls, ...floorSpots(f, size, spec.around, { turns: [0, 90, 180, 270] })];
}
/** Fewer spots at the walls than this are no choice. What may stand without a wall, where it must; and what that costs it. */
const FEW = 12, OPEN: ReadonlySet<string> = new Set(["dj", "band", "buffet"]), UNBACKED = 2;

/** The spots that the venue names for a piece, its back to the nearest wall. */
function namedSpots(f: RoomFloor, want: Wanted, size: { readonly width: number; readonly depth: number }): readonly Spot[] {
  return (want.spec.places ?? []).flatMap((p): readonly Spot[] => {
    if (!("at" in p) || (p.room !== undefined && p.room !== f.id)) return [];
    const wall = [...wallsOf(f)].sort((x, y) => pointSegmentDistance(p.at, x) - pointSegmentDistance(p.at, y))[0];
    if (!wall) return [];
    const angle = tidy(bearing(inwardNormal(wall)) - 90), body = rectangle(p.at, size.width, size.depth, angle);
    const use = useFloor(p.at, size, angle, { ...want.spec.around, back: 0 });
    return canStand(f, body, { use, slackUse: true }) ? [{ at: p.at, angle, body, use, wall, along: 0.5 }] : [];
  });
}

/** Which of the venue's places for a piece a spot is, -1 where it is none. */
export const placeIndex = (f: RoomFloor, spec: Spec, at: Point): number => (spec.places ?? []).findIndex((p) =>
  (p.room === undefined || p.room === f.id) && ("at" in p ? distance(p.at, at) <= NAMED : f.room.walls.some((w) => w.is === p.wall && pointSegmentDistance(at, [w.from, w.to]) <= WALL_REACH)));

/** What the venue's order of places and the couple's wishes add to a spot. */
function preferred(f: RoomFloor, spec: Spec, s: Spot): number {
  const k = placeIndex(f, spec, s.at);
  const wished = (spec.wishes ?? []).reduce((n, w) => {
    const [sign, where] = "near" in w ? [1, w.near] : "away-from" in w ? [-1, w["away-from"]] : [0.5, w["in-sight-of"]];
    const targets = whereIs(f, where, spec.terraces ?? []);
    return targets.length === 0 ? n : n + sign * WISHED * Math.max(0, 1 - Math.min(...targets.map((t) => pointSegmentDistance(s.at, t))) / WISH_REACH);
  }, 0);
  const named = k < 0 ? undefined : spec.places?.[k];
  return wished + (k < 0 ? 0 : PLACED - k - (named && "at" in named ? distance(named.at, s.at) / NAMED : 0));
}

/** What a named place is worth against all that a spot is weighed by, and a wish; how far each of them reaches, mm. */
const PLACED = 8, WISHED = 3, NAMED = 350, WALL_REACH = 1200, WISH_REACH = 7000;

function whereIs(f: RoomFloor, where: string, terraces: readonly string[]): readonly Segment[] {
  const walls = (is: string): readonly Segment[] => f.room.walls.filter((w) => w.is === is).map((w) => [w.from, w.to]);
  switch (where) {
    case "window": return f.room.windows.map((w) => [w.from, w.to]);
    case "door": return f.gates.map((g) => [g.from, g.to]);
    case "feature": return walls("feature");
    case "wall": return wallsOf(f);
    case "terrace": return f.gates.filter((g) => terraces.includes(g.door.leads)).map((g) => [g.from, g.to]);
    default: return f.placed.filter((p) => p.item.kind === where || p.item.role === where || p.item.also?.includes(where)).map((p) => [p.item.at, p.item.at]);
  }
}

/** Spots for a dance floor on the line on which the couple look into the room, both ways round. */
function aheadSpots(f: RoomFloor, size: { readonly width: number; readonly depth: number }, { focus, ahead }: Surroundings): readonly Spot[] {
  if (!focus || !ahead) return [];
  const angles = [...new Set([0, 90].map((by) => tidy(f.axis + by)))];
  return Array.from({ length: FLOOR_STEPS }, (_, i) => roundPoint(add(focus, scale(ahead, (i + 3) * FLOOR_STEP)))).flatMap((at) => angles.flatMap((angle): readonly Spot[] => {
    const body = rectangle(at, size.width, size.depth, angle);
    return canStand(f, body, { doors: false }) ? [{ at, angle, body, use: null, wall: null, along: 0.5 }] : [];
  }));
}
const FLOOR_STEP = 300, FLOOR_STEPS = 50;

/** What it is worth that the dance floor lies square before the couple, and what it costs that it comes up to their table or lies where guests come in; how near is square, mm. */
const SQUARE = 0.5, CLOSE = 1.2, IN_THE_WAY = 1.2, TRUE = 60;
/** Nearer than this a dance floor comes up to the couple's table, mm: no way is left between. */
export const KEPT_OFF = 1_250;

type Room = { readonly centre: Point; readonly reach: number };
/** A dance floor lies before the couple's table with a way between, and out of the way of the doors; true to the room's middle, or at the room's end. */
function floorScore(s: Spot, { f, focus, top, ahead }: Surroundings, { centre, reach }: Room): number {
  const d = Math.hypot(s.at[0] - centre[0], s.at[1] - centre[1]) / reach, door = inTheWay(s.body, f) ? IN_THE_WAY : 0;
  if (!focus || !ahead) return -d - door;
  const away = sub(s.at, focus), off = Math.abs(away[0] * ahead[1] - away[1] * ahead[0]);
  const close = top ? meets(s.body, top.body, KEPT_OFF) : false;
  return -2 * (distance(s.at, focus) / reach) - 4 * (off / reach) - 0.6 * d + (off <= TRUE && dot(away, ahead) > 0 ? SQUARE : 0) - (close ? CLOSE : 0) - door;
}

/** Keeps spots that lie apart, so that a beam holds choices and not neighbours of one choice. */
function apart<S extends Spot>(spots: readonly S[], keep: number, distance: number): readonly S[] {
  const out: S[] = [];
  for (const s of spots) {
    if (out.length >= keep) break;
    if (out.every((o) => Math.hypot(o.at[0] - s.at[0], o.at[1] - s.at[1]) >= distance || (o.angle !== s.angle && Math.hypot(o.at[0] - s.at[0], o.at[1] - s.at[1]) >= distance / 2))) out.push(s);
  }
  return out;
}

type StandOptions = { readonly beam?: number; readonly branch?: number; readonly known?: Map<string, unknown> };

/** A room and all that stands in it, as a key. */
export const standKey = (f: RoomFloor): string =>
  `${f.id} ${f.placed.map((p) => `${p.item.id}:${JSON.stringify(p.item.shape)}@${p.item.at.join()},${p.item.angle},${p.item.seats.length}`).join(" ")}`;

/**
 * Beam search over the joint places of several pieces in one room. Pre: specs in the order of their size.
 * Post: every stand holds all pieces that are not optional; pieces in `left` found no place.
 */
export function standAll(f: RoomFloor, wanted: readonly Wanted[], options: StandOptions = {}): readonly Stand[] {
  const order = [...wanted], hurried = new Set<Wanted>();
  for (;;) {
    const { states, stuck } = inOrder(f, order, options);
    // A piece that the others left no spot is stood before them, once.
    if (stuck === null || stuck === order[0] || hurried.has(stuck)) return states;
    hurried.add(stuck);
    order.unshift(...order.splice(order.indexOf(stuck), 1));
  }
}

function inOrder(f: RoomFloor, wanted: readonly Wanted[], { beam = 16, branch = 5, known }: StandOptions): { readonly states: readonly Stand[]; readonly stuck: Wanted | null } {
  let states: readonly Stand[] = [{ f, score: 0, placed: [], left: [] }];
  let key = `stand ${beam} ${branch} ${known ? standKey(f) : ""}`;
  for (const want of wanted) {
    // The same pieces in the same room have been stood before, for another ease of the tables or with a piece more to follow.
    key += ` ${JSON.stringify(want)}`;
    const before = known?.get(key);
    if (before) { states = before as readonly Stand[]; if (states.length === 0) return { states, stuck: want }; continue; }
    const next: Stand[] = [];
    for (const state of states) {
      // A floor may lie almost anywhere, and where it lies decides whether the rest finds a wall.
      const spots = want.free ? apart(rankedSpots(state.f, want), branch * 3, 600) : apart(rankedSpots(state.f, want), branch, 1500);
      for (const s of spots) {
        const p = placedOf(itemOf(want.spec, f.id, s), useFloor(s.at, sizeOf(want.spec), s.angle, { ...want.spec.around, back: Math.max(0, want.spec.around.back - 1) }));
        next.push({ f: withPlaced(state.f, p), score: state.score + s.score, placed: [...state.placed, p], left: state.left });
      }
      if (spots.length === 0 && want.optional) next.push({ ...state, score: state.score - 5, left: [...state.left, want.spec] });
    }
    states = next.sort((a, b) => b.score - a.score).slice(0, beam);
    known?.set(key, states);
    if (states.length === 0) return { states, stuck: want };
  }
  return { states, stuck: null };
}
