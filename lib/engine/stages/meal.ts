import { add, boxOf, rectangle, scale, turn, type Point, type Polygon } from "../../geometry";
import type { Item } from "../../layout";
import { axisOf } from "../../venue";
import { spend, spent, STEPS } from "../effort";
import { placedOf, type Placed, type RoomFloor } from "../place";
import { frontOf } from "../../rules";
import { reached, seatTables, type Family, type Seated, type SeatingSpace } from "../seating";
import { standAll, standKey, type Stand, type Wanted } from "./anchors";
import { familiesOf, gapsOf, remembered, type Context, type Ease } from "./context";
import type { Spec } from "./demand";
import { lanes } from "./lanes";
import { topItems, topOf, topUse, type Top } from "./top-table";

/** A room laid for the meal: what else stands in it, and its tables. */
export type MealStand = {
  readonly room: string;
  readonly anchors: readonly Placed[];
  readonly top: readonly Item[];
  readonly seated: Seated;
  readonly places: number;
  readonly ease: Ease;
  readonly score: number;
  readonly unplaced: readonly Spec[];
};

export type MealAsk = {
  readonly floor: RoomFloor;
  /** Big pieces that must stand in this room with the tables. */
  readonly specs: readonly Spec[];
  readonly guests: number;
  readonly wheelchairs: number;
  readonly withTop: boolean;
  readonly taken: ReadonlyMap<string, number>;
  readonly chairsLeft: number;
  readonly ease: Ease;
  /** Keep a lane into the room although nothing in it needs one. */
  readonly lane: boolean;
  /** Try more walls, and search where patterns fell short by more. */
  readonly hard: boolean;
};

/** Most ways of standing the big pieces that are tried in earnest for one ease of comfort. */
const VARIANTS = 3;
/** With so many ways of seating everyone in hand, no other wall is tried. */
const ENOUGH = 2;
/** Ways of standing the big pieces that are tried where all that is found stands loosely. */
const LOOKED = 2;
/** So few short of all, patterns may be helped by a search: it finds a table, not two. How hard it tries. */
const NEAR = 6, SEARCHED = 0.5;
/** The same where everything else has failed; how many ways of standing the big pieces are searched then. */
const NEARBY = 0.8, HARD_TRIES = 4;
/** Below this share of the guests in the first way of standing the big pieces, the others are not tried. */
const HOPELESS = 0.88;

/**
 * Lays one room for the meal: stands the big pieces jointly, keeps lanes to them, fills the rest with tables.
 * Pre: `floor` holds whatever stands there already. Post: best first; places may fall short of the guests, and say so.
 */
export function layMeal(ctx: Context, ask: MealAsk): readonly MealStand[] {
  const gaps = gapsOf(ctx.values, ask.ease.gaps);
  const top = ask.withTop ? topOf(ctx, gaps.wallGap) : null;
  const out: MealStand[] = [];
  const tries: Try[] = [];
  for (const stand of ctx.watch.time("anchors", () => variants(ctx, ask, top))) {
    const tops = top ? stand.placed.filter((p) => p.item.role === "top").flatMap((p) => topItems(ctx, top, ask.floor.id, p.item)) : [];
    const taken = new Map(ask.taken);
    for (const p of stand.placed) if ("stock" in p.item.from) taken.set(p.item.from.stock, (taken.get(p.item.from.stock) ?? 0) + (p.item.from.count ?? 1));
    const fixed = withTops(stand.f, tops, top);
    const spaceFor = (mode: LaneMode): SeatingSpace | null =>
      remembered(ctx, `space ${mode} ${gaps.wallGap} ${standKey(fixed)}`, () => ctx.watch.time("ways", () => spaceOf(ctx, { f: fixed, tops, mode, wallGap: gaps.wallGap })));
    for (const mode of laneModes(fixed, ask)) tries.push({ stand, tops, taken, mode, space: () => spaceFor(mode) });
  }
  const least = ask.hard ? ask.guests * NEARBY : ask.guests - NEAR;
  const full = (m: MealStand): number => Math.min(m.places, ask.guests);
  const best = (list: MealStand[]): MealStand[] => list.sort((a, b) => full(b) - full(a) || Number(b.seated.composed) - Number(a.seated.composed) || b.score - a.score);
  const settled = new Set<Stand>();
  const stands = [...new Set(tries.map((t) => t.stand))];
  for (const t of tries) {
    if (settled.has(t.stand)) continue;
    if (spent(ctx.effort) && out.length > 0) break;
    const holding = out.filter((m) => m.places >= ask.guests);
    // Tables wherever they went are looked past: another wall may take them in rows.
    if (holding.length >= ENOUGH && (stands.indexOf(t.stand) >= LOOKED || holding.some((m) => m.seated.composed))) break;
    // Another wall for the couple gains a table, not a third of the room.
    if (!ask.hard && out.length > 0 && Math.max(...out.map((m) => m.places)) < ask.guests * HOPELESS) break;
    const laid = seat(ctx, ask, t, 0);
    if (t.mode !== "open") { out.push(...laid); continue; }
    const free = laid.filter((m) => reachedIn(t, m));
    out.push(...free);
    // No lane is cut where rows leave one of themselves, nor where the floor holds too few without.
    if (free.some((m) => m.places >= ask.guests && m.seated.composed) || laid.every((m) => m.places < least)) settled.add(t.stand);
  }
  // Patterns alone fell short: the search on top of them is worth its time where they came near.
  const near = best(out)[0];
  if (!near || near.places >= ask.guests || near.places < least) return best(out);
  const cut = tries.filter((t) => t.mode !== "open");
  const order = cut.filter((t) => t.tops === near.top).concat(ask.hard ? cut.filter((t) => t.tops !== near.top) : []);
  for (const t of order.slice(0, ask.hard ? HARD_TRIES : 1)) {
    out.push(...seat(ctx, ask, t, ask.hard ? 2 : SEARCHED));
    if (spent(ctx.effort) || out.some((m) => m.places >= ask.guests)) break;
  }
  return best(out);
}

