import { area } from "../../geometry";
import { depthOf, isRound, widthOf, type Style } from "../../layout";
import { chairsOwned, ruleValues, type LoadKind } from "../../rules";
import { axisOf, siteOf, type Room, type Venue } from "../../venue";
import { areaText } from "../../words/lengths";
import { exitsFrom, roomBound, waysNeeded } from "./limits";
import { olerRounds } from "./oler";
import { tablesOf } from "./stock";

export type Ceiling = { readonly seats: number; readonly because: string };
export type CeilingOptions = {
  /** The room without its standing furniture. The bounds count none of it, so nothing changes: kept for the reader. */
  readonly bare?: boolean;
  /** Leave out how many tables and chairs the venue owns. */
  readonly anyStock?: boolean;
};

export const kindOf = (style: Style): LoadKind => (style === "rows" ? "rows" : style === "standing" ? "standing" : "tables");

/**
 * A number of seats that no layout of a style passes in a room: the least of the posted figure (or the area's share where none is
 * posted), one person to 0.65 m2, the ways out that can be reached, the stock, and for rounds the packing bound.
 */
export function ceilingOf(venue: Venue, room: Room, drape: string | null, style: Style, options: CeilingOptions = {}): Ceiling {
  const site = siteOf(venue, drape === null ? [] : [drape]);
  const load = roomBound(venue, room, drape, [kindOf(style)]);
  const m2 = Number(load.data["area"] ?? 0);
  const all: Ceiling[] = [{
    seats: load.limit,
    because: load.code === "bound-posted" ? "the authority's posted figure"
      : `${areaText(m2, venue.lengths)} at ${areaText(Number(load.data["each"]), venue.lengths)} a person (${load.source})`,
  }];
  const exits = exitsFrom(site, room.id, "foot").length;
  const steps = [49, 500, 1000][exits - 1];
  if (exits === 0) all.push({ seats: 0, because: "no way out can be reached from the room" });
  else if (steps !== undefined && waysNeeded(venue, steps + 1) > exits) {
    all.push({ seats: steps, because: `${exits} ${exits === 1 ? "way" : "ways"} out (IBC 2018 Tables 1006.2.1 and 1006.3.2)` });
  }
  if (!options.anyStock) all.push(...stockCeilings(venue, style));
  if (style === "rounds") all.push(...packing(venue, room, drape));
  if (style === "rows") all.push(rowArea(venue, site.rooms.get(room.id)?.area ?? area(room.outline)));
  return all.reduce((a, b) => (b.seats < a.seats ? b : a));
}

function stockCeilings(venue: Venue, style: Style): readonly Ceiling[] {
  if (style === "standing") return [];
  const owned = chairsOwned(venue);
  const chairs: readonly Ceiling[] = [{ seats: owned, because: owned === 0 ? "the venue owns no chairs" : `the venue owns ${owned} chairs` }];
  if (style === "rows") return chairs;
  const tables = tablesOf(venue, style === "rounds" ? "rounds" : style === "mixed" ? "any" : "long");
  const places = tables.reduce((n, s) => n + s.count * (s.seats?.most ?? 0), 0);
  const count = tables.reduce((n, s) => n + s.count, 0);
  return [...chairs, { seats: places, because: `the venue's ${count} ${style === "rounds" ? "round tables" : style === "mixed" ? "tables" : "long tables"} seat ${places} at most` }];
}

/** Rounds of several sizes are bounded as if all were the smallest and seated as many as the best. */
function packing(venue: Venue, room: Room, drape: string | null): readonly Ceiling[] {
  const rounds = tablesOf(venue, "rounds");
  const site = siteOf(venue, drape === null ? [] : [drape]).rooms.get(room.id);
  if (rounds.length === 0 || !site) return [];
  const { most } = ruleValues(venue);
  const diameter = Math.min(...rounds.map((s) => widthOf(s.shape)));
  const each = Math.max(...rounds.map((s) => s.seats?.most ?? 0));
  const n = olerRounds(site.floor, room.obstacles.map((o) => o.outline), {
    diameter, tableGap: most.tableGap, wallGap: most.wallGap, axis: axisOf(site.outline),
  });
  return [{ seats: n * each, because: `no more than ${n} round tables laid all round have room (Oler's bound)` }];
}

/**
 * Chairs that look one way: each takes its own floor and 305 mm ahead of it (IBC 2018 1029.13.2), and no two of these overlap: side
 * by side by less than a chair's width, one stands at least its depth and 305 mm behind the other.
 */
function rowArea(venue: Venue, floor: number): Ceiling {
  const chairs = venue.stock.filter((s) => s.kind === "chair" && s.count > 0).map((s) => (isRound(s.shape) ? (Math.PI / 4) * widthOf(s.shape) ** 2 : widthOf(s.shape) * (depthOf(s.shape) + 304)));
  const each = chairs.length > 0 ? Math.min(...chairs) : 450 * (500 + 304);
  return { seats: Math.floor(floor / each), because: "each chair of a row with 305 mm ahead of it (IBC 2018 1029.13.2)" };
}
