import type { Venue } from "../schema";
import type { Form, Option, Part } from "./form";

const figure = (n: number | undefined): string => (n === undefined ? "" : String(n));
const MINUTES = [["table", "A table"], ["chair", "A chair"], ["panel", "A dance panel"], ["heavy", "A heavy piece"], ["cover", "A cover"], ["cloth", "A cloth"]] as const;
export const LENGTHS: readonly Option[] = [{ value: "metric", text: "metres" }, { value: "imperial", text: "feet and inches" }];

export function houseParts(venue: Venue): readonly Part[] {
  const doors = venue.rooms.flatMap((r) => r.doors.filter((d) => d.leads === "back-of-house").map((d) => ({ value: d.id, text: `behind the door “${d.id.replaceAll("-", " ")}”` })));
  return [
    { id: "house", title: "The house", key: "name", at: "", words: { locale: "locale", currency: "currency", timeZone: "timeZone", north: "north", store: "store" }, fields: [
      { name: "name", label: "Name of the venue", kind: "text" }, { name: "locale", label: "Language of dates and figures", kind: "text", hint: "A language tag, such as en-GB." }, { name: "currency", label: "Currency", kind: "text", hint: "Three letters, such as GBP." },
      { name: "timeZone", label: "Time zone", kind: "text", hint: "Such as Europe/London." }, { name: "lengths", label: "Lengths in", kind: "one", options: LENGTHS }, { name: "north", label: "North, degrees from up the page", kind: "figure" },
      { name: "store", label: "Furniture is stored in", kind: "one", options: [{ value: "", text: "" }, ...venue.rooms.map((r) => ({ value: r.id, text: r.name })), ...doors] },
    ], shown: [{ name: venue.name, locale: venue.locale, currency: venue.currency, timeZone: venue.timeZone, lengths: venue.lengths, north: figure(venue.north), store: venue.store ?? "" }] },
    { id: "contact", title: "Whom to ask", key: "name", at: "contact", words: { email: "email", phone: "phone", text: "text" }, fields: [{ name: "name", label: "Name", kind: "text" }, { name: "email", label: "Mail address", kind: "text" }, { name: "phone", label: "Telephone", kind: "text" }, { name: "text", label: "A line more", kind: "text" }],
      shown: [{ name: venue.contact?.name ?? "", email: venue.contact?.email ?? "", phone: venue.contact?.phone ?? "", text: venue.contact?.text ?? "" }] },
    { id: "crew", title: "Crew", key: "size", at: "crew", words: { size: "size", ...Object.fromEntries(MINUTES.map(([m]) => [`minutes.${m}`, m])) }, about: "How many turn a room over, and minutes for each thing by one person. Left empty, common figures hold.", fields: [{ name: "size", label: "People", kind: "whole" }, ...MINUTES.map(([name, label]) => ({ name, label, kind: "figure" as const }))],
      shown: [{ size: figure(venue.crew?.size), ...Object.fromEntries(MINUTES.map(([m]) => [m, figure(venue.crew?.minutes?.[m])])) }] },
    { id: "texts", title: "Texts of the house", one: "text", key: "name", at: "texts", about: "Words of your own under a name, as the papers print them.", fields: [{ name: "name", label: "Name", kind: "text" }, { name: "words", label: "Words", kind: "area" }],
      shown: Object.entries(venue.texts ?? {}).map(([name, words]) => ({ name, words })) },
  ];
}

export function readHouse(form: Form, venue: Venue): Partial<Venue> {
  const house = form.one("house"), contact = form.one("contact"), crew = form.one("crew");
  const texts = form.rows("texts").map((row) => [row.text("name"), row.raw("words")] as const);
  const minutes = Object.fromEntries(MINUTES.map(([m]) => [m, crew.maybe.figure(m)]).filter(([, n]) => n !== undefined));
  const person = Object.fromEntries((["name", "email", "phone", "text"] as const).map((w) => [w, contact.maybe.text(w)]).filter(([, t]) => t !== undefined));
  return {
    name: house.text("name"), locale: house.text("locale"), currency: house.text("currency").toUpperCase(), timeZone: house.text("timeZone"), lengths: house.raw("lengths") === "imperial" ? "imperial" : "metric",
    north: house.maybe.figure("north"), store: house.maybe.text("store"), contact: Object.keys(person).length > 0 ? person : undefined,
    crew: crew.raw("size") === "" ? undefined : { ...venue.crew, size: crew.whole("size", 1, 500), minutes: Object.keys(minutes).length > 0 ? minutes : undefined },
    texts: texts.length > 0 ? Object.fromEntries(texts) : undefined,
  };
}
