import type { Brief } from "../brief";
import type { Layout, Scene } from "../layout";
import type { Venue } from "../venue";

/** The most of something in any part of the day. */
const most = (layout: Layout, count: (scene: Scene) => number): number => Math.max(0, ...layout.scenes.map(count));

/** Tables laid with places, at their most in any part of the day. */
export const laidTables = (layout: Layout): number =>
  most(layout, (s) => s.items.reduce((n, i) => n + (i.kind === "table" && i.seats.length > 0 ? unitsOf(i) : 0), 0));

/** Pieces of one stock brought out, at their most in any part of the day; chairs at tables are counted though no item names them. */
export const unitsOut = (venue: Venue, layout: Layout, stockId: string): number =>
  most(layout, (s) => listed(s, stockId) + (chairsAtTables(venue, s).get(stockId) ?? 0));

const unitsOf = (i: Scene["items"][number]): number => ("stock" in i.from ? (i.from.count ?? 1) : 1);
const listed = (scene: Scene, stockId: string): number =>
  scene.items.reduce((n, i) => n + ("stock" in i.from && i.from.stock === stockId ? unitsOf(i) : 0), 0);

/** Chairs drawn up to tables, taken from the venue's chairs in the order of its stock; what it does not own is on the first. */
function chairsAtTables(venue: Venue, scene: Scene): ReadonlyMap<string, number> {
  const chairs = venue.stock.filter((s) => s.kind === "chair");
  let wanted = scene.items.reduce((n, i) => n + (i.kind === "chair" ? 0 : i.seats.filter((s) => s.place === "chair").length), 0);
  const out = new Map<string, number>();
  for (const c of chairs) {
    const take = Math.min(wanted, Math.max(0, c.count - listed(scene, c.id)));
    out.set(c.id, take);
    wanted -= take;
  }
  const first = chairs[0];
  if (first && wanted > 0) out.set(first.id, (out.get(first.id) ?? 0) + wanted);
  return out;
}

const DAY = 86_400_000;
const dayNumber = (date: string): number => Date.parse(`${date}T00:00:00Z`) / DAY;

/** True when the brief says what today is and the package's due date has gone by; the due date itself is in time. */
export function isLate(venue: Venue, brief: Brief): boolean {
  const pack = venue.packages.find((p) => p.id === brief.package);
  if (!pack || brief.today === undefined) return false;
  return dayNumber(brief.date) - dayNumber(brief.today) < pack.dueDays;
}

/** The words of a brief and its layout that a charge's `when` may name. */
export function wordsOf(venue: Venue, brief: Brief, layout: Layout): ReadonlySet<string> {
  return new Set([
    "always", ...(layout.turnovers.length > 0 ? ["turnover"] : []), ...(isLate(venue, brief) ? ["late"] : []),
    ...brief.displays, ...brief.extras, brief.music.by, ...(brief.music.more ?? []).map((m) => m.by), brief.meal.service,
  ]);
}
