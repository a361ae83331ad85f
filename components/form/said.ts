import type { FormValues, StepId } from "@/lib/brief/draft";
import type { Venue } from "@/lib/venue";
import type { Option } from "../ui/choices";
import { capital } from "../ui/say";
import { AISLE, HERE, SEATING } from "./questions/ceremony";
import { DISPLAY_OPTIONS, EXTRA_OPTIONS, WISH_OPTIONS } from "./questions/displays";
import { CLOSENESS, FORMS, SERVICE, TABLES, TOP } from "./questions/meal";
import { BY } from "./questions/music";
import { manyOf, oneOf } from "./values";

export type Said = { readonly field: string; readonly name: string; readonly said: string };
type Named = { readonly value: string; readonly name: string };

const NOT_YET = "Not sure yet";
const YES_NO: readonly Named[] = [{ value: "yes", name: "Yes" }, { value: "no", name: "No" }];
const IF_HELPS: readonly Named[] = [{ value: "any", name: "If it helps" }, ...YES_NO];

const pick = (options: readonly Named[], value: string): string => options.find((o) => o.value === value)?.name ?? (value && value !== "unsure" ? value : NOT_YET);
const list = (options: readonly Named[], values: readonly string[]): string =>
  values.length === 0 ? "None" : values.map((v) => options.find((o) => o.value === v)?.name ?? v).join(", ");
const rooms = (venue: Venue): readonly Named[] => [{ value: "any", name: "Whichever suits best" }, ...venue.rooms.map((r) => ({ value: r.id, name: r.name }))];

/** One step's answers in words, as its questions put them: for the overview, the last look, and two versions side by side. */
export function saidIn(step: StepId, v: FormValues, venue: Venue): readonly Said[] {
  const line = (field: string, name: string, options: readonly Named[] | readonly Option[]): Said => ({ field, name, said: pick(options, oneOf(v, field)) });
  const figure = (field: string, name: string): Said => ({ field, name, said: oneOf(v, field).trim() || NOT_YET });
  switch (step) {
    case "guests":
      return [
        figure("adults", "Adults"), figure("children", "Children"), figure("highChairs", "High chairs"), figure("wheelchairs", "Wheelchair places"),
        figure("quiet", "Away from the loudspeakers"), figure("suppliers", "People who work that day"), figure("ceremony", "At the ceremony"), figure("evening", "In the evening"),
      ];
    case "ceremony":
      return [line("here", "Ceremony at the venue", HERE), line("seating", "How guests watch it", SEATING), line("aisle", "Aisle", AISLE), line("room", "Ceremony’s room", rooms(venue))];
    case "meal":
      return [
        line("tables", "Tables", TABLES), line("top", "Where the two of you sit", TOP), line("service", "How the meal is served", SERVICE),
        line("perTable", "How close", CLOSENESS), line("form", "Shape", [...FORMS, { value: "any", name: "Whichever suits" }]), line("room", "Meal’s room", rooms(venue)),
        line("turnover", "Turning the room over", YES_NO), line("drape", "Drape", IF_HELPS),
      ];
    case "music": {
      const dancing = oneOf(v, "dancing");
      return [
        line("by", "Music", BY), figure("players", "Players"),
        { field: "dancing", name: "Dancing at once", said: dancing === "" || dancing === "unsure" ? NOT_YET : dancing === "0" ? "No dance floor" : `${dancing} in a hundred` },
        line("atCeremony", "They play the ceremony", YES_NO),
      ];
    }
    case "displays":
      return [{ field: "displays", name: "On show", said: list(DISPLAY_OPTIONS, manyOf(v, "displays")) }, { field: "wishes", name: "Wishes", said: list(WISH_OPTIONS, manyOf(v, "wishes")) }];
    case "extras":
      return [{ field: "extras", name: "Extras", said: list(EXTRA_OPTIONS, manyOf(v, "extras")) }, { field: "notes", name: "Your notes", said: oneOf(v, "notes").trim() || "None" }];
  }
}

/** What the fields of a step are called. */
export const fieldNames = (step: StepId, venue: Venue): Readonly<Record<string, string>> =>
  Object.fromEntries(saidIn(step, {}, venue).map((s) => [s.field, s.name]));

/** Only what was said: for the short line under a step's name. */
export function saidShort(step: StepId, v: FormValues, venue: Venue): string {
  const said = saidIn(step, v, venue).filter((s) => s.said !== NOT_YET && s.said !== "None");
  if (said.length === 0) return "Not sure yet";
  if (step === "guests") return said.map((s) => `${s.name.toLowerCase()} ${s.said}`).join(", ").replace(/^a/, "A");
  const short = (s: Said): string => {
    if (s.said === "Yes" || s.said === "No") return `${s.name.toLowerCase()}: ${s.said.toLowerCase()}`;
    if (s.field === "players") return `${s.said} ${s.said === "1" ? "player" : "players"}`;
    if (s.field === "dancing" && /^\d/.test(s.said)) return `${s.said} dancing at once`;
    // Names of rooms keep their capital.
    return s.field === "room" || /^[A-Z]{2}/.test(s.said) ? s.said : s.said.charAt(0).toLowerCase() + s.said.slice(1);
  };
  return capital(said.filter((s) => s.field !== "notes").map(short).join(", ")) || "Notes only";
}
