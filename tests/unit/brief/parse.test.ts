import { describe, expect, it } from "vitest";
import { briefFacts, briefSchema, parseBrief } from "../../../lib/brief";
import { tidewheel } from "../../../lib/demo";
import { venueSchema } from "../../../lib/venue";

const mill = venueSchema.parse(tidewheel);
const least = { format: "marquetry.brief/1", package: "dry-hire", date: "2027-06-12", guests: { adults: 2 } };
const read = (more: object) => parseBrief(JSON.stringify({ ...least, ...more }), mill);
const told = (more: object): readonly string[] => { const r = read(more); return r.ok ? [] : r.error.map((p) => `${p.path}: ${p.message}`); };

describe("a brief with nothing but what must be said", () => {
  it("takes the defaults of the contract", () => {
    const r = read({});
    expect(r.ok && r.value).toMatchObject({
      guests: { adults: 2, children: 0, highChairs: 0, wheelchairs: 0, suppliers: 0 },
      ceremony: { here: true, room: "any", seating: "rows", aisle: "centre" },
      meal: { service: "plated", tables: "any", form: "any", top: "pair", perTable: "comfort", room: "any" },
      music: { by: "playlist", dancing: 0, atCeremony: false }, displays: [], extras: [], wishes: [], notes: "",
    });
    // As the package allows: the brief itself says nothing.
    expect(r.ok && r.value.turnover).toBeUndefined();
  });
});

describe("a brief against its venue", () => {
  it("a package that the venue lacks, with those it has", () => {
    expect(told({ package: "gold" })).toEqual(['package: "gold" is not a package of this venue; allowed: "dry-hire", "hosted-day", "hosted-weekend"']);
  });
  it("a room that the venue lacks", () => expect(told({ meal: { room: "attic" } })[0]).toContain('meal.room: "attic" is not a room of this venue; allowed: "any", "grain-floor"'));
  it("a room that only the package lacks is for the engine to answer", () => {
    expect(briefFacts(briefSchema.parse({ ...least, meal: { room: "millers-parlour" } }), mill)).toEqual([]);
  });
});

describe("limits", () => {
  it("5,000 guests are taken, one more is not", () => {
    expect(told({ guests: { adults: 4000, children: 1000 } })).toEqual([]);
    expect(told({ guests: { adults: 4000, children: 1001 } })).toEqual(["guests.children: 1001 is not allowed; allowed: with the adults at most 5000"]);
    expect(told({ guests: { adults: 5001 } })).toEqual(["guests.adults: 5001 is not allowed; allowed: a whole number from 1 to 5000"]);
  });
  it("29 February is a day in leap years alone", () => {
    expect(told({ date: "2028-02-29" })).toEqual([]);
    expect(told({ date: "2027-02-29" })).toEqual(['date: "2027-02-29" is not allowed; allowed: a day of the calendar, as YYYY-MM-DD']);
    expect(told({ date: "2100-02-29" })).not.toEqual([]);
    expect(told({ date: "2000-02-29" })).toEqual([]);
  });
  it("what is free to say may hold anything", () => expect(told({ extra: { deep: [1, { a: null }] } })).toEqual([]));
});
