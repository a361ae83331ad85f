import { bearing, boundaryDistance, polygonShape, clearance, sub, turn, type Point } from "../../geometry";
import { footprintPolygon, isRound, seatPolygon, type Item, type Layout, type Seat } from "../../layout";
import { chairOf } from "../../rules";
import { composedStart, moveSeats, offEdge, ringMost, ringSeats, ringTuck, sideSeats, TUCK } from "../seating/seats";
import type { Sides } from "../seating";
import { mapPiece, sceneOf } from "./edit";
import { addsNone, type Bench } from "./judge";

type Limits = { readonly comfort: number; readonly most: number; readonly ends: boolean };

/** How many a table takes, by its stock; what stands without stock keeps what it has. */
export function limitsOf(b: Bench, t: Item): Limits {
  const id = "stock" in t.from ? t.from.stock : null, count = "stock" in t.from ? (t.from.count ?? 1) : 1;
  const stock = b.venue.stock.find((s) => s.id === id);
  return { comfort: (stock?.seats?.comfort ?? t.seats.length) * count, most: (stock?.seats?.most ?? t.seats.length) * count, ends: stock?.ends ?? false };
}

const SIDE = [90, 180, 270, 0] as const;
/** Which side of a straight table a place is on: 0 top, 1 right, 2 bottom, 3 left; by the way its sitter looks. */
function sideOf(t: Item, s: Seat): number {
  const look = (((s.facing - t.angle) % 360) + 360) % 360;
  return SIDE.findIndex((d) => Math.min(Math.abs(look - d), 360 - Math.abs(look - d)) < 45);
}

/** The chairs of a round spread over what a wheelchair's place leaves of its rim; fewer than asked for where they do not fit. */
function besideWheel(t: Item, wheel: Seat, chairs: number, chair: { readonly width: number; readonly depth: number }): readonly Seat[] | null {
  if (!isRound(t.shape)) return null;
  const r = t.shape.diameter / 2, way = bearing(sub([wheel.x, wheel.y], t.at));
  const floor = polygonShape(seatPolygon(wheel));
  for (let first = 20; first <= 120; first += 2) {
    const step = chairs > 1 ? (360 - 2 * first) / (chairs - 1) : 0;
    if (step < 0) return null;
    const tuck = chairs > 1 ? ringTuck(t.shape.diameter, Math.max(3, 360 / step), chair) : TUCK;
    const off = r + offEdge(tuck, chair);
    const seats = Array.from({ length: chairs }, (_, i): Seat => {
      const a = way + (chairs === 1 ? 180 : first + i * step), p = turn([off, 0], a);
      return { x: Math.round(t.at[0] + p[0]), y: Math.round(t.at[1] + p[1]), facing: (((a + 180) % 360) + 360) % 360, place: "chair" };
    });
    const shapes = seats.map((s) => polygonShape(seatPolygon(s, chair)));
    if (shapes.some((s, i) => clearance(s, floor) < 3 || shapes.some((o, k) => k > i && clearance(s, o) < 0))) continue;
    return [wheel, ...seats];
  }
  return null;
}

