import { describe, expect, it } from "vitest";
import { deadlineAt, dueDate, overdueFrom, todayAt } from "../../../lib/booking";

const HOUR = 3_600_000;

describe("the day a layout is due", () => {
  it("is so many days of the calendar before the event", () => {
    expect(dueDate("2027-06-12", 42)).toBe("2027-05-01");
    expect(dueDate("2028-03-01", 1)).toBe("2028-02-29");
    expect(dueDate("2027-06-12", 0)).toBe("2027-06-12");
  });

  it("ends when the day ends at the venue, whatever the zone (zones of the IANA database, UTC-11 to UTC+14)", () => {
    // Pago Pago is 11 hours behind, Kiritimati 14 ahead, the whole year: the day after the first of May begins at 00:00 there.
    expect(overdueFrom("2027-05-01", "Pacific/Pago_Pago")).toBe(Date.UTC(2027, 4, 2) + 11 * HOUR);
    expect(overdueFrom("2027-05-01", "Pacific/Kiritimati")).toBe(Date.UTC(2027, 4, 2) - 14 * HOUR);
  });

  it("has 23 or 25 hours on the nights when London's clocks change, and ends right all the same", () => {
    // Clocks go forward on 28 March 2027 at 01:00 UTC and back on 31 October 2027 at 01:00 UTC (IANA database, rule EU).
    const length = (day: string, before: string) => (overdueFrom(day, "Europe/London") - overdueFrom(before, "Europe/London")) / HOUR;
    expect(length("2027-03-28", "2027-03-27")).toBe(23);
    expect(length("2027-10-31", "2027-10-30")).toBe(25);
  });

  it("is met a millisecond before its end and overdue at its end", () => {
    const end = overdueFrom("2027-05-01", "America/Chicago");
    expect(deadlineAt("2027-05-01", "America/Chicago", end - 1)).toEqual({ daysLeft: 0, overdue: false });
    expect(deadlineAt("2027-05-01", "America/Chicago", end)).toEqual({ daysLeft: -1, overdue: true });
  });

  it("counts whole days of the calendar, over a change of clocks too", () => {
    const now = Date.UTC(2027, 2, 27, 23, 30);
    expect(todayAt("Europe/London", now)).toBe("2027-03-27");
    expect(deadlineAt("2027-03-29", "Europe/London", now).daysLeft).toBe(2);
  });
});
