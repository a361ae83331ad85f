import type { Finding } from "../../layout";
import type { Context } from "./context";
import type { Miss } from "./day";

/** What the search ran into, as findings: one a kind, the nearest miss of each. */
export function missesAsFindings(ctx: Context, misses: readonly Miss[]): readonly Finding[] {
  const out: Finding[] = [];
  const name = (id: string | null | undefined): string => ctx.venue.rooms.find((r) => r.id === id)?.name ?? id ?? "";
  const source = "search of the rooms";
  const places = misses.filter((m) => m.why === "places").sort((a, b) => (b.got ?? 0) - (a.got ?? 0))[0];
  if (places) {
    const rooms = places.plan.meal.map(name).join(" and ");
    out.push({
      code: "places-not-found", level: "must", source, scene: "meal", items: [], measured: places.got ?? 0, limit: places.wanted ?? 0, unit: "places",
      data: { rooms }, text: `The best arrangement found in the ${rooms} has ${places.got ?? 0} of ${places.wanted ?? 0} places.`,
    });
  }
  const rows = misses.find((m) => m.why === "rows");
  if (rows) out.push({
    code: "rows-not-found", level: "must", source, scene: "ceremony", items: [], measured: 0, limit: ctx.demand.ceremonyGuests, unit: "places",
    data: { room: name(rows.plan.ceremony) }, text: `No rows were found in the ${name(rows.plan.ceremony)} for ${ctx.demand.ceremonyGuests} at the ceremony.`,
  });
  const floor = misses.find((m) => m.why === "floor");
  if (floor) out.push({
    code: "pieces-not-found", level: "must", source, items: [], data: { room: name(floor.plan.dance ?? floor.plan.buffet) },
    text: `No spot was found for all that the ${name(floor.plan.dance ?? floor.plan.buffet)} must hold: dance floor, music, bar or buffet.`,
  });
  if (out.length === 0) out.push({
    code: "no-plan-found", level: "must", source, items: [],
    text: ctx.brief.meal.service === "none" ? "No way of giving the rooms to the parts of the day was found." : "No way of giving the rooms to ceremony, meal and dancing was found that needs no more turning over than is allowed.",
  });
  return out;
}
