import { add, roundPoint, scale, turn, type Point } from "../../geometry";
import type { Item, Seat } from "../../layout";
import type { Stock } from "../../venue";
import { useFloor, type Spot } from "../place";
import type { Context } from "./context";
import type { Spec } from "./demand";

/** The couple's table to stand: its outline as one spec, and how many places it gives. */
export type Top = { readonly spec: Spec; readonly stock: Stock; readonly parts: number; readonly places: number; readonly wallGap: number };

/** Width of a place at a table laid on one side, mm: 24 in a person (a venue's own head-table page, second-hand). */
const PLACE = 610;

/**
 * The top table that the brief asks for, from what the venue owns; null where it asks for none or for one of the rounds.
 * Pair: the smallest oblong table that takes two side by side, else the smallest table. One-sided: a run of joined long tables.
 */
export function topOf(ctx: Context, wallGap: number): Top | null {
  const { meal } = ctx.brief;
  if (meal.service === "none" || meal.top === "none" || meal.top === "round") return null;
  const tables = ctx.venue.stock.filter((s) => s.kind === "table" && s.count > 0);
  const around = { front: 900, back: wallGap, side: 450 };
  const spec = (shape: Spec["shape"], stock: Stock, count: number): Spec => ({
    id: "top", kind: "table", role: "top", label: meal.top === "pair" ? "Couple" : "Top table", from: count > 1 ? { stock: stock.id, count } : { stock: stock.id },
    shape, around, uses: ["dining"], word: "top", others: [],
  });
  if (meal.top === "pair") {
    const oblong = tables.filter((s) => !("diameter" in s.shape) && s.shape.width >= 2 * 500 && s.shape.depth >= 450);
    const stock = oblong.sort((a, b) => rank(a) - rank(b) || (a.id < b.id ? -1 : 1))[0]
      ?? tables.filter((s) => "diameter" in s.shape && s.shape.diameter >= 700).sort((a, b) => span(a) - span(b))[0];
    return stock ? { spec: spec(stock.shape, stock, 1), stock, parts: 1, places: 2, wallGap } : null;
  }
  const places = meal.topPlaces ?? 8;
  const runs = tables.filter((s) => !("diameter" in s.shape) && s.shape.depth >= 450 && (s.joins || s.shape.width >= places * PLACE))
    .map((s) => ({ s, parts: "diameter" in s.shape ? 0 : Math.ceil(places / Math.max(1, Math.floor((s.shape.width + 1) / PLACE))) }))
    .filter(({ s, parts }) => parts <= s.count)
    .sort((a, b) => a.parts * span(a.s) - b.parts * span(b.s) || b.s.count - a.s.count || (a.s.id < b.s.id ? -1 : 1));
  const best = runs[0];
  if (!best || "diameter" in best.s.shape) return null;
  return { spec: spec({ width: best.parts * best.s.shape.width, depth: best.s.shape.depth }, best.s, best.parts), stock: best.s, parts: best.parts, places, wallGap };
}

const span = (s: Stock): number => ("diameter" in s.shape ? s.shape.diameter : s.shape.width);
/** Two people want 1.2 m and no more; a table that many guests could sit at is spared for them. */
const rank = (s: Stock): number => Math.abs(span(s) - 1200) + (s.seats && s.seats.most > 4 ? 400 : 0);

/** The tables and places of a top table standing at a spot: all places on the side of the wall, looking into the room. */
export function topItems(ctx: Context, top: Top, room: string, spot: Pick<Spot, "at" | "angle">): readonly Item[] {
  const shape = top.stock.shape;
  const width = "diameter" in shape ? shape.diameter : shape.width, depth = "diameter" in shape ? shape.diameter : shape.depth;
  const off = Math.max(ctx.chair.depth / 2 - 120, 100);
  const rows = alongRun(top, width, ctx.chair.width);
  return Array.from({ length: top.parts }, (_, i) => {
    const middle = (i - (top.parts - 1) / 2) * width;
    const row = (rows[i] ?? []).map((along): Seat => {
      const [x, y] = roundPoint(add(spot.at, turn([along, -(depth / 2 + off)], spot.angle)));
      return { x, y, facing: ((spot.angle + 90) % 360 + 360) % 360, place: "chair" };
    });
    return {
      id: top.parts === 1 ? "top" : `top-${i + 1}`, kind: "table", role: "top", label: top.spec.label, room, from: { stock: top.stock.id }, shape,
      at: roundPoint(add(spot.at, turn([middle, 0], spot.angle))), angle: "diameter" in shape ? 0 : spot.angle,
      seats: "diameter" in shape ? [...roundSeats(spot, depth / 2, off)] : row,
    };
  });
}

/** What a chair keeps off a joint beside its own half width, mm; rounds of evening out, each halving what is uneven between neighbours. */
const OFF_JOINT = 5, EVENED = 120;

/**
 * Where the places of each table of a run lie along it, mm from the run's middle: as evenly as can be over the whole run. Each table has
 * its own places, since a chair across the joint would stand under two tables.
 */
function alongRun(top: Top, width: number, chair: number): readonly (readonly number[])[] {
  const counts = shared(top), owner = counts.flatMap((n, i) => Array.from({ length: n }, () => i));
  const pitch = Math.min((width * top.parts) / top.places, top.places === 2 ? 600 : 750), play = Math.max(0, width / 2 - chair / 2 - OFF_JOINT);
  const within = (x: number, k: number): number => {
    const middle = ((owner[k] ?? 0) - (top.parts - 1) / 2) * width;
    return Math.max(middle - play, Math.min(middle + play, x));
  };
  let xs = owner.map((_, k) => within((k - (top.places - 1) / 2) * pitch, k));
  for (let round = 0; round < EVENED; round++) {
    // Half way to where both neighbours would have each, so that mirror images stay so.
    xs = xs.map((x, k) => within((x + ((xs[k - 1] ?? (xs[k + 1] ?? x) - 2 * pitch) + (xs[k + 1] ?? (xs[k - 1] ?? x) + 2 * pitch)) / 2) / 2, k));
  }
  return counts.map((_, i) => xs.filter((_, k) => owner[k] === i));
}

/** Places of each table of a run: shared out evenly and alike on both sides of its middle, where the number lets them. */
function shared(top: Top): readonly number[] {
  const base = Math.floor(top.places / top.parts), rest = top.places - base * top.parts, middle = (top.parts - 1) / 2;
  const order = Array.from({ length: top.parts }, (_, k) => k).sort((a, b) => Math.abs(a - middle) - Math.abs(b - middle) || a - b)
    .filter((k) => k !== middle || rest % 2 === 1);
  return Array.from({ length: top.parts }, (_, i) => base + (order.slice(0, rest).includes(i) ? 1 : 0));
}

function roundSeats(spot: Pick<Spot, "at" | "angle">, radius: number, off: number): readonly Seat[] {
  return [-35, 35].map((d) => {
    const out = turn([0, -1], spot.angle + d);
    const [x, y] = roundPoint(add(spot.at, scale(out, radius + off)));
    return { x, y, facing: Math.round((((spot.angle + d + 90) % 360 + 360) % 360) * 1000) / 1000, place: "chair" as const };
  });
}

export const topUse = (top: Top, at: Point, angle: number) =>
  useFloor(at, "diameter" in top.spec.shape ? { width: top.spec.shape.diameter, depth: top.spec.shape.diameter } : top.spec.shape, angle, top.spec.around);
