import { describe, expect, it } from "vitest";
import { tidewheel } from "../../../lib/demo";
import { venueSchema, type Venue } from "../../../lib/venue";
import { fieldOf, outlinesTyped, partsOf, venueTyped, type Part, type Place, type Typed } from "../../../lib/venue/edit";

const mill = venueSchema.parse(tidewheel);
const sent = (parts: readonly Part[]): Record<string, string | readonly string[]> =>
  Object.fromEntries(parts.flatMap((part) => part.shown.flatMap((row, i) => Object.entries(row).map(([name, v]) => [fieldOf(part, i, name), v] as const))));
const typed = (place: Place, changes: Typed): ReturnType<typeof venueTyped> => venueTyped(mill, place, { ...sent(partsOf(mill, place) ?? []), ...changes });
const value = (read: ReturnType<typeof venueTyped>): Venue => { if (!read.ok) throw new Error(JSON.stringify(read.error)); return read.value; };
const at = (id: string): number => mill.rooms.findIndex((r) => r.id === id);

describe("each piece's order of places", () => {
  it("is re-ordered by the number of the place", () => {
    // The mill's cake goes to the chest's spot first, and to the feature wall second.
    const next = value(typed({ section: "places" }, { "places.0.turn": "2", "places.1.turn": "1" }));
    expect(next.places?.["cake"]).toEqual([{ wall: "feature", room: "grain-floor" }, { at: [350, 4700], room: "grain-floor" }]);
  });

  it("takes a spot counted from the upper left of its room, and a row without a number comes last", () => {
    const room = mill.rooms[at("wheel-room")], corner = [Math.min(...(room?.outline ?? []).map((p) => p[0])), Math.min(...(room?.outline ?? []).map((p) => p[1]))];
    const next = value(typed({ section: "places" }, { "places.3.piece": "cake", "places.3.room": "wheel-room", "places.3.left": "1.5", "places.3.top": "2" }));
    expect(next.places?.["cake"]?.[2]).toEqual({ at: [(corner[0] ?? 0) + 1500, (corner[1] ?? 0) + 2000], room: "wheel-room" });
  });

  it("tells at its field a spot that is no length", () => {
    expect(typed({ section: "places" }, { "places.3.piece": "cake", "places.3.left": "by the door" })).toMatchObject({ ok: false, error: [{ field: "places.3.left" }, { field: "places.3.top" }] });
  });
});

describe("the plan of the house", () => {
  it("moves one room's corner and leaves the others, and what hangs on its walls keeps its distance from the wall's start", () => {
    const terrace = at("sluice-terrace"), before = mill.rooms[terrace]?.outline ?? [];
    // The terrace is made 500 mm deeper, away from the house.
    const deep = Math.max(...before.map((p) => p[1])), shallow = Math.min(...before.map((p) => p[1]));
    const outer = mill.rooms.some((r, i) => i !== terrace && r.level === 0 && Math.min(...r.outline.map((p) => p[1])) >= deep) ? shallow : deep;
    const out = outer === deep ? 500 : -500;
    const lines = before.map(([x, y]) => `${x / 1000}, ${(y === outer ? y + out : y) / 1000}`).join("\n");
    const next = value(typed({ section: "plan" }, { [`corners.${terrace}.corners`]: lines }));
    expect(next.rooms[terrace]?.outline).toEqual(before.map(([x, y]) => [x, y === outer ? y + out : y]));
    expect(next.rooms.filter((_, i) => i !== terrace)).toEqual(mill.rooms.filter((_, i) => i !== terrace));
  });

  it("tells a room's fault at that room's corners", () => {
    const room = at("wheel-room");
    const read = typed({ section: "plan" }, { [`corners.${room}.corners`]: "0, 0\n1, somewhere\n1, 1" });
    expect(read).toMatchObject({ ok: false, error: [{ field: `corners.${room}.corners` }] });
  });

  it("tells at its corners a room that was put over another", () => {
    const room = at("wheel-room"), outline = mill.rooms[at("grain-floor")]?.outline ?? [];
    const read = typed({ section: "plan" }, { [`corners.${room}.corners`]: outline.map(([x, y]) => `${x / 1000}, ${y / 1000}`).join("\n") });
    expect(read.ok).toBe(false);
    if (!read.ok) expect(read.error.every((e) => /^corners\.\d+\.corners$/.test(e.field) || e.field === "save")).toBe(true);
  });

  it("is drawn as far as it can be read", () => {
    const room = at("wheel-room");
    const drawn = outlinesTyped(mill, { ...sent(partsOf(mill, { section: "plan" }) ?? []), [`corners.${room}.corners`]: "0, 0\n1, " });
    expect(drawn[room]).toEqual(mill.rooms[room]?.outline);
  });
});