/** Ways to lay a table for `places`, the most even first. Sides that have no place now get none, ends that are laid keep theirs. */
export function relaid(b: Bench, t: Item, places: number): readonly Item[] {
  const chair = chairOf(b.venue), { shape } = t;
  const wheels = t.seats.filter((s) => s.place === "wheelchair");
  if (isRound(shape)) {
    const [wheel, second] = wheels;
    if (second) return [];
    if (wheel) { const seats = besideWheel(t, wheel, places - 1, chair); return seats ? [{ ...t, seats }] : []; }
    if (places > ringMost(shape.diameter, chair)) return [];
    const first = t.seats[0];
    const lean = first ? bearing(sub([first.x, first.y], t.at)) - composedStart(t.seats.length) : 0;
    const starts = [...new Set([composedStart(places) + lean, composedStart(places)].map((d) => ((d % 360) + 360) % 360))];
    return starts.map((start) => ({ ...t, seats: moveSeats(ringSeats(shape.diameter, places, chair, start), t.at, 0) }));
  }
  const now = [0, 1, 2, 3].map((k) => t.seats.filter((s) => sideOf(t, s) === k));
  const lengths = [shape.width, shape.depth, shape.width, shape.depth];
  const long = shape.width >= shape.depth ? [0, 2] : [1, 3], short = long[0] === 0 ? [1, 3] : [0, 2];
  const more = places > t.seats.length, by = Math.abs(places - t.seats.length);
  const both = long.every((k) => (now[k]?.length ?? 0) > 0);
  const open = (k: number): boolean => !(now[k] ?? []).some((s) => s.place === "wheelchair") &&
    ((now[k]?.length ?? 0) > 0 || (more && (limitsOf(b, t).ends ? short.includes(k) : false)) || (more && !both && long.includes(k) && t.role === "dining"));
  const counts = now.map((s) => s.length);
  const options: Item[] = [];
  for (const prefer of [long, short]) {
    const n = [...counts];
    for (let i = 0; i < by; i++) {
      const room = (k: number): number => (lengths[k] ?? 0) / ((n[k] ?? 0) + (more ? 1 : 0));
      const choice = [0, 1, 2, 3].filter((k) => open(k) && (more ? room(k) >= chair.width : (n[k] ?? 0) > 0))
        .sort((x, y) => Number(prefer.includes(y)) - Number(prefer.includes(x)) || (more ? room(y) - room(x) : room(x) - room(y)) || y - x)[0];
      if (choice === undefined) { n.length = 0; break; }
      n[choice] = (n[choice] ?? 0) + (more ? 1 : -1);
    }
    if (n.length === 0) continue;
    const seats = [0, 1, 2, 3].flatMap((k): readonly Seat[] => {
      if (n[k] === counts[k]) return now[k] ?? [];
      const only: Sides = [k === 0 ? n[k] ?? 0 : 0, k === 1 ? n[k] ?? 0 : 0, k === 2 ? n[k] ?? 0 : 0, k === 3 ? n[k] ?? 0 : 0];
      return moveSeats(sideSeats(shape, only, chair), t.at, t.angle);
    });
    options.push({ ...t, seats });
  }
  return options;
}

const isDining = (t: Item): boolean => t.kind === "table" && t.seats.length > 0 && t.role !== "work" && (t.role !== "top" || isRound(t.shape));
export const diningOf = (layout: Layout): readonly Item[] => (sceneOf(layout, "meal")?.items ?? []).filter((t) => isDining(t) && t.seats.length > 0);
export const placesAtMeal = (layout: Layout): number => (sceneOf(layout, "meal")?.items ?? []).filter((i) => i.role !== "work").reduce((n, i) => n + i.seats.length, 0);

/** Lays a table for another number of places, in every part of the day in which it stands there; null where its chairs find no floor. */
export function lay(b: Bench, layout: Layout, t: Item, places: number): Layout | null {
  for (const next of relaid(b, t, places)) {
    const trial = mapPiece(layout, t, (i) => ({ ...i, seats: next.seats }));
    if (addsNone(b, layout, trial, (f) => f.items.includes(t.id) && f.code !== "alone")) return trial;
  }
  return null;
}

/** The most that a table is laid for while others have room: what the brief asks, then what the stock takes. */
function steps(b: Bench, t: Item): readonly number[] {
  const { comfort, most } = limitsOf(b, t), asked = b.brief.meal.perTable;
  return typeof asked === "number" ? [Math.min(asked, most), most] : asked === "most" ? [most] : [Math.min(comfort, most), most];
}

