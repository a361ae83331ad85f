import type { Brief, BriefFile } from "../brief";
import type { Venue } from "../venue";
import { formatSize, lengthStyle } from "../measure";
import type { PaperVoice } from "../words/papers";
import { AISLE, capital, FORM, list, MUSIC, nameList, SCENE_NAMES, SEATING, SERVICE, TABLES, thing, TOP } from "./words";

export type Answer = { readonly asked: string; readonly said: string };
export type AnswerGroup = { readonly title: string; readonly answers: readonly Answer[] };

type Told = { readonly brief: Brief; readonly file: BriefFile; readonly venue: Venue; readonly say: PaperVoice };

const given = (record: object | undefined, field: string): boolean =>
  record !== undefined && Object.entries(record).some(([key, value]) => key === field && value !== undefined);

/** What was left out says what was taken in its stead. */
const said = (told: boolean, words: string, say: PaperVoice): string => (told ? words : say("Not sure yet: we took {what}", { what: `${words.charAt(0).toLowerCase()}${words.slice(1)}` }));

const room = (id: string, { venue, say }: Told): string => (id === "any" ? say("Whichever suits") : venue.rooms.find((r) => r.id === id)?.name ?? id);
const yes = (b: boolean, say: PaperVoice): string => (b ? say("Yes") : say("No"));
const percent = (share: number): string => `${Math.round(share * 100)} %`;

function guests({ brief, file, venue, say }: Told): Answer[] {
  const g = brief.guests;
  const or = (told: boolean, n: number): string => said(told, n === 0 ? say("None") : String(n), say);
  const optional = (field: "ceremony" | "evening" | "quiet", asked: string): Answer[] => {
    const n = g[field];
    return n === undefined ? [] : [{ asked, said: String(n) }];
  };
  return [
    ...(brief.couple && brief.couple.length > 0 ? [{ asked: say("You"), said: nameList(brief.couple, venue.locale) }] : []),
    { asked: say("Adults"), said: g.adults === 1 ? say("{count}, one of you counted", { count: g.adults }) : say("{count}, the two of you among them", { count: g.adults }) },
    { asked: say("Children"), said: or(given(file.guests, "children"), g.children) },
    { asked: say("High chairs"), said: or(given(file.guests, "highChairs"), g.highChairs) },
    { asked: say("Wheelchair places"), said: or(given(file.guests, "wheelchairs"), g.wheelchairs) },
    { asked: say("Suppliers who eat"), said: or(given(file.guests, "suppliers"), g.suppliers) },
    ...optional("ceremony", say("At the ceremony")), ...optional("evening", say("In the evening")), ...optional("quiet", say("To sit away from the loudspeakers")),
  ];
}

function ceremony(about: Told): Answer[] {
  const { brief, file, say } = about, c = brief.ceremony;
  const told = (field: string): boolean => given(file.ceremony, field);
  const here = { asked: say("Ceremony here"), said: said(told("here"), c.here ? say("Yes, here") : say("No, elsewhere"), say) };
  if (!c.here) return [here];
  return [
    here,
    { asked: say("Room"), said: said(told("room"), room(c.room, about), say) },
    { asked: say("Seating"), said: said(told("seating"), say(SEATING[c.seating]), say) },
    { asked: say("Aisle"), said: said(told("aisle"), say(AISLE[c.aisle]), say) },
  ];
}

function meal(about: Told): Answer[] {
  const { brief, file, say } = about, m = brief.meal;
  const told = (field: string): boolean => given(file.meal, field);
  const service = { asked: say("Food"), said: said(told("service"), say(SERVICE[m.service]), say) };
  if (m.service === "none") return [service];
  const perTable = m.perTable === "comfort" ? say("As many as sit in comfort") : m.perTable === "most" ? say("As many as a table takes") : String(m.perTable);
  return [
    service,
    { asked: say("Tables"), said: said(told("tables"), say(TABLES[m.tables]), say) },
    { asked: say("How they stand"), said: said(told("form"), say(FORM[m.form]), say) },
    { asked: say("Your table"), said: said(told("top"), say(TOP[m.top]), say) },
    ...(m.topPlaces === undefined ? [] : [{ asked: say("Places at it"), said: String(m.topPlaces) }]),
    ...(m.familyTables === undefined ? [] : [{ asked: say("Family tables"), said: String(m.familyTables) }]),
    { asked: say("Places a table"), said: said(told("perTable"), perTable, say) },
    { asked: say("Room"), said: said(told("room"), room(m.room, about), say) },
  ];
}

