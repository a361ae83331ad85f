import ICAL from "ical.js";
import { describe, expect, test } from "vitest";
import { briefSchema } from "@/lib/brief";
import { calendarFile, folded } from "@/lib/papers";
import { briefFile, layout, venue } from "../unit/papers/fixture";

const NOW = Date.parse("2027-05-09T12:00:00Z");
const brief = briefSchema.parse(briefFile({ couple: ["Ines; Calloway, the elder", "ליאור בן־דוד"], times: { access: "09:00", ceremony: "13:30", meal: "16:00", dancing: "19:30", clear: "00:30" } }));
const text = calendarFile({ venue: venue(), brief, layout: layout(), reference: "QK7M-31", revision: 3, due: "2027-05-15", now: NOW });
const events = new ICAL.Component(ICAL.parse(text)).getAllSubcomponents("vevent").map((c) => new ICAL.Event(c));
const event = (uid: string): ICAL.Event => {
  const found = events.find((e) => e.uid.startsWith(`${uid}.`));
  if (!found) throw new Error(`no event ${uid} among ${events.map((e) => e.uid).join(", ")}`);
  return found;
};

describe("the calendar file, read by another library (RFC 5545)", () => {
  test("is folded so that no line is longer than 75 octets, between characters (3.1)", () => {
    const lines = text.split("\r\n");
    expect(text.endsWith("\r\n")).toBe(true);
    lines.forEach((line) => expect(Buffer.byteLength(line, "utf8")).toBeLessThanOrEqual(75));
    for (const n of [74, 75, 76, 149, 150]) {
      const whole = `SUMMARY:${"é佐𝄞x".repeat(60)}`.slice(0, n);
      expect(folded(whole).replaceAll("\r\n ", "")).toBe(whole);
    }
    expect(folded("x".repeat(75))).toBe("x".repeat(75));
    expect(folded("x".repeat(76))).toBe(`${"x".repeat(75)}\r\n x`);
  });
  test("gives a whole day by its date, its end the day after (3.3.4, 3.6.1)", () => {
    expect(text).toContain("DTSTART;VALUE=DATE:20270612\r\nDTEND;VALUE=DATE:20270613");
    expect(event("due").startDate.isDate).toBe(true);
    expect(event("due").startDate.toString()).toBe("2027-05-15");
    expect(event("due").endDate.toString()).toBe("2027-05-16");
  });
  test("gives moments in UTC: 13.30 in London in June is 12.30 (3.3.5, form 2)", () => {
    expect(event("ceremony").startDate.toString()).toBe("2027-06-12T12:30:00Z");
    expect(event("ceremony").endDate.toString()).toBe("2027-06-12T15:00:00Z");
  });
  test("a time past midnight is on the day after", () => {
    expect(event("dancing").endDate.toString()).toBe("2027-06-12T23:30:00Z");
  });
  test("keeps commas, semicolons and names in any script (3.3.11)", () => {
    expect(event("day").summary).toBe("Ines; Calloway, the elder and ליאור בן־דוד at Saltings Hall");
  });
  test("names each event once, with its revision and stamp (3.8.4.7, 3.8.7.2, 3.8.7.4)", () => {
    expect(new Set(events.map((e) => e.uid)).size).toBe(events.length);
    events.forEach((e) => expect([e.sequence, e.component.getFirstPropertyValue("dtstamp")?.toString()]).toEqual([3, "2027-05-09T12:00:00Z"]));
    expect(text).toMatch(/^BEGIN:VCALENDAR\r\nVERSION:2\.0\r\nPRODID:/);
  });
  test("a day of 23 hours in another zone keeps its clock (Chicago, 14 March 2027, clocks go on at 02:00)", () => {
    const barn = calendarFile({
      venue: venue({ timeZone: "America/Chicago" }), reference: "B-1", revision: 1, now: NOW,
      brief: briefSchema.parse(briefFile({ date: "2027-03-13", times: { dancing: "20:00", clear: "03:30" } })),
    });
    expect(barn).toContain("DTSTART:20270314T020000Z\r\nDTEND:20270314T083000Z");
  });
});