/** Adds places at the tables that stand, in comfort first, then up to what they take; the roomiest table first. */
export function addChairs(b: Bench, start: Layout, need: number): Layout {
  let layout = start, left = need;
  const stuck = new Set<string>();
  for (const step of [0, 1]) for (;;) {
    if (left <= 0) return layout;
    const room = (t: Item): number => (steps(b, t)[step] ?? 0) - t.seats.length;
    const t = [...diningOf(layout)].filter((i) => room(i) > 0 && !b.fixed.has(i.id) && !stuck.has(i.id)).sort((x, y) => room(y) - room(x) || (x.id < y.id ? -1 : 1))[0];
    if (!t) break;
    const next = lay(b, layout, t, t.seats.length + 1);
    if (next) { layout = next; left--; } else stuck.add(t.id);
  }
  return layout;
}

/** Takes places that are over from the fullest tables; none is left with one. */
export function takeChairs(b: Bench, start: Layout, over: number): Layout {
  let layout = start, left = over;
  const stuck = new Set<string>();
  while (left > 0) {
    const full = (t: Item): number => t.seats.length / Math.max(1, limitsOf(b, t).comfort);
    const t = [...diningOf(layout)].filter((i) => i.seats.length > 2 && !b.fixed.has(i.id) && !stuck.has(i.id)).sort((x, y) => full(y) - full(x) || (x.id < y.id ? -1 : 1))[0];
    if (!t) return layout;
    const next = lay(b, layout, t, t.seats.length - 1);
    if (next) { layout = next; left--; } else stuck.add(t.id);
  }
  return layout;
}

const UNDER = 1220 / 2 - 432;
/** A wheelchair's place in the stead of a chair: 17 in of its floor lie beneath the table (2010 ADA 306.2). */
export function wheelSeat(t: Item, s: Seat): Seat {
  const off = isRound(t.shape) ? Math.hypot(s.x - t.at[0], s.y - t.at[1]) - t.shape.diameter / 2 : boundaryDistance(footprintPolygon(t), [s.x, s.y]);
  const out: Point = turn([-1, 0], s.facing);
  return { x: Math.round(s.x + out[0] * (UNDER - off)), y: Math.round(s.y + out[1] * (UNDER - off)), facing: s.facing, place: "wheelchair" };
}

/** Turns chairs of tables into wheelchairs' places that a route reaches, spread over the tables; stops where none is left. */
export function addWheels(b: Bench, start: Layout, need: number): Layout {
  let layout = start;
  const chair = chairOf(b.venue);
  const short = (l: Layout): number => Math.max(0, (b.brief.guests.adults + b.brief.guests.children) - placesAtMeal(l));
  for (let left = need; left > 0; left--) {
    const tables = [...diningOf(layout)].filter((t) => !b.fixed.has(t.id) && !t.seats.some((s) => s.place === "wheelchair"))
      .sort((x, y) => y.seats.length - limitsOf(b, y).most - (x.seats.length - limitsOf(b, x).most) || (x.id < y.id ? -1 : 1)).reverse();
    let found: Layout | null = null;
    for (const t of tables) {
      const options = t.seats.map((s, k): Item => {
        const wheel = wheelSeat(t, s), floor = polygonShape(seatPolygon(wheel));
        const round = besideWheel(t, wheel, t.seats.length - 1, chair);
        return { ...t, seats: round ?? [wheel, ...t.seats.filter((o, i) => i !== k && clearance(floor, polygonShape(seatPolygon(o, chair))) >= 1)] };
      }).sort((x, y) => y.seats.length - x.seats.length);
      for (const o of options) {
        if (o.seats.length < 2) continue;
        const trial = mapPiece(layout, t, (i) => ({ ...i, seats: o.seats }));
        if (!addsNone(b, layout, trial, (f) => (f.items.includes(t.id) && f.code !== "alone") || f.code === "route")) {
          continue;
        }
        if (short(trial) > short(layout)) { const filled = addChairs(b, trial, short(trial)); if (short(filled) > short(layout)) continue; found = filled; } else found = trial;
        break;
      }
      if (found || b.budget.left <= 0) break;
    }
    if (!found) return layout;
    layout = found;
  }
  return layout;
}
