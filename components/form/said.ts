import type { FormValues, StepId } from "@/lib/brief/draft";
import type { Venue } from "@/lib/venue";
import { ENGLISH, type Phrase, type Say } from "@/lib/words/pages/say";
import { capital } from "../ui/say";
import { AISLE, HERE, SEATING } from "./questions/ceremony";
import { WISH_OPTIONS } from "./questions/displays";
import { CLOSENESS, FORMS, SERVICE, TABLES, TOP } from "./questions/meal";
import { BY, SHARES } from "./questions/music";
import { DISPLAY_OPTIONS, EXTRA_OPTIONS } from "./questions/shown";
import { manyOf, oneOf } from "./values";

export type Said = { readonly field: string; readonly name: string; readonly said: string };
type Named = { readonly value: string; readonly name: string };
type Choice = { readonly value: string; readonly name: Phrase };

const YES_NO: readonly Choice[] = [{ value: "yes", name: "Yes" }, { value: "no", name: "No" }];
const IF_HELPS: readonly Choice[] = [{ value: "any", name: "If it helps" }, ...YES_NO];

/** One step's answers in words, as its questions put them: for the overview, the last look, and two versions side by side. */
export function saidIn(step: StepId, v: FormValues, venue: Venue, say: Say = ENGLISH): readonly Said[] {
  const open = say("Not sure yet");
  const chosen = (options: readonly Named[], value: string): string => options.find((o) => o.value === value)?.name ?? (value && value !== "unsure" ? value : open);
  const line = (field: string, name: Phrase, options: readonly Choice[]): Said =>
    ({ field, name: say(name), said: chosen(options.map((o) => ({ value: o.value, name: say(o.name) })), oneOf(v, field)) });
  const room = (name: Phrase): Said =>
    ({ field: "room", name: say(name), said: chosen([{ value: "any", name: say("Whichever suits best") }, ...venue.rooms.map((r) => ({ value: r.id, name: r.name }))], oneOf(v, "room")) });
  const figure = (field: string, name: Phrase): Said => ({ field, name: say(name), said: oneOf(v, field).trim() || open });
  // Their page says that an empty one means everyone.
  const part = (field: string, name: Phrase): Said => ({ field, name: say(name), said: oneOf(v, field).trim() || say("All of you") });
  const list = (field: string, name: Phrase, options: readonly Choice[]): Said => {
    const names = manyOf(v, field).map((value) => { const known = options.find((o) => o.value === value); return known ? say(known.name) : value; });
    return { field, name: say(name), said: names.length === 0 ? say("None") : names.join(", ") };
  };
  switch (step) {
    case "guests":
      return [
        figure("adults", "Adults"), figure("children", "Children"), figure("highChairs", "High chairs"), figure("wheelchairs", "Wheelchair places"),
        figure("quiet", "Away from the loudspeakers"), figure("suppliers", "People who work that day"), part("ceremony", "At the ceremony"), part("evening", "In the evening"),
      ];
    case "ceremony":
      return [line("here", "Ceremony at the venue", HERE), line("seating", "How guests watch it", SEATING), line("aisle", "Aisle", AISLE), room("Ceremony’s room")];
    case "meal":
      return [
        line("tables", "Tables", TABLES), line("top", "Where the two of you sit", TOP), line("service", "How the meal is served", SERVICE),
        line("perTable", "How close", CLOSENESS), line("form", "Shape", [...FORMS, { value: "any", name: "Whichever suits" }]), room("Meal’s room"),
        line("turnover", "Turning the room over", YES_NO), line("drape", "Drape", IF_HELPS),
      ];
    case "music": {
      const dancing = oneOf(v, "dancing");
      const words = SHARES.find((one) => one.value === dancing)?.name;
      const share = dancing === "" || dancing === "unsure" ? open : dancing === "0" ? say("No dance floor")
        : words ? say("{words} ({share} in a hundred)", { words: say(words), share: dancing }) : say("{share} in a hundred", { share: dancing });
      return [line("by", "Music", BY), figure("players", "Players"), { field: "dancing", name: say("Dancing at once"), said: share }, line("atCeremony", "They play the ceremony", YES_NO)];
    }
    case "displays":
      return [list("displays", "On show", DISPLAY_OPTIONS), list("wishes", "Wishes", WISH_OPTIONS)];
    case "extras":
      return [list("extras", "Extras", EXTRA_OPTIONS), { field: "notes", name: say("Your notes"), said: oneOf(v, "notes").trim() || say("None") }];
  }
}

/** The answers to what was asked: a room of which the package leaves no choice is left out, and the players of what is no band. */
export function saidShown(step: StepId, v: FormValues, venue: Venue, say: Say = ENGLISH): readonly Said[] {
  const given = (field: string): boolean => !["", "unsure"].includes(oneOf(v, field));
  return saidIn(step, v, venue, say).filter(({ field }) => (field === "room" ? given("room") : field !== "players" || given("players") || oneOf(v, "by") === "band"));
}

/** What the fields of a step are called. */
export const fieldNames = (step: StepId, venue: Venue, say: Say): Readonly<Record<string, string>> =>
  Object.fromEntries(saidIn(step, {}, venue, say).map((s) => [s.field, s.name]));

const lower = (text: string): string => text.charAt(0).toLowerCase() + text.slice(1);

/** Only what was said: for the short line under a step's name. */
export function saidShort(step: StepId, v: FormValues, venue: Venue, say: Say): string {
  const said = saidIn(step, v, venue, say).filter((s) => ![say("Not sure yet"), say("None"), say("All of you")].includes(s.said));
  if (said.length === 0) return say("Not sure yet");
  if (step === "guests") return capital(said.map((s) => `${lower(s.name)} ${s.said}`).join(", "));
  const short = (s: Said): string => {
    if (s.said === say("Yes") || s.said === say("No")) return `${lower(s.name)}: ${lower(s.said)}`;
    if (s.field === "players") return say("{n} players", { n: Number(s.said) });
    if (s.field === "dancing" && s.said !== say("No dance floor")) return say("{share} dancing at once", { share: lower(s.said) });
    // Names of rooms keep their capital.
    return (s.field === "room" && s.said !== say("Whichever suits best")) || /^[A-Z]{2}/.test(s.said) ? s.said : lower(s.said);
  };
  return capital(said.filter((s) => s.field !== "notes").map(short).join(", ")) || say("Notes only");
}