type Try = { readonly stand: Stand; readonly tops: readonly Item[]; readonly taken: ReadonlyMap<string, number>; readonly mode: LaneMode; readonly space: () => SeatingSpace | null };

/** Whether a route gets to all that guests are served from, between tables that no lane was cut through. */
function reachedIn(t: Try, m: MealStand): boolean {
  const space = t.space();
  return space !== null && reached(space, m.seated.items, m.anchors.filter((p) => SERVED.has(p.item.kind)).map((p) => frontOf(p.item)));
}

function seat(ctx: Context, ask: MealAsk, t: Try, effort: number): readonly MealStand[] {
  const topSeats = t.tops.reduce((n, i) => n + i.seats.length, 0);
  spend(ctx.effort, STEPS.tables(ask.guests, effort));
  const space = t.space();
  return space === null ? [] : seatTables(space, {
    places: Math.max(0, ask.guests - topSeats), families: families(ctx, t.taken), gaps: gapsOf(ctx.values, ask.ease.gaps), perTable: ask.ease.perTable,
    tables: ctx.brief.meal.tables, form: ctx.brief.meal.form, chair: ctx.chair, wheelchairs: ask.wheelchairs,
    chairsLeft: Math.max(0, ask.chairsLeft - topSeats),
  }, { seed: ctx.seed, effort }).map((s): MealStand => ({
    room: ask.floor.id, anchors: t.stand.placed.filter((p) => p.item.role !== "top"), top: t.tops, seated: s, places: s.places + topSeats,
    ease: ask.ease, score: t.stand.score, unplaced: t.stand.left,
  }));
}

function families(ctx: Context, taken: ReadonlyMap<string, number>): readonly Family[] {
  return familiesOf(ctx.venue, taken).map((s) => ({
    stock: s.id, name: s.name, shape: s.shape, count: s.left, places: s.seats ?? { comfort: 0, most: 0 }, ends: s.ends, joins: s.joins,
  }));
}

function variants(ctx: Context, ask: MealAsk, top: Top | null): readonly Stand[] {
  const wanted: Wanted[] = [];
  if (top) wanted.push({ spec: top.spec });
  for (const spec of ask.specs) wanted.push({ spec, free: spec.kind === "dance-floor", optional: spec.kind === "bar" });
  if (wanted.length === 0) return [{ f: ask.floor, score: 0, placed: [], left: [] }];
  const all = standAll(ask.floor, wanted, { known: ctx.known, beam: 12, branch: wanted.length > 1 ? 4 : VARIANTS });
  // Variants must differ where it matters: in the couple's wall or the floor's spot.
  const key = (s: Stand): string => s.placed.filter((p) => p.item.role === "top" || p.item.kind === "dance-floor").map((p) => `${p.item.angle}:${Math.round(p.item.at[0] / 1500)}:${Math.round(p.item.at[1] / 1500)}`).join("|");
  const seen = new Set<string>();
  const out: Stand[] = [];
  for (const s of all) {
    if (out.length >= (ask.hard ? 2 * VARIANTS : VARIANTS)) break;
    if (seen.has(key(s))) continue;
    seen.add(key(s));
    out.push(s);
  }
  return out;
}

