import { readdirSync, readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { larkspur, tidewheel } from "../../../lib/demo";
import type { Item, Layout } from "../../../lib/layout";
import { check } from "../../../lib/rules";
import { parseVenue, venueSchema, type Venue } from "../../../lib/venue";

/** A venue as it stands on a day with nothing on: its standing furniture alone. */
function bare(venue: Venue): Layout {
  const items = venue.rooms.flatMap((r) => r.standing.map((s): Item => ({
    id: s.id, kind: s.kind === "screen" || s.kind === "arch" || s.kind === "stage" ? "other" : s.kind, label: s.name, room: r.id,
    from: { standing: s.id }, shape: s.shape, at: s.at, angle: s.angle, seats: [],
  })));
  return { id: "bare", title: "Bare", why: [], scenes: [{ id: "meal", title: "Meal", rooms: venue.rooms.map((r) => r.id), drapes: [], items, seats: 0, numbers: [] }], turnovers: [], findings: [] };
}
const musts = (venue: Venue): readonly string[] => check(venue, bare(venue)).filter((f) => f.level === "must").map((f) => f.text);

describe("standing furniture leaves doors and other pieces alone", () => {
  it.each([["Tidewheel Mill", tidewheel], ["Larkspur Barn", larkspur]])("%s", (_, file) => expect(musts(venueSchema.parse(file))).toEqual([]));
  const folder = "tests/fixtures/venues";
  it.each(readdirSync(folder))("%s", (name) => {
    const read = parseVenue(readFileSync(`${folder}/${name}`, "utf8"));
    expect(read.ok ? musts(read.value) : read.error).toEqual([]);
  });
});
