import { Temporal } from "temporal-polyfill";
import type { Brief } from "../brief";
import type { Layout } from "../layout";
import type { Venue } from "../venue";
import { beginOf, inOrder, partName, roomName } from "./sheets/told";
import { nameList, SCENE_NAMES } from "./words";

/** A whole day, or from one moment to another; moments in milliseconds since 1970 UTC. */
type When = { readonly day: string } | { readonly from: number; readonly to?: number };
type CalendarEvent = { readonly id: string; readonly title: string; readonly when: When; readonly where?: string; readonly says?: string };

export type CalendarInput = {
  readonly venue: Venue; readonly brief: Brief; readonly layout?: Layout;
  readonly reference: string; readonly revision: number;
  /** YYYY-MM-DD; left out: not told. */
  readonly due?: string;
  /** When the file is made, milliseconds since 1970 UTC. */
  readonly now: number;
};

const escaped = (text: string): string =>
  text.replace(/[\u0000-\u0008\u000b-\u001f\u007f\u2066-\u2069]/g, "").replace(/\\/g, "\\\\").replace(/;/g, "\\;").replace(/,/g, "\\,").replace(/\r\n?|\n/g, "\\n");

const octets = (letter: string): number => { const c = letter.codePointAt(0) ?? 0; return c < 0x80 ? 1 : c < 0x800 ? 2 : c < 0x10000 ? 3 : 4; };

/** A content line folded so that none is longer than 75 octets, never within a character (RFC 5545, 3.1). */
export function folded(line: string): string {
  const lines: string[] = [];
  let part = "", size = 0;
  for (const letter of line) {
    const n = octets(letter);
    if (size + n > 75) {
      lines.push(part);
      part = " ";
      size = 1;
    }
    part += letter;
    size += n;
  }
  return [...lines, part].join("\r\n");
}

const stamp = (ms: number): string => `${new Date(ms).toISOString().slice(0, 19).replace(/[-:]/g, "")}Z`;
const day = (date: string): string => date.replaceAll("-", "");
const dayAfter = (date: string): string => Temporal.PlainDate.from(date).add({ days: 1 }).toString();

function timesOf(when: When): readonly string[] {
  // The end of a whole day is the day after it: it is not counted in (RFC 5545, 3.6.1).
  if ("day" in when) return [`DTSTART;VALUE=DATE:${day(when.day)}`, `DTEND;VALUE=DATE:${day(dayAfter(when.day))}`, "TRANSP:TRANSPARENT"];
  return [`DTSTART:${stamp(when.from)}`, ...(when.to === undefined ? [] : [`DTEND:${stamp(when.to)}`])];
}

function eventLines(event: CalendarEvent, by: CalendarInput): readonly string[] {
  return [
    "BEGIN:VEVENT", `UID:${escaped(`${event.id}.${by.reference}@${by.venue.id}`)}`, `DTSTAMP:${stamp(by.now)}`, `SEQUENCE:${by.revision}`, ...timesOf(event.when),
    `SUMMARY:${escaped(event.title)}`, ...(event.where ? [`LOCATION:${escaped(event.where)}`] : []), ...(event.says ? [`DESCRIPTION:${escaped(event.says)}`] : []), "END:VEVENT",
  ];
}

type Clocked = { readonly id: string; readonly title: string; readonly time: string; readonly where?: string };

/** Clock times of the day one after another; a time earlier than the one before it is past midnight. */
function moments(list: readonly Clocked[], { brief, venue }: CalendarInput): readonly (Clocked & { readonly at: number })[] {
  let date = Temporal.PlainDate.from(brief.date);
  let last = "00:00";
  return list.map((c) => {
    if (c.time < last) date = date.add({ days: 1 });
    last = c.time;
    return { ...c, at: date.toZonedDateTime({ timeZone: venue.timeZone, plainTime: c.time }).epochMilliseconds };
  });
}

/** What stands in the calendar: the day, the layout's due date, each part of the day that has a time, each turnover. */
function calendarEvents(input: CalendarInput): readonly CalendarEvent[] {
  const { venue, brief, layout, due } = input;
  const who = nameList(brief.couple ?? []) || input.reference;
  const scenes = layout ? inOrder(layout) : [];
  const named = (["ceremony", "drinks", "meal", "dancing"] as const).flatMap((id): readonly Clocked[] => {
    const time = brief.times?.[id];
    const scene = scenes.find((s) => s.id === id);
    return time === undefined ? [] : [{ id, time, title: `${SCENE_NAMES[id]}: ${who}`, ...(scene ? { where: scene.rooms.map((r) => roomName(r, venue)).join(", ") } : {}) }];
  });
  const access = brief.times?.access, clear = brief.times?.clear;
  const list = moments([
    ...(access === undefined ? [] : [{ id: "access", time: access, title: `Crew come in: ${who}` }]), ...named,
    ...(clear === undefined ? [] : [{ id: "clear", time: clear, title: `Clear by now: ${who}` }]),
  ], input);
  const timed = list.map((c, i): CalendarEvent => {
    const next = list[i + 1];
    return { id: c.id, title: c.title, where: c.where ? `${venue.name}: ${c.where}` : venue.name, when: { from: c.at, ...(next ? { to: next.at } : {}) } };
  });
  const turned = (layout?.turnovers ?? []).flatMap((t, i): readonly CalendarEvent[] => {
    const start = layout && beginOf(t, { venue, brief, layout });
    const at = start === undefined ? undefined : list.find((c) => c.time === start)?.at;
    if (at === undefined) return [];
    const room = t.room ? roomName(t.room, venue) : "";
    return [{
      id: `turnover-${i + 1}`, title: `Turnover${room ? `, ${room}` : ""}: ${who}`, where: room ? `${venue.name}: ${room}` : venue.name, when: { from: at, to: at + Math.ceil(t.minutes) * 60_000 },
      says: `${SCENE_NAMES[t.from]} to ${partName({ id: t.to }).toLowerCase()}, ${Math.ceil(t.minutes)} minutes with a crew of ${t.crew}.`,
    }];
  });
  return [
    { id: "day", title: `${who} at ${venue.name}`, when: { day: brief.date }, where: venue.name, says: `Booking ${input.reference}.` },
    ...(due === undefined ? [] : [{ id: "due", title: `Layout due: ${who}`, when: { day: due }, where: venue.name }]), ...timed, ...turned,
  ];
}

/** The calendar file of a booking (RFC 5545): moments in UTC, whole days by date. The same input gives the same text. */
export function calendarFile(input: CalendarInput): string {
  const lines = ["BEGIN:VCALENDAR", "VERSION:2.0", "PRODID:-//Marquetry//Sheets for the day//EN", "CALSCALE:GREGORIAN", ...calendarEvents(input).flatMap((e) => eventLines(e, input)), "END:VCALENDAR"];
  return `${lines.map(folded).join("\r\n")}\r\n`;
}
