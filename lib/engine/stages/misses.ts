import type { Finding } from "../../layout";
import { refusal } from "../refusal";
import { turnoverAllowed } from "./assign";
import type { Context } from "./context";
import type { Miss } from "./day";
import { onlyRoom } from "./only-room";
import { topOf } from "./top-table";

/** What the search ran into, as findings: one a kind, the nearest miss of each. */
export function missesAsFindings(ctx: Context, misses: readonly Miss[]): readonly Finding[] {
  const out: Finding[] = [];
  const source = "search of the rooms";
  const nearest = (why: Miss["why"]): Miss | undefined => misses.filter((m) => m.why === why).sort((a, b) => (b.got ?? 0) - (a.got ?? 0))[0];
  const places = nearest("places");
  if (places) {
    // With no table at all it is mostly the table for the couple that finds no spot.
    const { top, topPlaces = 8 } = ctx.brief.meal, none = (places.got ?? 0) === 0, pieces = places.pieces ?? [];
    const run = topOf(ctx, ctx.values.most.wallGap)?.spec.shape;
    out.push(refusal(ctx.venue, {
      code: "places-not-found", level: "must", source, scene: "meal", items: [], measured: places.got ?? 0, limit: places.wanted ?? 0, unit: "places",
      data: {
        rooms: places.plan.meal,
        ...(!none ? {} : top === "one-sided" ? { topPlaces, ...(run && "width" in run ? { run: run.width } : {}) } : pieces.length > 0 ? { pieces } : {}),
      },
    }));
  }
  const rows = nearest("rows");
  if (rows) out.push(refusal(ctx.venue, {
    code: "rows-not-found", level: "must", source, scene: "ceremony", items: [], measured: rows.got ?? 0, limit: ctx.demand.ceremonyGuests, unit: "places",
    data: { room: rows.plan.ceremony ?? "", ...(rows.chairs !== undefined && rows.chairs < Math.max(0, ctx.demand.ceremonyGuests - ctx.demand.wheelchairs) ? { chairs: rows.chairs, owned: ctx.chair.all } : {}) },
  }));
  const floor = nearest("floor");
  if (floor) out.push(refusal(ctx.venue, { code: "pieces-not-found", level: "must", source, items: [], data: { room: floor.room ?? "", pieces: floor.pieces ?? [] } }));
  if (out.length === 0) out.push(noPlan(ctx, source));
  return out;
}

/** No way of giving the rooms to the day: mostly one room alone holds two parts of it, and may not be turned over. */
function noPlan(ctx: Context, source: string): Finding {
  const { pack, brief } = ctx, here = brief.ceremony.here && brief.meal.service !== "none";
  const room = here ? onlyRoom(ctx) : null;
  return refusal(ctx.venue, {
    code: "no-plan-found", level: "must", source, items: [],
    data: { meal: brief.meal.service !== "none", package: pack.id, ...(turnoverAllowed(pack, brief) ? {} : { by: pack.turnover ? "brief" : "package" }), ...(room ? { room } : {}) },
  });
}
