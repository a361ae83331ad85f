import { quote } from "../../fees";
import type { ArrangeResult, Finding, Layout } from "../../layout";
import { check } from "../../rules";
import { scoreOf } from "../stages/score";
import type { Context } from "../stages/context";
import { turnoversOfDay } from "../turnover";
import { ENGINE_VERSION } from "../version";
import { movedIds, recounted, relaidIds } from "./edit";
import type { Bench } from "./judge";

/** A changed layout made whole again: turnovers, fees, findings and score as the pieces stand now. */
export function sealed(b: Bench, ctx: Context, layout: Layout): Layout {
  const counted = recounted(layout);
  const turnovers = turnoversOfDay(b.venue, counted.scenes, (s) => (s.id === "ceremony" ? ctx.demand.ceremonyGuests : ctx.demand.guests));
  const day: Layout = { ...counted, turnovers, findings: [] };
  const findings = check(b.venue, day, b.brief);
  const tight = findings.some((f) => f.code === "table-comfort" || f.code === "wall-comfort"), full = findings.some((f) => f.code === "table-comfort-places");
  const gone = b.venue.rooms.flatMap((r) => r.standing).filter((s) => day.scenes.some((x) => !x.items.some((i) => "standing" in i.from && i.from.standing === s.id) && x.rooms.some((r) => b.venue.rooms.some((o) => o.id === r && o.standing.includes(s)))));
  return {
    ...day, findings, quote: quote(b.venue, b.brief, day),
    score: scoreOf(ctx, { ease: { gaps: tight ? "most" : "comfort", perTable: full ? "most" : "comfort" }, removed: gone.map((s) => s.id) }, day.scenes, turnovers, findings),
  };
}

/** The answer: the layout where no must is left, else what is left of them and the nearest that was reached. */
export function answer(b: Bench, ctx: Context, { before, after }: { readonly before: Layout; readonly after: Layout }): ArrangeResult {
  const layout = sealed(b, ctx, after);
  const reasons: readonly Finding[] = layout.findings.filter((f) => f.level === "must");
  const base = { format: "marquetry.result/1" as const, engine: { version: ENGINE_VERSION, seed: ctx.seed }, instead: [], timing: { totalMs: 0, stages: {} } };
  const changes = { moved: movedIds(before, layout), relaid: relaidIds(before, layout) };
  return reasons.length === 0 ? { ...base, status: "arranged", reasons: [], layouts: [layout], ...changes }
    : { ...base, status: "not-found", reasons, layouts: [], closest: layout, ...changes };
}
