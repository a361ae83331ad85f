import { describe, expect, it } from "vitest";
import { fitTo } from "../../../lib/base";
import { briefFacts, briefSchema } from "../../../lib/brief";
import { demoBookings, larkspur, tidewheel, type DemoState } from "../../../lib/demo";
import { parseVenue, venueSchema } from "../../../lib/venue";

const BASE = "2027-04-01";
const venues = { "tidewheel-mill": venueSchema.parse(tidewheel), "larkspur-barn": venueSchema.parse(larkspur) };

describe("the demo", () => {
  it.each([["Tidewheel Mill", tidewheel], ["Larkspur Barn", larkspur]])("%s reads as a venue file", (_, file) => {
    const read = parseVenue(JSON.stringify(file));
    expect(read.ok ? [] : read.error).toEqual([]);
  });
  it("has fourteen bookings, in every state", () => {
    const states: readonly DemoState[] = ["invited", "started", "sent", "returned", "agreed", "closed"];
    expect(demoBookings(BASE)).toHaveLength(14);
    expect([...new Set(demoBookings(BASE).map((b) => b.state))].sort()).toEqual([...states].sort());
  });
  it("writes no mail address that could be anybody's (RFC 2606: .example is kept free)", () => {
    for (const b of demoBookings(BASE)) expect(b.email).toMatch(/^[a-z.-]+@[a-z.-]+\.example$/);
  });
  it.each(demoBookings(BASE).map((b) => [b.couple.join(" and "), b] as const))("%s: the answers read against their venue", (_, b) => {
    if (!b.answers) { expect(b.state).toBe("invited"); return; }
    const brief = fitTo(briefSchema, { format: "marquetry.brief/1", package: b.package, date: b.date, couple: b.couple, reference: b.reference, ...b.answers });
    expect(brief.ok ? briefFacts(brief.value, venues[b.venue]) : brief.error).toEqual([]);
  });
  it("has its days on Saturdays, whatever day it is seeded on", () => {
    for (const base of ["2027-04-01", "2027-12-31", "2028-02-29"]) for (const b of demoBookings(base)) expect(new Date(`${b.date}T00:00:00Z`).getUTCDay()).toBe(6);
  });
});
