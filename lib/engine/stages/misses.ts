import type { Finding } from "../../layout";
import type { Context } from "./context";
import type { Miss } from "./day";

/** How far the tables of the best try came; with none at all it is mostly the table for the couple that finds no spot. */
function placesText(ctx: Context, rooms: string, { got = 0, wanted = 0 }: Miss): string {
  if (got > 0) return `Not everyone was seated: the fullest arrangement found in the ${rooms} has ${got} of ${wanted} places.`;
  const { top, topPlaces } = ctx.brief.meal;
  return top === "one-sided" ? `No spot was found in the ${rooms} for a top table of ${topPlaces ?? 8} side by side.` : `No table with its places was found a spot in the ${rooms}.`;
}

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
      data: { rooms }, text: placesText(ctx, rooms, places),
    });
  }
  const rows = misses.find((m) => m.why === "rows");
  if (rows) out.push({
    code: "rows-not-found", level: "must", source, scene: "ceremony", items: [], measured: 0, limit: ctx.demand.ceremonyGuests, unit: "places",
    data: { room: name(rows.plan.ceremony) }, text: `No way was found to set rows for the ${ctx.demand.ceremonyGuests} guests of the ceremony in the ${name(rows.plan.ceremony)}.`,
  });
  const floor = misses.find((m) => m.why === "floor");
  if (floor) out.push({
    code: "pieces-not-found", level: "must", source, items: [], data: { room: name(floor.plan.dance ?? floor.plan.buffet) },
    text: `Dance floor, music, bar and buffet together were found no place in the ${name(floor.plan.dance ?? floor.plan.buffet)}.`,
  });
  if (out.length === 0) out.push({
    code: "no-plan-found", level: "must", source, items: [],
    text: ctx.brief.meal.service === "none" ? "No way of giving the rooms to the parts of the day was found." : "Without turning a room over, no way was found to give ceremony, meal and dancing a room each.",
  });
  return out;
}