/** The top table's own places and the floor behind them, in place of the bare outline it was stood by. */
function withTops(f: RoomFloor, tops: readonly Item[], top: Top | null): RoomFloor {
  const others = f.placed.filter((p) => p.item.role !== "top");
  const whole = f.placed.find((p) => p.item.role === "top");
  if (!top || !whole) return f;
  const use = topUse(top, whole.item.at, whole.item.angle);
  return { ...f, placed: [...others, ...tops.map((i, k) => placedOf(i, k === 0 ? use : null))] };
}

type LaneMode = "none" | "open" | "rim" | "middle";
/** What a route must reach. */
const SERVED: ReadonlySet<string> = new Set(["bar", "buffet", "dance-floor"]);
/**
 * Lanes are kept to what guests are served from, where the tables leave none of themselves ("open"); into the room itself only where the
 * attempt asks for one, for wheels.
 */
function laneModes(f: RoomFloor, ask: MealAsk): readonly LaneMode[] {
  const served = f.placed.some((p) => SERVED.has(p.item.kind));
  return served ? (ask.lane ? ["rim", "middle"] : ["open", "rim", "middle"]) : ask.lane ? ["middle"] : ["none"];
}

type SpaceAsk = { readonly f: RoomFloor; readonly tops: readonly Item[]; readonly mode: LaneMode; readonly wallGap: number };
function spaceOf(ctx: Context, { f, tops, mode, wallGap }: SpaceAsk): SeatingSpace | null {
  const targets: Point[] = f.placed.filter((p) => SERVED.has(p.item.kind)).map((p) => frontPoint(p));
  const bare = mode === "none" || mode === "open";
  if (!bare && targets.length === 0) targets.push(...deepPoints(f));
  const ways = bare ? [] : lanes(f, targets, { middle: mode === "middle" });
  if (!ways) return null;
  const solids = [...f.room.obstacles.map((o) => o.outline), ...f.placed.filter((p) => !p.walkable && p.item.role !== "top").map((p) => (p.item.kind === "table" ? grown(p.item, Math.max(0, ctx.values.most.tableGap - wallGap)) : p.body))];
  const zones = [
    ...f.room.keepClear.map((k) => ({ polygon: k.outline, tableClear: 0 })),
    ...f.doorFloor.map((polygon) => ({ polygon, tableClear: 0 })),
    ...f.placed.filter((p) => p.walkable).map((p) => ({ polygon: p.body, tableClear: 483 })),
    ...f.placed.flatMap((p) => (p.use && p.item.role !== "top" ? [{ polygon: p.use, tableClear: 0 }] : [])),
    ...f.placed.flatMap((p) => (p.use && p.item.role === "top" ? [{ polygon: p.use, tableClear: 0 }] : [])),
    ...ways.map((polygon) => ({ polygon, tableClear: 484 })),
  ];
  const head = tops[Math.floor(tops.length / 2)];
  return {
    room: f.id, floor: f.floor, solids, zones, axis: axisOf(f.room.outline), fixed: tops,
    ...(head ? { focus: head.at, mirror: { at: head.at, angle: (head.angle + 90) % 180 } } : {}),
    exits: f.gates.map((g) => add(g.at, scale(g.inward, 700))),
  };
}

/** A table without places still keeps the gap of two tables from one whose place faces it. */
function grown(i: Item, by: number): Polygon {
  const [w, d] = "diameter" in i.shape ? [i.shape.diameter, i.shape.diameter] : [i.shape.width, i.shape.depth];
  return rectangle(i.at, w + 2 * by, d + 2 * by, i.angle);
}

/** Where one stands to be served: before the piece's front, clear of it by half a route. */
function frontPoint(p: Placed): Point {
  const depth = "diameter" in p.item.shape ? p.item.shape.diameter : p.item.shape.depth;
  return add(p.item.at, turn([0, p.walkable ? 0 : depth / 2 + 500], p.item.angle));
}

/** A room without anything to be served from still wants a lane into it, for wheels: to its middle. */
function deepPoints(f: RoomFloor): readonly Point[] {
  const box = boxOf(f.floor.flatMap((p) => p.outer));
  return [[(box.minX + box.maxX) / 2, (box.minY + box.maxY) / 2]];
}
