import { bearing, roundPoint, scale, turn, type Point, type Polygon } from "../../geometry";
import type { Item } from "../../layout";
import { choose, type Choice } from "./choose";
import { LEAST_CLEAR } from "./formula";
import { frontsOf, type Front } from "./fronts";
import { comfortCost, fieldOf, frontCost, pieceCost } from "./looks";
import { along, block, groundOf, liesIn, place, type Ground } from "./ground";
import { pathFloors, routesReached, runs, waysOf, waysReached, type PathFloors } from "./reach";
import { BEHIND, noStands, slotsOf, type Setting, type Slot } from "./slots";
import type { RowAsk, RowPlan, RowSpace } from "./types";

/** Depth kept before the first row, mm: 6 ft at least (rental trade, common practice). */
const FRONT_DEPTH = 1829;
/** Centre aisle, mm: 5 ft in comfort (common practice); never under 42 in (IBC 2018 1029.9.1). */
const AISLES = [1524, 1219, 1067] as const;
/** Past this many seats the centre aisle must be straight and clear, and two ways out be reached. */
const MANY = 50;
/** A lane at the end of the rows, mm: 36 in (IBC 2018 1029.9.1, seats on one side). */
const LANE = 914;
/** Between chairs, mm: 2 in (rental trade, common practice), and where they stand as close as they go. */
const GAP = 50, TIGHT = 5;
/** Farther from the couple than usual, mm. */
const FARTHER = [900, 1800] as const;

type Option = { readonly aisle: number; readonly lanes: readonly [number, number]; readonly behind: number; readonly couple: number; readonly first: number; readonly gap: number };

/** Ways to lay rows before one front, the most comfortable first. */
function optionsFor(ask: RowAsk, zoneStart: number): readonly Option[] {
  const out: Option[] = [];
  const least = ask.frontDepth ?? FRONT_DEPTH;
  const lanes: readonly (readonly [number, number])[] = [[LANE, LANE], [LANE, 0], [0, LANE], [0, 0]];
  const fronts = [{ couple: 900, first: Math.max(least, 900 + FRONT_DEPTH) }, { couple: 600, first: Math.max(least, 1829) }];
  // A bent row is as long as its radius lets it be: farther from the couple its ends hold more wheelchair spaces with their companions.
  if (ask.curve && ask.wheelchairs > 2) for (const more of FARTHER) fronts.push({ couple: 900, first: Math.max(least, 900 + FRONT_DEPTH) + more });
  const aisles = ask.aisle === "centre" ? AISLES : [GAP];
  for (const gap of [GAP, TIGHT]) for (const f of fronts) for (const l of lanes) for (const aisle of aisles) for (const behind of [LANE, 20]) {
    // One block without a lane at either end would shut its people in.
    if (ask.aisle !== "centre" && l[0] + l[1] === 0) continue;
    if (ask.aisle === "sides" && (l[0] === 0 || l[1] === 0)) continue;
    if (gap !== GAP && (l[0] > 0 && l[1] > 0)) continue;
    if (ask.comfortOnly && (gap !== GAP || l[0] === 0 || l[1] === 0 || aisle === 1067)) continue;
    out.push({ aisle: ask.aisle === "centre" ? aisle : gap, lanes: l, behind, couple: zoneStart + f.couple, first: zoneStart + f.first, gap });
  }
  return out;
}

/** What a plan is worth: places first, and a wheelchair place before a chair. */
const worth = (c: Choice): number => c.chairs.length + c.wheels.length * WHEEL;
const WHEEL = 1.5;

/**
 * What no plan on these slots is worth more than. A wheelchair place stands in the first row, takes two chairs' slots at least and
 * leaves one beside it to a companion.
 */
function atMost(slots: readonly (readonly Slot[])[], ask: RowAsk, first: number = slots[0]?.length ?? 0): number {
  const all = slots.reduce((n, r) => n + r.length, 0), wheels = Math.min(ask.wheelchairs, Math.floor(first / 3));
  return Math.min(all, ask.people + (WHEEL - 1) * wheels);
}

type Room = { readonly budget: { left: number }; readonly space: RowSpace; readonly ask: RowAsk; readonly ground: Ground; readonly floors: PathFloors };
type Try = { readonly front: Front; readonly setting: Setting; readonly choice: Choice; readonly zone: Polygon; readonly rank: number; readonly places: number; readonly worth: number };

