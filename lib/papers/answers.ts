import type { Brief, BriefFile } from "../brief";
import type { Venue } from "../venue";
import { AISLE, capital, counted, FORM, list, MUSIC, nameList, SCENE_NAMES, SEATING, SERVICE, TABLES, thing, TOP } from "./words";

export type Answer = { readonly asked: string; readonly said: string };
export type AnswerGroup = { readonly title: string; readonly answers: readonly Answer[] };

type Told = { readonly brief: Brief; readonly file: BriefFile; readonly venue: Venue };

const given = (record: object | undefined, field: string): boolean =>
  record !== undefined && Object.entries(record).some(([key, value]) => key === field && value !== undefined);

/** What was left out says what was taken in its stead. */
const said = (told: boolean, words: string): string => (told ? words : `Not sure yet: we took ${words.charAt(0).toLowerCase()}${words.slice(1)}`);

const room = (id: string, venue: Venue): string => (id === "any" ? "Whichever suits" : venue.rooms.find((r) => r.id === id)?.name ?? id);
const yes = (b: boolean): string => (b ? "Yes" : "No");
const percent = (share: number): string => `${Math.round(share * 100)} %`;

function guests({ brief, file }: Told): Answer[] {
  const g = brief.guests;
  const optional = (field: "ceremony" | "evening" | "quiet", asked: string): Answer[] => {
    const n = g[field];
    return n === undefined ? [] : [{ asked, said: String(n) }];
  };
  return [
    ...(brief.couple && brief.couple.length > 0 ? [{ asked: "You", said: nameList(brief.couple) }] : []),
    { asked: "Adults", said: `${g.adults}, ${g.adults === 1 ? "one of you counted" : "the two of you among them"}` },
    { asked: "Children", said: said(given(file.guests, "children"), g.children === 0 ? "None" : String(g.children)) },
    { asked: "High chairs", said: said(given(file.guests, "highChairs"), g.highChairs === 0 ? "None" : String(g.highChairs)) },
    { asked: "Wheelchair places", said: said(given(file.guests, "wheelchairs"), g.wheelchairs === 0 ? "None" : String(g.wheelchairs)) },
    { asked: "Suppliers who eat", said: said(given(file.guests, "suppliers"), g.suppliers === 0 ? "None" : String(g.suppliers)) },
    ...optional("ceremony", "At the ceremony"), ...optional("evening", "In the evening"), ...optional("quiet", "To sit away from the loudspeakers"),
  ];
}

function ceremony({ brief, file, venue }: Told): Answer[] {
  const c = brief.ceremony;
  const told = (field: string): boolean => given(file.ceremony, field);
  const here = { asked: "Ceremony here", said: said(told("here"), c.here ? "Yes, here" : "No, elsewhere") };
  if (!c.here) return [here];
  return [
    here,
    { asked: "Room", said: said(told("room"), room(c.room, venue)) },
    { asked: "Seating", said: said(told("seating"), SEATING[c.seating]) },
    { asked: "Aisle", said: said(told("aisle"), AISLE[c.aisle]) },
  ];
}

function meal({ brief, file, venue }: Told): Answer[] {
  const m = brief.meal;
  const told = (field: string): boolean => given(file.meal, field);
  const service = { asked: "Food", said: said(told("service"), SERVICE[m.service]) };
  if (m.service === "none") return [service];
  const perTable = m.perTable === "comfort" ? "As many as sit in comfort" : m.perTable === "most" ? "As many as a table takes" : String(m.perTable);
  return [
    service,
    { asked: "Tables", said: said(told("tables"), TABLES[m.tables]) },
    { asked: "How they stand", said: said(told("form"), FORM[m.form]) },
    { asked: "Your table", said: said(told("top"), TOP[m.top]) },
    ...(m.topPlaces === undefined ? [] : [{ asked: "Places at it", said: String(m.topPlaces) }]),
    ...(m.familyTables === undefined ? [] : [{ asked: "Family tables", said: String(m.familyTables) }]),
    { asked: "Places a table", said: said(told("perTable"), perTable) },
    { asked: "Room", said: said(told("room"), room(m.room, venue)) },
  ];
}

function music({ brief, file }: Told): Answer[] {
  const m = brief.music;
  const told = (field: string): boolean => given(file.music, field);
  const more = (m.more ?? []).map((x) => {
    const parts = [MUSIC[x.by], ...(x.players === undefined ? [] : [counted(x.players, "player", "players")]), ...(x.watts === undefined ? [] : [`${x.watts} W`])];
    return { asked: `Also at ${SCENE_NAMES[x.scene].toLowerCase()}`, said: parts.join(", ") };
  });
  return [
    { asked: "Music", said: said(told("by"), MUSIC[m.by]) },
    ...(m.players > 0 ? [{ asked: "Players", said: String(m.players) }] : []),
    { asked: "On the dance floor at once", said: said(told("dancing"), m.dancing === 0 ? "No dance floor" : `${percent(m.dancing)} of the guests`) },
    ...(m.by === "dj" || m.by === "band" ? [{ asked: "Plays the ceremony too", said: said(told("atCeremony"), yes(m.atCeremony)) }] : []),
    ...more,
  ];
}

function rooms({ brief, file }: Told): Answer[] {
  const things = (words: readonly string[]): string => (words.length === 0 ? "None" : capital(list(words.map(thing))));
  const drape = { any: "Where it helps", yes: "Yes", no: "No" };
  const wishes = brief.wishes.map((w) => {
    const [how, where] = "near" in w ? ["near", w.near] : "away-from" in w ? ["away from", w["away-from"]] : ["in sight of", w["in-sight-of"]];
    return { asked: "A wish", said: `${capital(thing(w.put))} ${how} ${thing(where)}` };
  });
  const brought = (brief.brought ?? []).map((b) => ({
    asked: "You bring",
    said: [b.what, `${b.width} × ${b.depth} mm`, ...(b.watts === undefined ? [] : [`${b.watts} W`]), ...(b.scene ? [`for ${SCENE_NAMES[b.scene].toLowerCase()}`] : [])].join(", "),
  }));
  return [
    { asked: "Displays", said: said(given(file, "displays"), things(brief.displays)) },
    { asked: "Extras", said: said(given(file, "extras"), things(brief.extras)) },
    { asked: "The room may be turned over", said: brief.turnover === undefined ? said(false, "As your package has it") : yes(brief.turnover) },
    ...(brief.drape === undefined ? [] : [{ asked: "The drape", said: drape[brief.drape] }]),
    ...wishes, ...brought,
  ];
}

function times({ brief }: Told): Answer[] {
  const named = [["access", "Crew come in"], ["ceremony", "Ceremony"], ["drinks", "Drinks"], ["meal", "Meal"], ["dancing", "Dancing"], ["clear", "Clear by"]] as const;
  return named.flatMap(([field, asked]) => {
    const at = brief.times?.[field];
    return at === undefined ? [] : [{ asked, said: at }];
  });
}

/** Every answer of the brief in words; `file` is the brief as it was written, which shows what was left out. */
export function answersOf(told: Told): readonly AnswerGroup[] {
  const groups = [
    { title: "Guests", answers: guests(told) }, { title: "Ceremony", answers: ceremony(told) }, { title: "Meal and tables", answers: meal(told) },
    { title: "Music and dancing", answers: music(told) }, { title: "Displays, extras and rooms", answers: rooms(told) }, { title: "Times", answers: times(told) },
  ];
  return groups.filter((g) => g.answers.length > 0);
}
