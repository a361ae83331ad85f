import { CHAIR, isRound, type Style } from "../../layout";
import type { Stock } from "../../venue";
import { tablesOf } from "../bounds";
import type { Place } from "./place";
import type { Family } from "../seating";

/** Tables of one kind that may be laid where stock is left out: past any room's need. */
const ANY = 600;

export function familiesFor(place: Place, style: Style): readonly Family[] {
  const all = tablesOf(place.venue, style === "rounds" ? "rounds" : style === "mixed" ? "any" : "long");
  const rounds = all.filter((s) => isRound(s.shape)).length;
  // Mixed is a style of its own only where there is something to mix.
  if (style === "mixed" && (rounds === 0 || rounds === all.length)) return [];
  return all.map((s) => ({
    stock: s.id, name: s.name, shape: s.shape, count: place.options.anyStock ? ANY : s.count,
    places: s.seats ? { comfort: s.seats.comfort, most: s.seats.most } : { comfort: 0, most: 0 }, ends: s.ends, joins: s.joins,
  }));
}

/** The chair that the venue owns most of, with how many chairs it has in all. */
export function chairFor({ venue }: Place): { readonly id: string; readonly width: number; readonly depth: number; readonly count: number } {
  const chairs = venue.stock.filter((s) => s.kind === "chair").sort((a, b) => b.count - a.count || (a.id < b.id ? -1 : 1));
  const first: Stock | undefined = chairs[0];
  if (!first) return { id: "chair", ...CHAIR, count: 0 };
  const size = isRound(first.shape) ? { width: first.shape.diameter, depth: first.shape.diameter } : { width: first.shape.width, depth: first.shape.depth };
  return { id: first.id, ...size, count: first.count };
}