/** The first depth from the wall, in steps, at which the couple's floor is clear (a hearth may stand at the wall). */
function zoneStart(front: Front, ground: Ground, depth: number): number | null {
  const steps = front.kind === "corner" ? [600, 1000, 1400] : [0, 300, 600, 900, 1200];
  for (const d of steps) {
    const roomy = block(front.frame, -1000, 1000, d + 10, d + depth - 10);
    if (liesIn(ground.floor, roomy) && liesIn(ground.free, block(front.frame, -800, 800, d + 300, d + 1200))) return d;
  }
  return null;
}

function settingOf(front: Front, o: Option, ask: RowAsk): Setting {
  const aligned = Number.isInteger(front.frame.back[0]) && Number.isInteger(front.frame.back[1]);
  // Whole millimetres may bring two rows nearer by up to 1.5; bent rows have their corners nearer than their middles.
  const slack = (aligned ? 0 : 2) + (ask.curve ? 2 + Math.ceil(ask.chair.width ** 2 / (8 * (o.first - o.couple + BEHIND))) : 0);
  return {
    frame: front.frame, couple: o.couple, first: o.first, aisle: o.aisle, lanes: o.lanes, behind: o.behind, gap: o.gap,
    pitch: Math.max(ask.rowPitch, Math.ceil(ask.chair.depth + LEAST_CLEAR)) + slack, chair: ask.chair, curve: ask.curve,
  };
}

/** Drops the chairs from which too few ways out are reached and the wheelchair places that no route reaches. */
function reachable({ space, floors, ask }: Room, s: Setting, c: Choice): Choice {
  // Left to right along each row, so that neighbours join into one strip.
  const inLine = [...c.chairs].sort((a, b) => a.row - b.row || a.side - b.side || a.side * (a.n - b.n));
  const bodies = runs(inLine.map((k, i) => ({ body: k.body, key: s.curve ? "" : `${k.row} ${k.side} ${i - k.side * k.n}` })));
  const wheels = c.wheels.map((w) => w.body);
  const look = scale(s.frame.back, -1);
  const clear = Math.max(LEAST_CLEAR, s.pitch - s.chair.depth);
  const ahead = (k: Slot): Point => {
    const way = s.curve ? bodyAhead(s, k) : look;
    const by = s.chair.depth / 2 + clear / 2;
    return [k.at[0] + way[0] * by, k.at[1] + way[1] * by];
  };
  const ways = waysOf(space.gates).length;
  const need = Math.min(ways, ask.people >= MANY ? 2 : 1);
  if (ways === 0) return c;
  const counts = waysReached(space, floors, [...bodies, ...wheels], c.chairs.map(ahead));
  const routes = routesReached(space, floors, bodies, wheels);
  return { ...c, chairs: c.chairs.filter((_, i) => (counts[i] ?? 0) >= need), wheels: c.wheels.filter((_, i) => routes[i]) };
}

/** The way a chair of a bent row looks. */
const bodyAhead = (s: Setting, k: Slot): Point => along(s.frame, turn([0, -1], -k.bend));

