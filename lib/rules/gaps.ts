import type { Context, Raw, SceneView } from "./context";
import { nearThings, type Near } from "./facing";

/** Gaps where places face a table, a wall, an obstacle or a standing piece: at most tables as `must`, in comfort as one `should`. */
export function gaps(v: SceneView, c: Context): readonly Raw[] {
  const { most, comfort } = c.values;
  const limitOf = (n: Near, g: typeof most): number => (n.kind === "table" ? g.tableGap : g.wallGap);
  const near = nearThings(v, comfort);
  // What is nearer than the least is nearer than comfort too.
  const broken = new Set(near.length === 0 ? [] : nearThings(v, most, new Set(near.flatMap((n) => [n.table.id, n.other]))));
  const must = [...broken].map((n): Raw => ({
    code: n.kind === "table" ? "table-gap" : "wall-gap", level: "must", source: c.venue.rules?.most ? "the venue's own figure" : c.values.source.gaps, scene: v.scene.id,
    items: n.kind === "table" || n.kind === "piece" ? [n.table.id, n.other] : [n.table.id], at: n.at, measured: Math.round(n.gap), limit: limitOf(n, most), unit: "mm",
    data: { a: n.table.id, b: n.other, kind: n.kind, gap: Math.round(n.gap), limit: limitOf(n, most) },
  }));
  const taken = new Set([...broken].map((n) => `${n.table.id}|${n.other}`));
  const tight = near.filter((n) => !taken.has(`${n.table.id}|${n.other}`) && !taken.has(`${n.other}|${n.table.id}`));
  return [...must, ...(["table", "wall"] as const).flatMap((kind): readonly Raw[] => {
    const these = tight.filter((n) => (n.kind === "table") === (kind === "table"));
    const worst = [...these].sort((a, b) => a.gap - b.gap)[0];
    if (!worst) return [];
    return [{
      code: kind === "table" ? "table-comfort" : "wall-comfort", level: "should", source: c.venue.rules?.comfort ? "the venue's own figure" : "common practice, no source", scene: v.scene.id,
      items: [...new Set(these.flatMap((n) => (n.kind === "table" ? [n.table.id, n.other] : [n.table.id])))].sort(), at: worst.at,
      measured: Math.round(worst.gap), limit: limitOf(worst, comfort), unit: "mm", data: { count: these.length, gap: Math.round(worst.gap), limit: limitOf(worst, comfort), a: worst.table.id },
    }];
  })];
}
