import { briefSchema, people, type Brief } from "../brief";
import type { ArrangeResult, Instead } from "../layout";
import type { Venue } from "../venue";

type Change = { readonly change: Readonly<Record<string, unknown>>; readonly text: string };

/** Searches run for the sake of better advice, at the most. */
const RUNS = 6;

/** A brief with some fields changed, each named by its path. */
export function changed(brief: Brief, change: Readonly<Record<string, unknown>>): Brief | null {
  const copy: Record<string, unknown> = structuredCloneOf(brief);
  for (const [path, value] of Object.entries(change)) {
    const keys = path.split(".");
    let at: Record<string, unknown> = copy;
    for (const k of keys.slice(0, -1)) at = at[k] as Record<string, unknown>;
    at[keys[keys.length - 1] as string] = value;
  }
  const parsed = briefSchema.safeParse(copy);
  return parsed.success ? parsed.data : null;
}
const structuredCloneOf = (b: Brief): Record<string, unknown> => JSON.parse(JSON.stringify(b)) as Record<string, unknown>;

/** Changes worth trying, the cheapest for the couple first; each alone. */
function candidates(venue: Venue, brief: Brief): readonly Change[] {
  const out: Change[] = [];
  const add = (test: boolean, change: Change["change"], text: string): void => { if (test) out.push({ change, text }); };
  const pack = venue.packages.find((p) => p.id === brief.package);
  const m = brief.meal;
  add(m.perTable === "comfort", { "meal.perTable": "most" }, "Lay each table for as many as it takes.");
  add(m.tables !== "any", { "meal.tables": "any" }, m.tables === "rounds" ? "Mix long tables with the rounds." : "Let the tables be of any kind.");
  const buffet = venue.rooms.some((r) => pack?.rooms.includes(r.id) && r.uses.includes("buffet"));
  add((m.service === "buffet" || m.service === "stations") && !buffet, { "meal.service": "sharing" }, "Have the food set down on the tables.");
  add(m.form !== "any", { "meal.form": "any" }, "Let the tables stand in any form.");
  add(m.room !== "any", { "meal.room": "any" }, "Let the meal be in another room.");
  add(brief.ceremony.room !== "any", { "ceremony.room": "any" }, "Let the ceremony be in another room.");
  add(brief.turnover === false && pack?.turnover === true, { turnover: true }, "Have the room turned over between ceremony and meal.");
  add(brief.music.dancing > 0.25, { "music.dancing": 0.25 }, "Take a smaller dance floor, for a quarter of the guests at once.");
  add(brief.music.dancing > 0.15, { "music.dancing": 0.15 }, "Take a small dance floor, for one in seven of the guests at once.");
  add(brief.extras.length > 0, { extras: [] }, "Leave out the extras.");
  add(m.top === "one-sided", { "meal.top": "pair" }, "Sit as a pair in place of a long top table.");
  add(brief.ceremony.here && brief.ceremony.seating === "rows", { "ceremony.seating": "at-tables" }, "Hold the ceremony at the laid tables.");
  add(brief.ceremony.here && brief.ceremony.seating !== "standing", { "ceremony.seating": "standing" }, "Let guests stand for the ceremony.");
  add(brief.music.dancing > 0, { "music.dancing": 0 }, "Do without a dance floor.");
  return out;
}

/**
 * The smallest changes of the brief that were run and found to work, at most three and the fewer guests that fit.
 * Each text names one change; none is offered that was not arranged.
 */
export function insteadOf(venue: Venue, brief: Brief, run: (brief: Brief) => ArrangeResult): readonly Instead[] {
  const out: Instead[] = [];
  let runs = 0;
  for (const c of candidates(venue, brief)) {
    if (runs >= RUNS || out.length >= 2) break;
    const next = changed(brief, c.change);
    if (!next) continue;
    runs++;
    if (run(next).status === "arranged") out.push({ change: c.change, text: c.text });
  }
  const fewer = fewerGuests(brief, run);
  if (fewer) out.push(fewer);
  return out;
}

/** The most adults that were arranged, found by halving between none and too many; to within a few: five runs are made. */
function fewerGuests(brief: Brief, run: (brief: Brief) => ArrangeResult): Instead | null {
  const { guests } = brief;
  const fixed = people(brief) - guests.adults;
  const at = (adults: number): Brief | null => {
    const cut = (n: number | undefined): number | undefined => (n === undefined ? undefined : Math.max(0, n - (guests.adults - adults)));
    return changed(brief, {
      "guests.adults": adults, "guests.wheelchairs": Math.min(guests.wheelchairs, adults + guests.children),
      ...(guests.ceremony === undefined ? {} : { "guests.ceremony": cut(guests.ceremony) }), ...(guests.evening === undefined ? {} : { "guests.evening": cut(guests.evening) }),
      ...(guests.quiet === undefined ? {} : { "guests.quiet": Math.min(guests.quiet, adults + guests.children) }),
    });
  };
  let low = 0, high = guests.adults;
  const first = Math.floor(guests.adults * 0.8);
  for (let i = 0, probe = first; i < 5 && high - low > 1; i++, probe = Math.floor((low + high) / 2)) {
    if (probe < 2) break;
    const next = at(probe);
    if (next && run(next).status === "arranged") low = probe; else high = probe;
  }
  if (low < 2) return null;
  return { change: { "guests.adults": low }, text: `Invite ${guests.adults - low} fewer: ${low + fixed} guests in all are seated.` };
}