function tryFront(room: Room, front: Front, { enough, spare }: { readonly enough: number; readonly spare: number }): Try | null {
  const { ask, ground } = room;
  const start = zoneStart(front, ground, ask.frontDepth ?? FRONT_DEPTH);
  if (start === null) return null;
  const options = optionsFor(ask, start);
  const loosest = options[options.length - 1];
  if (!loosest) return null;
  const widest = settingOf(front, { ...loosest, lanes: [0, 0] }, ask);
  // No setting offers more chairs than the tightest: a front that cannot better what is known is left.
  const stands = noStands();
  if (atMost(slotsOf(widest, ground, { enough: Infinity, stands }), ask, Infinity) <= enough) return null;
  let best: Try | null = null;
  let rank = 0;
  for (const o of options) {
    rank++;
    // Once everyone sits, less comfort is looked at only for what spares a blemish.
    const seated: Try | null = best !== null && complete(best, ask) ? best : null, bar = Math.max(best?.worth ?? 0, enough);
    if (comfortCost(rank) >= (seated ? comfortCost(seated.rank) + seated.choice.blemish : spare)) break;
    const setting = settingOf(front, o, ask);
    const clear = block(front.frame, -990, 990, start + 10, o.first - 10);
    if (!liesIn(ground.floor, clear)) continue;
    const slots = slotsOf(setting, ground, { enough: ask.people + 2 * ask.wheelchairs, stands });
    const beats = (w: number, c: Choice | null): boolean => w > bar || (seated !== null && w === bar && (c === null || comfortCost(rank) + c.cost < comfortCost(seated.rank) + seated.choice.cost));
    if (!beats(atMost(slots, ask), null)) continue;
    const choice = choose(setting, ground, slots, { ask, pieces: room.space.pieces ?? [] });
    if (!choice || !beats(worth(choice), choice)) continue;
    if (ask.aisle === "centre" && !liesIn(ground.bare, block(front.frame, -o.aisle / 2, o.aisle / 2, o.couple, backOf(setting, choice)))) continue;
    if (room.budget.left-- <= 0) break;
    const sound = reachable(room, setting, choice);
    const places = sound.chairs.length + sound.wheels.length;
    if (!beats(worth(sound), sound) || (ask.aisle === "centre" && places > MANY && !bothSides(sound))) continue;
    const zone = block(front.frame, -1000, 1000, start, o.first), beside = pieceCost(zone, room.space.pieces ?? []);
    best = { front, setting, choice: { ...sound, cost: sound.cost + beside }, zone, rank, places, worth: worth(sound) };
  }
  return best;
}

/** So many have their centre aisle between them: chairs on one side alone, in the wing of a room, have none. */
const bothSides = (c: Choice): boolean => c.chairs.some((k) => k.side < 0) && c.chairs.some((k) => k.side > 0);

/** Distance of the last row's backs from the wall. */
const backOf = (s: Setting, c: Choice): number => s.first + (c.rows - 1) * s.pitch + s.chair.depth;
const complete = (t: Try, ask: RowAsk): boolean =>
  t.places >= Math.min(ask.people, ask.chairsLeft + t.choice.wheels.length) && t.choice.wheels.length >= ask.wheelchairs;

const tidy = (d: number): number => { const r = Math.round((((d % 360) + 360) % 360) * 1000) / 1000; return r === 360 ? 0 : r; };

function planOf(space: RowSpace, ask: RowAsk, t: Try): RowPlan {
  const { setting: s, choice } = t;
  const looking = bearing(scale(s.frame.back, -1));
  const counted = new Map<number, number>();
  const chairs = [...choice.chairs].sort((a, b) => a.row - b.row || a.side * (a.n + 1) - b.side * (b.n + 1)).map((c): Item => {
    const n = (counted.get(c.row) ?? 0) + 1;
    counted.set(c.row, n);
    const at = roundPoint(c.at), facing = tidy(looking - c.bend);
    return {
      id: `row-${c.row + 1}-chair-${n}`, kind: "chair", role: "row-seat", label: `Row ${c.row + 1}, chair ${n}`, room: space.room,
      from: { stock: ask.chair.id }, shape: { width: ask.chair.width, depth: ask.chair.depth }, at, angle: tidy(facing - 90),
      seats: [{ x: at[0], y: at[1], facing, place: "chair" }],
    };
  });
  const wheels = choice.wheels.map((w, i): Item => {
    const at = roundPoint(w.at), facing = tidy(looking - w.bend);
    return {
      id: `wheelchair-space-${i + 1}`, kind: "other", role: "wheelchair-space", label: "Wheelchair space", room: space.room,
      from: { brought: true }, shape: { width: w.width, depth: 1220 }, at, angle: tidy(facing - 90),
      seats: [{ x: at[0], y: at[1], facing, place: "wheelchair" }],
    };
  });
  const last = backOf(s, choice);
  const from = { feature: "the feature wall", window: "the window", "short wall": "the short wall", wall: "the long wall", corner: "the corner" }[t.front.kind];
  return {
    items: [...chairs, ...wheels], places: chairs.length + wheels.length, wheelchairs: wheels.length,
    front: { at: roundPoint(place(s.frame, 0, s.couple)), facing: tidy(bearing(s.frame.back)), zone: t.zone.map(roundPoint) },
    aisle: ask.aisle === "centre" ? block(s.frame, -s.aisle / 2, s.aisle / 2, s.couple, last).map(roundPoint) : null,
    aisleWidth: ask.aisle === "centre" ? s.aisle : 0, rows: choice.rows, pitch: s.pitch, field: fieldOf(choice.chairs).map(roundPoint), cost: costOf(t),
    title: `${ask.curve ? "Curved rows" : "Rows"} before ${from}`,
  };
}