function music({ brief, file, say }: Told): Answer[] {
  const m = brief.music;
  const told = (field: string): boolean => given(file.music, field);
  const more = (m.more ?? []).map((x) => {
    const parts = [say(MUSIC[x.by]), ...(x.players === undefined ? [] : [say("{n} players", { n: x.players })]), ...(x.watts === undefined ? [] : [`${x.watts} W`])];
    return { asked: say("Also at {part}", { part: say(SCENE_NAMES[x.scene]).toLowerCase() }), said: parts.join(", ") };
  });
  return [
    { asked: say("Music"), said: said(told("by"), say(MUSIC[m.by]), say) },
    ...(m.players > 0 ? [{ asked: say("Players"), said: String(m.players) }] : []),
    { asked: say("On the dance floor at once"), said: said(told("dancing"), m.dancing === 0 ? say("No dance floor") : say("{share} of the guests", { share: percent(m.dancing) }), say) },
    ...(m.by === "dj" || m.by === "band" ? [{ asked: say("Plays the ceremony too"), said: said(told("atCeremony"), yes(m.atCeremony, say), say) }] : []),
    ...more,
  ];
}

function rooms({ brief, file, venue, say }: Told): Answer[] {
  const things = (words: readonly string[]): string => (words.length === 0 ? say("None") : capital(list(words.map((word) => thing(word, say)), venue.locale)));
  const drape = { any: "Where it helps", yes: "Yes", no: "No" } as const;
  const wishes = brief.wishes.map((w) => {
    const [how, word] = "near" in w ? ["{what} near {where}", w.near] as const : "away-from" in w ? ["{what} away from {where}", w["away-from"]] as const : ["{what} in sight of {where}", w["in-sight-of"]] as const;
    return { asked: say("A wish"), said: say(how, { what: capital(thing(w.put, say)), where: thing(word, say) }) };
  });
  const brought = (brief.brought ?? []).map((b) => ({
    asked: say("You bring"),
    said: [b.what, formatSize(b.width, b.depth, lengthStyle(venue, true)), ...(b.watts === undefined ? [] : [`${b.watts} W`]), ...(b.scene ? [say("for {part}", { part: say(SCENE_NAMES[b.scene]).toLowerCase() })] : [])].join(", "),
  }));
  return [
    { asked: say("Displays"), said: said(given(file, "displays"), things(brief.displays), say) },
    { asked: say("Extras"), said: said(given(file, "extras"), things(brief.extras), say) },
    { asked: say("The room may be turned over"), said: brief.turnover === undefined ? said(false, say("As your package has it"), say) : yes(brief.turnover, say) },
    ...(brief.drape === undefined ? [] : [{ asked: say("The drape"), said: say(drape[brief.drape]) }]),
    ...wishes, ...brought,
  ];
}

function times({ brief, say }: Told): Answer[] {
  const named = [["access", "Crew come in"], ["ceremony", "Ceremony"], ["drinks", "Drinks"], ["meal", "Meal"], ["dancing", "Dancing"], ["clear", "Clear by"]] as const;
  return named.flatMap(([field, asked]) => {
    const at = brief.times?.[field];
    return at === undefined ? [] : [{ asked: say(asked), said: at }];
  });
}

/** Every answer of the brief in words; `file` is the brief as it was written, which shows what was left out. */
export function answersOf(told: Told): readonly AnswerGroup[] {
  const groups = [
    { title: told.say("Guests"), answers: guests(told) }, { title: told.say("Ceremony"), answers: ceremony(told) }, { title: told.say("Meal and tables"), answers: meal(told) },
    { title: told.say("Music and dancing"), answers: music(told) }, { title: told.say("Displays, extras and rooms"), answers: rooms(told) }, { title: told.say("Times"), answers: times(told) },
  ];
  return groups.filter((g) => g.answers.length > 0);
}
