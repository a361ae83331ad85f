import type { Item } from "../layout";
import type { Venue } from "../venue";

/** Chairs that the venue owns, of every kind. */
export const chairsOwned = (venue: Pick<Venue, "stock">): number => venue.stock.filter((s) => s.kind === "chair").reduce((n, s) => n + s.count, 0);

/** Chairs of the venue's that stand among some pieces: those of rows, and one for each place at a table that takes one. */
export function chairsAmong(venue: Pick<Venue, "stock">, items: readonly Item[]): number {
  const kinds = new Set(venue.stock.filter((s) => s.kind === "chair").map((s) => s.id));
  return items.reduce((n, i) => n +
    ("stock" in i.from && kinds.has(i.from.stock) ? (i.from.count ?? 1) : i.kind === "table" ? i.seats.filter((s) => s.place === "chair").length : 0), 0);
}