/** Effort: how often the ways out are worked out for a candidate. */
const CHECKS = 96;
/** Plans handed back. */
const PLANS = 3;

/** Different fronts: another wall, or a spot well along the same one. */
const apart = (a: { readonly front: Front }, b: { readonly front: Front }): boolean =>
  Math.hypot(a.front.frame.origin[0] - b.front.frame.origin[0], a.front.frame.origin[1] - b.front.frame.origin[1]) >= 3000 ||
  a.front.frame.back[0] * b.front.frame.back[0] + a.front.frame.back[1] * b.front.frame.back[1] < 0.9;

const costOf = (t: Try): number => frontCost(t.front) + comfortCost(t.rank) + t.choice.cost;
/** Everyone seated first, then everyone in a wheelchair, then what costs least. */
const better = (ask: RowAsk) => (a: Try, b: Try): number =>
  Math.min(b.places, ask.people) - Math.min(a.places, ask.people) || b.choice.wheels.length - a.choice.wheels.length || costOf(a) - costOf(b);

/** What the second best of two different fronts costs: what costs more is neither first nor at hand where the first will not do. */
function secondOf(tries: readonly Try[], ask: RowAsk): number {
  const [first, ...rest] = tries.filter((t) => complete(t, ask)).sort((a, b) => costOf(a) - costOf(b));
  const second = rest.find((t) => first && apart(first, t));
  return second ? costOf(second) : Infinity;
}

/** What no plan before any front costs less than, within a row's pitch: the chairs lie in a circle about the couple, behind the first row's fronts. */
function leastCost(ask: RowAsk): number {
  const pitch = Math.max(ask.rowPitch, ask.chair.depth + LEAST_CLEAR), from = FRONT_DEPTH + ask.chair.depth / 2;
  const floor = (ask.chair.width + GAP) * pitch * Math.min(ask.people, ask.chairsLeft);
  let reach = from;
  while (reach * reach * Math.acos(from / reach) - from * Math.sqrt(reach * reach - from * from) < floor) reach += 100;
  return comfortCost(1) + Math.max(from, reach - pitch);
}

/**
 * Chairs in rows for a ceremony in one room: up to three plans before different fronts, the best first (everyone seated, then what is
 * the most comfortable and handsome). A plan may seat fewer than asked: `places` says how many. Each is sought when it is asked for;
 * fronts before which none costs less than `limit` are not looked at.
 */
export function* rowPlans(space: RowSpace, ask: RowAsk, limit = Infinity): Generator<RowPlan, void, undefined> {
  if (ask.people < 1 || space.floor.length === 0) return;
  const room: Room = { space, ask, ground: groundOf(space), floors: pathFloors(space), budget: { left: CHECKS } };
  const tries: Try[] = [], given: Try[] = [], least = leastCost(ask);
  for (const front of [...frontsOf(space).filter((f) => frontCost(f) + least < limit), null]) {
    const bound = front ? frontCost(front) + least : Infinity;
    for (;;) {
      const best = tries.filter((t) => given.every((g) => apart(g, t))).sort(better(ask))[0];
      // Handed out once no front that is left can better it.
      if (!best || (front && (!complete(best, ask) || costOf(best) > bound))) break;
      yield planOf(space, ask, best);
      given.push(best);
      if (given.length >= PLANS) return;
    }
    if (!front || given.some((g) => !apart(g, { front }))) continue;
    const ranked = tries.map((t) => t.worth).sort((a, b) => b - a);
    const enough = Math.min(ask.people - 1 + ask.wheelchairs * 0.5, ranked[PLANS - 1] ?? 0);
    const t = tryFront(room, front, { enough, spare: Math.min(limit, secondOf(tries, ask)) - bound + comfortCost(1) });
    if (t) tries.push(t);
  }
}

/** All of them at once. */
export const seatRows = (space: RowSpace, ask: RowAsk): readonly RowPlan[] => [...rowPlans(space, ask)];
