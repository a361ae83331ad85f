import { briefSchema, people, type Brief } from "../brief";
import type { ArrangeResult, Finding, Told } from "../layout";
import type { Venue } from "../venue";
import { DANCER_AREA } from "./stages/catalogue";
import { danceFloor } from "./stages/demand";
import { tell } from "./tell";

/** A change of the brief worth trying, fields by their paths; of one kind the first that works is enough. */
export type Change = { readonly kind: string; readonly change: Readonly<Record<string, unknown>>; readonly told: Told };

/** How a change is tried out. */
export type Ask = {
  readonly run: (brief: Brief) => ArrangeResult;
  /** What no layout of a brief can pass: such a brief need not be run. */
  readonly proved: (brief: Brief) => readonly Finding[];
  /** Guests whom the closest attempt at the whole brief seats; null where none was made. */
  readonly seated: number | null;
  readonly stop?: (() => boolean) | undefined;
};

/** A brief with some fields changed, each named by its path; null where that makes no brief. */
export function changed(brief: Brief, change: Change["change"]): Brief | null {
  const copy: Record<string, unknown> = JSON.parse(JSON.stringify(brief)) as Record<string, unknown>;
  for (const [path, value] of Object.entries(change)) {
    const keys = path.split(".");
    let at: Record<string, unknown> = copy;
    for (const k of keys.slice(0, -1)) at = at[k] as Record<string, unknown>;
    at[keys[keys.length - 1] as string] = value;
  }
  const parsed = briefSchema.safeParse(copy);
  return parsed.success ? parsed.data : null;
}

/** Shares of the guests on the floor at once that are offered in place of a larger one, and of the places at a top table. */
const SMALLER = [0.25, 0.15], SHORTER = [0.75, 0.5];
/** A top table on one side is for the couple and two more at least. */
const LEAST_TOP = 4;

/**
 * Changes worth trying, each alone, in the order of what they ask of the couple, the least first. How much one asks is common practice
 * and has no source: a little less of something; what the venue does for a charge; tables laid otherwise; another room; another
 * manner of meal or ceremony; doing without. Fewer guests come after all of these. Bars, displays and extras are not among them: the
 * engine leaves out by itself what finds no place, and says so.
 */
export function changesOf(venue: Venue, brief: Brief): readonly Change[] {
  const pack = venue.packages.find((p) => p.id === brief.package);
  const { meal: m, music, ceremony: c } = brief;
  const out: Change[] = [];
  const add = (test: boolean, kind: string, change: Change["change"], told: Told): void => { if (test) out.push({ kind, change, told }); };
  const buffet = venue.rooms.some((r) => pack?.rooms.includes(r.id) && r.uses.includes("buffet"));
  const drape = venue.drapes.find((d) => pack?.rooms.includes(d.grows) && pack.rooms.includes(d.from));
  const share = panelShare(venue, brief), top = m.topPlaces ?? 8, served = m.service === "buffet" || m.service === "stations";
  // A little less.
  add(share !== null && share < music.dancing && share > 0, "floor", { "music.dancing": share }, tell("floor-of-panels", { share: percent(share ?? 0) }));
  for (const s of SMALLER) add(music.dancing > s, "floor", { "music.dancing": s }, tell("smaller-floor", { share: percent(s) }));
  for (const s of SHORTER) add(m.top === "one-sided" && Math.floor(top * s) >= LEAST_TOP, "top-places", { "meal.topPlaces": Math.floor(top * s) }, tell("shorter-top", { places: Math.floor(top * s) }));
  // What the venue does.
  add(brief.drape === "no" && drape !== undefined, "drape", { drape: "any" }, tell("draw-drape", { name: drape?.name ?? "" }));
  add(brief.turnover === false && pack?.turnover === true, "turnover", { turnover: true }, tell("turn-over"));
  // Tables laid otherwise.
  add(typeof m.perTable === "number", "per-table", { "meal.perTable": "most" }, tell("lay-most"));
  add(m.tables !== "any", "tables", { "meal.tables": "any" }, tell(m.tables === "rounds" ? "mix-long" : "any-tables"));
  add(m.form !== "any", "form", { "meal.form": "any" }, tell("any-form"));
  // Another room.
  add(m.room !== "any", "meal-room", { "meal.room": "any" }, tell("meal-elsewhere"));
  add(c.here && c.room !== "any", "ceremony-room", { "ceremony.room": "any" }, tell("ceremony-elsewhere"));
  // Another manner.
  add(served, "service", { "meal.service": "sharing" }, tell(buffet ? "food-not-buffet" : "food-on-tables"));
  add(m.top === "one-sided", "top", { "meal.top": "pair" }, tell("sit-as-pair"));
  add(c.here && (c.seating === "rows" || c.seating === "curve"), "ceremony", { "ceremony.seating": "at-tables" }, tell("ceremony-at-tables"));
  add(c.here && c.seating === "at-tables", "ceremony", { "ceremony.seating": "rows" }, tell("ceremony-in-rows"));
  add(c.here && c.seating !== "standing", "ceremony", { "ceremony.seating": "standing" }, tell("ceremony-standing"));
  // Doing without.
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
