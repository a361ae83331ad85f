import { briefSchema, DISPLAYS, EXTRAS, WISH_WHAT, WISH_WHERE, type Brief } from "../../lib/brief";
import type { Venue } from "../../lib/venue";
import { diceOf } from "./dice";

/** A brief for a venue from a seed: mostly modest, now and then far too much. */
export function briefFrom(seed: number, venue: Venue): Brief {
  const d = diceOf(seed * 7 + 3);
  const adults = d.chance(0.03) ? d.whole(150, 700) : d.chance(0.2) ? d.whole(60, 120) : d.whole(2, 60);
  const children = d.chance(0.4) ? d.whole(0, 10) : 0;
  const rooms = venue.rooms.map((r) => r.id);
  const room = (): string => (d.chance(0.94) ? "any" : d.pick(rooms));
  return briefSchema.parse({
    format: "marquetry.brief/1", package: "all", date: "2027-06-12",
    guests: {
      adults, children, highChairs: d.chance(0.3) ? Math.min(children, 2) : 0, wheelchairs: d.chance(0.4) ? d.whole(1, Math.min(4, adults)) : 0, suppliers: d.chance(0.3) ? d.whole(1, 6) : 0,
      ...(d.chance(0.1) ? { ceremony: Math.max(1, Math.round(adults * 0.6)) } : {}), ...(d.chance(0.1) ? { evening: adults + children + d.whole(0, 30) } : {}),
    },
    ceremony: { here: d.chance(0.7), room: room(), seating: d.pick(["rows", "rows", "rows", "curve", "standing", "at-tables"]), aisle: d.pick(["centre", "centre", "sides", "none"]) },
    meal: {
      service: d.pick(["plated", "plated", "buffet", "sharing", "stations", "none"]), tables: d.pick(["any", "any", "rounds", "long", "mixed"]), form: d.chance(0.75) ? "any" : d.pick(["grid", "u", "e", "t", "hollow-square", "spine"]),
      top: d.pick(["pair", "none", "one-sided", "round"]), perTable: d.pick(["comfort", "comfort", "most", 6]), room: room(),
    },
    music: { by: d.pick(["dj", "band", "playlist", "none"]), players: d.whole(0, 6), dancing: d.chance(0.5) ? d.pick([0.2, 0.35, 0.5]) : 0, atCeremony: d.chance(0.3) },
    displays: d.some(DISPLAYS, 0.3), extras: d.some(EXTRAS, 0.15),
    ...(d.chance(0.5) ? { turnover: d.chance(0.7) } : {}), ...(d.chance(0.2) ? { drape: d.pick(["any", "yes", "no"]) } : {}),
    wishes: d.chance(0.2) ? [d.chance(0.6) ? { put: d.pick(WISH_WHAT), near: d.pick(WISH_WHERE) } : { put: d.pick(WISH_WHAT), "away-from": d.pick(WISH_WHERE) }] : [],
    ...(d.chance(0.1) ? { brought: [{ what: "Ice-cream cart", width: d.whole(800, 1800), depth: d.whole(600, 1000) }] } : {}),
  });
}
