import { people, type Brief } from "../brief";
import type { Venue } from "../venue";
import { DANCER_AREA } from "./stages/catalogue";
import { danceFloor } from "./stages/demand";

/** A change of the brief worth trying; of one kind the first that works is enough. */
export type Change = { readonly kind: string; readonly change: Readonly<Record<string, unknown>>; readonly text: string };

/** Shares of the guests on the floor at once that are offered in place of a larger one. */
const SMALLER = [0.25, 0.15];

/** Changes worth trying, the cheapest for the couple first; each alone. */
export function changesOf(venue: Venue, brief: Brief): readonly Change[] {
  const pack = venue.packages.find((p) => p.id === brief.package);
  const { meal: m, music, ceremony: c } = brief;
  const out: Change[] = [];
  const add = (test: boolean, kind: string, change: Change["change"], text: string): void => { if (test) out.push({ kind, change, text }); };
  const buffet = venue.rooms.some((r) => pack?.rooms.includes(r.id) && r.uses.includes("buffet"));
  const drape = venue.drapes.find((d) => pack?.rooms.includes(d.grows) && pack.rooms.includes(d.from));
  const share = panelShare(venue, brief);
  add(typeof m.perTable === "number", "per-table", { "meal.perTable": "most" }, "Lay each table for as many as it takes.");
  add(share !== null && share < music.dancing && share > 0, "floor", { "music.dancing": share }, `Take the floor that the venue's panels make, for ${percent(share ?? 0)} of the guests at once.`);
  add(m.tables !== "any", "tables", { "meal.tables": "any" }, m.tables === "rounds" ? "Mix long tables with the rounds." : "Let the tables be of any kind.");
  add(m.form !== "any", "form", { "meal.form": "any" }, "Let the tables stand in any form.");
  add(m.room !== "any", "room", { "meal.room": "any" }, "Let the meal be in another room.");
  add(c.here && c.room !== "any", "room", { "ceremony.room": "any" }, "Let the ceremony be in another room.");
  add(brief.drape === "no" && drape !== undefined, "drape", { drape: "any" }, `Let ${(drape?.name ?? "").toLowerCase()} be drawn.`);
  add(brief.turnover === false && pack?.turnover === true, "turnover", { turnover: true }, "Have the room turned over between ceremony and meal.");
  add((m.service === "buffet" || m.service === "stations") && !buffet, "service", { "meal.service": "sharing" }, "Have the food set down on the tables.");
  for (const s of SMALLER) add(music.dancing > s, "floor", { "music.dancing": s }, `Take a smaller dance floor, for ${percent(s)} of the guests at once.`);
  add(m.top === "one-sided", "top", { "meal.top": "pair" }, "Sit as a pair in place of a long top table.");
  add(brief.extras.includes("second-bar"), "extras", { extras: brief.extras.filter((e) => e !== "second-bar") }, "Do without the second bar.");
  add((m.service === "buffet" || m.service === "stations") && buffet, "service", { "meal.service": "sharing" }, "Have the food set down on the tables, not on a buffet.");
  add(c.here && (c.seating === "rows" || c.seating === "curve"), "ceremony", { "ceremony.seating": "at-tables" }, "Hold the ceremony at the laid tables.");
  add(c.here && c.seating !== "standing", "ceremony", { "ceremony.seating": "standing" }, "Let guests stand for the ceremony.");
  add(music.dancing > 0, "floor", { "music.dancing": 0 }, "Do without a dance floor.");
  return out;
}

const percent = (share: number): string => `${Math.floor(share * 100)} in a hundred`;

/** The largest share of the guests, in whole hundredths, whom a floor of the venue's own panels holds; null where it owns none. */
function panelShare(venue: Venue, brief: Brief): number | null {
  const panel = venue.stock.find((s) => s.kind === "dance-panel" && s.count > 0);
  if (!panel) return null;
  const size = "diameter" in panel.shape ? { width: panel.shape.diameter, depth: panel.shape.diameter } : panel.shape;
  const guests = Math.max(people(brief), brief.guests.evening ?? 0);
  for (let n = Math.ceil(brief.music.dancing * 100) - 1; n > 0; n--) if (danceFloor(size, panel.count, guests * (n / 100) * DANCER_AREA)) return n / 100;
  return 0;
}
