import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { deadlineAt, dueDate, overdueFrom, todayAt } from "../../lib/booking";

const HOUR = 3_600_000;
/** Zones from the farthest behind UTC to the farthest ahead, with odd offsets and both kinds of clock changes (IANA database). */
const ZONES = [
  "Pacific/Pago_Pago", "Pacific/Honolulu", "America/St_Johns", "America/Chicago", "America/Santiago", "America/Havana", "UTC", "Europe/London", "Europe/Paris",
  "Africa/Casablanca", "Asia/Kolkata", "Asia/Kathmandu", "Australia/Lord_Howe", "Australia/Sydney", "Pacific/Auckland", "Pacific/Chatham", "Pacific/Apia", "Pacific/Kiritimati",
] as const;

/** The day and the hour that a wall clock shows in a zone: Intl's reckoning, apart from ours. */
function clock(zone: string, at: number): { readonly day: string; readonly minutes: number } {
  const parts = new Intl.DateTimeFormat("en-GB", {
    timeZone: zone, calendar: "gregory", hourCycle: "h23", year: "numeric", month: "2-digit", day: "2-digit", hour: "2-digit", minute: "2-digit",
  }).formatToParts(at);
  const part = (type: string): string => parts.find((p) => p.type === type)?.value ?? "";
  return { day: `${part("year")}-${part("month")}-${part("day")}`, minutes: Number(part("hour")) * 60 + Number(part("minute")) };
}

const dayLength = (zone: string, before: string, day: string): number => (overdueFrom(day, zone) - overdueFrom(before, zone)) / HOUR;

describe("deadlines in the venue's zone, UTC-11 to UTC+14 (IANA time zone database, as Intl holds it)", () => {
  it("a day ends at its own midnight: 11 hours after UTC's in Pago Pago, 14 before it in Kiritimati", () => {
    expect(overdueFrom("2027-05-01", "Pacific/Pago_Pago")).toBe(Date.UTC(2027, 4, 2) + 11 * HOUR);
    expect(overdueFrom("2027-05-01", "Pacific/Kiritimati")).toBe(Date.UTC(2027, 4, 2) - 14 * HOUR);
    expect(overdueFrom("2027-05-01", "Pacific/Pago_Pago") - overdueFrom("2027-05-01", "Pacific/Kiritimati")).toBe((11 + 14) * HOUR);
  });

  it("whatever the moment and the zone, the day is the one on the venue's wall", () => {
    fc.assert(fc.property(fc.constantFrom(...ZONES), fc.integer({ min: Date.UTC(2026, 0, 1), max: Date.UTC(2032, 0, 1) }), (zone, now) =>
      todayAt(zone, now) === clock(zone, now).day), { seed: 28, numRuns: 400 });
  });

  it("the first moment past a due date shows the next day, and the millisecond before it the due date", () => {
    fc.assert(fc.property(fc.constantFrom(...ZONES), fc.integer({ min: 0, max: 2_000 }), (zone, days) => {
      const due = new Date(Date.UTC(2026, 0, 1) + days * 24 * HOUR).toISOString().slice(0, 10);
      const next = new Date(Date.UTC(2026, 0, 1) + (days + 1) * 24 * HOUR).toISOString().slice(0, 10);
      const end = overdueFrom(due, zone);
      expect([clock(zone, end).day, clock(zone, end - 1).day]).toEqual([next, due]);
      expect([deadlineAt(due, zone, end - 1), deadlineAt(due, zone, end)]).toEqual([{ daysLeft: 0, overdue: false }, { daysLeft: -1, overdue: true }]);
    }), { seed: 28, numRuns: 300 });
  });

  it("days left are days of the calendar: so many days on, so many fewer, across any change of clocks", () => {
    fc.assert(fc.property(fc.constantFrom(...ZONES), fc.integer({ min: 0, max: 1_500 }), fc.integer({ min: 0, max: 365 }), (zone, days, before) => {
      const event = new Date(Date.UTC(2026, 0, 1) + days * 24 * HOUR).toISOString().slice(0, 10);
      const due = dueDate(event, before);
      expect(Date.parse(`${event}T00:00:00Z`) - Date.parse(`${due}T00:00:00Z`)).toBe(before * 24 * HOUR);
      expect(deadlineAt(event, zone, overdueFrom(due, zone) - 1).daysLeft).toBe(before);
    }), { seed: 28, numRuns: 300 });
  });
});

describe("nights when clocks change (IANA time zone database, rules EU, US, Chile, Cuba, AN and LH)", () => {
  it.each([
    ["Europe/London", "2027-03-27", "2027-03-28", 23], ["Europe/London", "2027-10-30", "2027-10-31", 25],
    ["America/Chicago", "2027-03-13", "2027-03-14", 23], ["America/Chicago", "2027-11-06", "2027-11-07", 25],
    ["Australia/Sydney", "2027-10-02", "2027-10-03", 23], ["Australia/Sydney", "2027-04-03", "2027-04-04", 25],
    ["Australia/Lord_Howe", "2027-10-02", "2027-10-03", 23.5], ["Australia/Lord_Howe", "2027-04-03", "2027-04-04", 24.5],
  ])("in %s the day after %s, %s, has %d hours", (zone, before, day, hours) => expect(dayLength(zone, before, day)).toBe(hours));

  it("where clocks go forward at midnight a due date ends at the first moment that the next day has, 01:00", () => {
    // Santiago, first Sunday on or after 2 September: 5 September 2027 has no 00:00. Havana, second Sunday of March: 14 March 2027.
    for (const [zone, due, next] of [["America/Santiago", "2027-09-04", "2027-09-05"], ["America/Havana", "2027-03-13", "2027-03-14"]] as const) {
      const end = overdueFrom(due, zone);
      expect(clock(zone, end)).toEqual({ day: next, minutes: 60 });
      expect(clock(zone, end - 1)).toEqual({ day: due, minutes: 24 * 60 - 1 });
    }
  });

  it("where a whole day was left out, the day before it ends when the day after it begins (Apia, 30 December 2011)", () => {
    expect(overdueFrom("2011-12-29", "Pacific/Apia")).toBe(Date.UTC(2011, 11, 30, 10));
    expect(todayAt("Pacific/Apia", Date.UTC(2011, 11, 30, 10))).toBe("2011-12-31");
  });

  it("a due date 42 days before 2 May 2027 lies before the change of London's clocks, 21 March, and ends at 00:00 of winter time", () => {
    expect(dueDate("2027-05-02", 42)).toBe("2027-03-21");
    expect(overdueFrom("2027-03-21", "Europe/London")).toBe(Date.UTC(2027, 2, 22));
    expect(overdueFrom(dueDate("2027-05-02", 28), "Europe/London")).toBe(Date.UTC(2027, 3, 4, 23));
  });
});
