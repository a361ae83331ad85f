import { people, type Brief } from "../brief";
import type { Told } from "../layout";
import type { Venue } from "../venue";
import { DANCER_AREA } from "./stages/catalogue";
import { danceFloor } from "./stages/demand";
import { tell } from "./tell";

/** A change of the brief worth trying; of one kind the first that works is enough. */
export type Change = { readonly kind: string; readonly change: Readonly<Record<string, unknown>>; readonly told: Told };

/** Shares of the guests on the floor at once that are offered in place of a larger one. */
const SMALLER = [0.25, 0.15];

/** Changes worth trying, the cheapest for the couple first; each alone. */
export function changesOf(venue: Venue, brief: Brief): readonly Change[] {
  const pack = venue.packages.find((p) => p.id === brief.package);
  const { meal: m, music, ceremony: c } = brief;
  const out: Change[] = [];
  const add = (test: boolean, kind: string, change: Change["change"], told: Told): void => { if (test) out.push({ kind, change, told }); };
  const buffet = venue.rooms.some((r) => pack?.rooms.includes(r.id) && r.uses.includes("buffet"));
  const drape = venue.drapes.find((d) => pack?.rooms.includes(d.grows) && pack.rooms.includes(d.from));
  const share = panelShare(venue, brief);
  add(typeof m.perTable === "number", "per-table", { "meal.perTable": "most" }, tell("lay-most"));
  add(share !== null && share < music.dancing && share > 0, "floor", { "music.dancing": share }, tell("floor-of-panels", { share: percent(share ?? 0) }));
  add(m.tables !== "any", "tables", { "meal.tables": "any" }, tell(m.tables === "rounds" ? "mix-long" : "any-tables"));
  add(m.form !== "any", "form", { "meal.form": "any" }, tell("any-form"));
  add(m.room !== "any", "room", { "meal.room": "any" }, tell("meal-elsewhere"));
  add(c.here && c.room !== "any", "room", { "ceremony.room": "any" }, tell("ceremony-elsewhere"));
  add(brief.drape === "no" && drape !== undefined, "drape", { drape: "any" }, tell("draw-drape", { name: drape?.name ?? "" }));
  add(brief.turnover === false && pack?.turnover === true, "turnover", { turnover: true }, tell("turn-over"));
  add((m.service === "buffet" || m.service === "stations") && !buffet, "service", { "meal.service": "sharing" }, tell("food-on-tables"));
  for (const s of SMALLER) add(music.dancing > s, "floor", { "music.dancing": s }, tell("smaller-floor", { share: percent(s) }));
  add(m.top === "one-sided", "top", { "meal.top": "pair" }, tell("sit-as-pair"));
  add(brief.extras.includes("second-bar"), "extras", { extras: brief.extras.filter((e) => e !== "second-bar") }, tell("no-second-bar"));
  add((m.service === "buffet" || m.service === "stations") && buffet, "service", { "meal.service": "sharing" }, tell("food-not-buffet"));
  add(c.here && (c.seating === "rows" || c.seating === "curve"), "ceremony", { "ceremony.seating": "at-tables" }, tell("ceremony-at-tables"));
  add(c.here && c.seating !== "standing", "ceremony", { "ceremony.seating": "standing" }, tell("ceremony-standing"));
  add(music.dancing > 0, "floor", { "music.dancing": 0 }, tell("no-floor"));
  return out;
}

const percent = (share: number): number => Math.floor(share * 100);

/** The largest share of the guests, in whole hundredths, whom a floor of the venue's own panels holds; null where it owns none. */
function panelShare(venue: Venue, brief: Brief): number | null {
  const panel = venue.stock.find((s) => s.kind === "dance-panel" && s.count > 0);
  if (!panel) return null;
  const size = "diameter" in panel.shape ? { width: panel.shape.diameter, depth: panel.shape.diameter } : panel.shape;
  const guests = Math.max(people(brief), brief.guests.evening ?? 0);
  for (let n = Math.ceil(brief.music.dancing * 100) - 1; n > 0; n--) if (danceFloor(size, panel.count, guests * (n / 100) * DANCER_AREA)) return n / 100;
  return 0;
}
