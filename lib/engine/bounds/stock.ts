import { people, type Brief } from "../../brief";
import { isRound } from "../../layout";
import type { Stock, Venue } from "../../venue";
import { chairsOwned } from "../../rules";
import type { Bound } from "./limits";

/** Tables that people may sit at, of the family asked for. */
export function tablesOf(venue: Venue, tables: Brief["meal"]["tables"]): readonly Stock[] {
  return venue.stock.filter((s) => s.kind === "table" && s.count > 0 && s.seats && s.seats.most > 0)
    .filter((s) => (tables === "rounds" ? isRound(s.shape) : tables === "long" ? !isRound(s.shape) : true));
}
const sum = (list: readonly Stock[]): number => list.reduce((n, s) => n + s.count * (s.seats?.most ?? 0), 0);

/**
 * Places at every table of the family that the venue owns, each at its most. A couple who sit alone use one table for two: it may be
 * any other table, so two are added; a top table of several may be of another family, so all of those are.
 */
export function tablePlaces(venue: Venue, brief: Brief): Bound {
  const { tables, top } = brief.meal;
  const asked = tablesOf(venue, tables);
  const others = tablesOf(venue, "any").filter((s) => !asked.includes(s));
  const extra = top === "pair" ? 2 : top === "one-sided" || top === "round" ? sum(others) : 0;
  return {
    code: "bound-tables", limit: sum(asked) + extra, unit: "places", source: "the venue's stock",
    data: { tables, count: asked.reduce((n, s) => n + s.count, 0), places: sum(asked), extra },
  };
}

/** Chairs that the venue owns. The stock lists all that it owns: where none are named, there are none. */
export function chairs(venue: Venue): Bound {
  const owned = chairsOwned(venue);
  return { code: "bound-chairs", limit: owned, unit: "chairs", source: "the venue's stock", data: { owned } };
}

/** Guests who need a chair of the venue's: those in wheelchairs and in high chairs do not. */
export const chairsNeeded = (brief: Brief, seated: number): number =>
  Math.max(0, seated - Math.min(brief.guests.wheelchairs, people(brief)) - brief.guests.highChairs);
