import { describe, expect, it } from "vitest";
import { briefSchema } from "../../../../lib/brief";
import { tidewheel } from "../../../../lib/demo";
import { arrange, repair } from "../../../../lib/engine";
import type { Layout } from "../../../../lib/layout";
import { venueSchema, type Venue } from "../../../../lib/venue";
import { hall, meal, musts, pushed, spots } from "./hall";

const mill = venueSchema.parse(tidewheel);
const day = briefSchema.parse({
  format: "marquetry.brief/1", package: "hosted-day", date: "2027-06-12", guests: { adults: 50, wheelchairs: 1 },
  meal: { service: "buffet" }, music: { by: "dj", dancing: 0.3 }, displays: ["welcome", "cards", "cake"],
});
const first = (venue: Venue, asked: typeof day): Layout => {
  const layout = arrange(venue, asked, { layouts: 1 }).layouts[0];
  if (!layout) throw new Error("nothing was arranged");
  return layout;
};

describe("putting a layout right", () => {
  const good = first(mill, day);
  const tables = (good.scenes.find((s) => s.id === "meal")?.items ?? []).filter((i) => i.role === "dining").map((i) => i.id);

  it("moves nothing in a layout that breaks no must", () => {
    expect(repair(mill, day, good)).toMatchObject({ status: "arranged", moved: [], relaid: [] });
  });

  for (const id of [tables[0], tables[2], "welcome"]) it(`moves no more than one piece where ${id} alone was pushed into another's floor`, () => {
    const bad = pushed(good, id ?? "", 1100);
    const found = repair(mill, day, bad);
    expect(found.status).toBe("arranged");
    expect(found.moved?.length).toBeLessThanOrEqual(1);
    expect(found.layouts.flatMap((l) => musts(mill, l, day))).toEqual([]);
  });

  it("keeps a fixed piece exactly where it is, and moves others out of its way", () => {
    const id = tables[2] ?? "", bad = pushed(good, id, 900);
    const found = repair(mill, day, bad, [id]);
    const after = found.layouts[0] ?? found.closest;
    expect(after && spots(after, id)).toEqual(spots(bad, id));
    expect(found.status === "arranged" ? musts(mill, found.layouts[0] ?? bad, day) : found.reasons.map((r) => r.level)).toEqual(found.status === "arranged" ? [] : found.reasons.map(() => "must"));
  });

  it("says what stands in the way where a fixed piece stands outside its room, and keeps it there", () => {
    const bad = pushed(good, "welcome", 60_000);
    const found = repair(mill, day, bad, ["welcome"]);
    expect(found.status).toBe("not-found");
    expect(found.reasons.map((r) => r.code)).toContain("outside-room");
    expect(found.closest && spots(found.closest, "welcome")).toEqual(spots(bad, "welcome"));
  });

  it("gives the same bytes for the same layout", () => {
    const bad = pushed(good, tables[1] ?? "", -700);
    expect(JSON.stringify(repair(mill, day, bad))).toBe(JSON.stringify(repair(mill, day, bad)));
  });
});

describe("the nearest spot", () => {
  const round = { id: "round", name: "Round", kind: "table" as const, shape: { diameter: 1500 }, count: 4, seats: { comfort: 6, most: 8 } };
  const venue = hall(11_000, 9000, [round]);
  const asked = meal(12);
  const two = first(venue, asked);

  it("is no farther than the best of all spots 40 mm apart that pass the whole check, for a table pushed onto another", () => {
    const [a, b] = (two.scenes[0]?.items ?? []).filter((i) => i.role === "dining");
    if (!a || !b) throw new Error("two tables were asked for");
    const bad = pushed(two, a.id, b.at[0] + 500 - a.at[0], b.at[1] + 300 - a.at[1]);
    const stood = bad.scenes[0]?.items.find((i) => i.id === a.id)?.at ?? [0, 0];
    const found = repair(venue, asked, bad, [b.id]).layouts[0];
    const at = found?.scenes[0]?.items.find((i) => i.id === a.id)?.at ?? [Infinity, 0];
    const far = Math.hypot(at[0] - stood[0], at[1] - stood[1]);
    let best = Infinity;
    for (let x = 760; x <= 10_240; x += 40) for (let y = 760; y <= 8240; y += 40) {
      const d = Math.hypot(x - stood[0], y - stood[1]);
      if (d < far - 25 && d < best && musts(venue, pushed(bad, a.id, x - stood[0], y - stood[1]), asked).length === 0) best = d;
    }
    expect(best).toBe(Infinity);
  });

  it("lays the tables anew round fixed ones where moving one by one does not do", () => {
    // Everything heaped in the middle: the first stays, the rest must find floor.
    const heap = (two.scenes[0]?.items ?? []).reduce((l, i) => pushed(l, i.id, 5500 - i.at[0], 4500 - i.at[1]), two);
    const id = two.scenes[0]?.items[0]?.id ?? "";
    const found = repair(venue, asked, heap, [id]);
    expect(found.status).toBe("arranged");
    expect(spots(found.layouts[0] ?? two, id)).toEqual(spots(heap, id));
  });

  it("turns the chairs of a fixed table about it where one stands on a column, and leaves the table", () => {
    const [room] = venue.rooms, t = (two.scenes[0]?.items ?? []).find((i) => i.role === "dining"), s = t?.seats[0];
    if (!room || !t || !s) throw new Error("a table was asked for");
    // A column of 200 mm that the back of the first chair stands into, clear of the table itself.
    const [x, y] = [Math.round(s.x + (s.x - t.at[0]) * 0.2), Math.round(s.y + (s.y - t.at[1]) * 0.2)], column = { id: "post", kind: "column" as const, outline: [[x - 100, y - 100], [x + 100, y - 100], [x + 100, y + 100], [x - 100, y + 100]] as const };
    const posted = { ...venue, rooms: [{ ...room, obstacles: [column] }] };
    expect(musts(posted, two, asked).length).toBeGreaterThan(0);
    const found = repair(posted, asked, two, [t.id]), after = found.layouts[0];
    expect(found.status).toBe("arranged");
    expect(after && musts(posted, after, asked)).toEqual([]);
    expect(after && spots(after, t.id)).toEqual(spots(two, t.id));
    expect(after?.scenes[0]?.seats).toBe(two.scenes[0]?.seats);
  });

  it("sets places and a table more where the brief has more guests than the layout", () => {
    const found = repair(venue, meal(20), two);
    expect(found.status).toBe("arranged");
    expect(found.layouts[0]?.scenes[0]?.seats).toBe(20);
  });
});
