import type { Finding } from "../../layout";
import { refusal } from "../refusal";
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
    // With no table at all it is mostly the table for the couple that finds no spot.
    const { top, topPlaces = 8 } = ctx.brief.meal, none = (places.got ?? 0) === 0;
    out.push(refusal(ctx.venue, {
      code: "places-not-found", level: "must", source, scene: "meal", items: [], measured: places.got ?? 0, limit: places.wanted ?? 0, unit: "places",
      data: { rooms, ...(none && top === "one-sided" ? { topPlaces } : {}) },
    }));
  }
  const rows = misses.find((m) => m.why === "rows");
  if (rows) out.push(refusal(ctx.venue, {
    code: "rows-not-found", level: "must", source, scene: "ceremony", items: [], measured: 0, limit: ctx.demand.ceremonyGuests, unit: "places", data: { room: name(rows.plan.ceremony) },
  }));
  const floor = misses.find((m) => m.why === "floor");
  if (floor) out.push(refusal(ctx.venue, { code: "pieces-not-found", level: "must", source, items: [], data: { room: name(floor.plan.dance ?? floor.plan.buffet) } }));
  if (out.length === 0) out.push(refusal(ctx.venue, { code: "no-plan-found", level: "must", source, items: [], data: { meal: ctx.brief.meal.service !== "none" } }));
  return out;
}
