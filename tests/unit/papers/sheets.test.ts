import { describe, expect, test } from "vitest";
import { briefSchema } from "@/lib/brief";
import { composeCarried, type Mark } from "@/lib/drawing";
import { turn, type Point } from "@/lib/geometry";
import { spreadApart } from "@/lib/drawing/plan/apart";
import { besides, bringOut } from "@/lib/papers/sheets/counts";
import { buildOrder } from "@/lib/papers/sheets/order";
import { spotsOf, type RoomSpots } from "@/lib/papers/sheets/spots";
import { sharedSteps } from "@/lib/papers/sheets/turnover";
import { spanOf, timetableOf } from "@/lib/papers/turnover";
import { beginOf, clock, type Told } from "@/lib/papers/sheets/told";
import { straightWalk } from "@/lib/papers/sheets/walk";
import { printSheets } from "@/lib/print";
import type { Layout, Scene } from "@/lib/layout";
import { open, textOf } from "../print/read";
import { briefFile, layout, venue } from "./fixture";

const brief = briefSchema.parse(briefFile({ times: { ceremony: "13:30", drinks: "14:15", meal: "16:00" } }));
const told = (more: object = {}): Told => ({ venue: venue(), brief, layout: layout(more) });
/** The same hall, turned as a whole about the venue's origin. */
function turnedAll({ venue: v, brief: b, layout: l }: Told, degrees: number): Told {
  const at = (p: Point): Point => turn(p, degrees);
  const ends = <T extends { readonly from: Point; readonly to: Point }>(list: readonly T[]): readonly T[] => list.map((x) => ({ ...x, from: at(x.from), to: at(x.to) }));
  return {
    brief: b,
    venue: { ...v, rooms: v.rooms.map((r) => ({ ...r, outline: r.outline.map(at), doors: ends(r.doors), windows: ends(r.windows), walls: ends(r.walls) })) },
    layout: { ...l, scenes: l.scenes.map((s) => ({ ...s, items: s.items.map((i) => ({ ...i, at: at(i.at), angle: i.angle + degrees, seats: i.seats.map((p) => { const [x, y] = at([p.x, p.y]); return { ...p, x, y, facing: p.facing + degrees }; }) })) })) },
  };
}
const textsOf = (marks: readonly Mark[]): readonly string[] => marks.flatMap((m) => (m.kind === "text" ? [m.text] : m.kind === "group" || m.kind === "clip" ? textsOf(m.marks) : []));

const sceneOf = (l: Layout, id: string): Scene => {
  const found = l.scenes.find((s) => s.id === id);
  if (!found) throw new Error(`no scene ${id}`);
  return found;
};

describe("what is brought out", () => {
  const t = told();
  test("for the first part of the day is all that stands then", () => {
    expect(bringOut(sceneOf(t.layout, "ceremony"), t).map((c) => [c.n, c.name])).toEqual([[42, "Chairs"]]);
  });
  test("for a later part is what does not stand there already, and chairs off the rows are told", () => {
    const counts = bringOut(sceneOf(t.layout, "meal"), t);
    const seats = 5 * 8 + 2 - 1;
    expect(counts.map((c) => [c.n, c.name.replaceAll("\u00a0", " ")])).toEqual([[5, "Round table, 1.68 m"], [1, "Small table, 1.22 × 0.76 m"], [seats, "Chairs"], [5, "Table numbers"]]);
    expect(counts.find((c) => c.name === "Chairs")?.under).toBe(`${seats} off the rows that stood before`);
  });
});

describe("loose chairs", () => {
  const rows = (n: number): Told => {
    const chair = layout().scenes[0]?.items[0];
    const items = Array.from({ length: n }, (_, i) => ({ ...chair, id: `c${i}`, at: [600 + (i % 24) * 460, 600 + Math.floor(i / 24) * 800] }));
    return told({ scenes: [{ id: "ceremony", title: "Ceremony", rooms: ["hall"], items, seats: n }], turnovers: [] });
  };
  test.each([[200, 0], [201, 1]])("%i in one room: the line that they are fastened stands %i times (IBC 2018, 1029.15: more than 200)", (n, times) => {
    const t = rows(n);
    expect(besides(sceneOf(t.layout, "ceremony"), t).filter((s) => s.includes("fasten")).length).toBe(times);
  });
  test("the line is on the printed sheet", async () => {
    const t = rows(201);
    const { bytes } = await printSheets({ ...t, meta: { reference: "R", revision: 1, now: new Date(0) } });
    expect(await textOf(bytes)).toMatch(/201 loose chairs in Long Hall: fasten them together in groups of at least three/);
  });
});

describe("where it stands", () => {
  test("is said from the upper left corner of the room, in the middle of the piece", () => {
    const t = told();
    const spots = spotsOf(sceneOf(t.layout, "meal"), t)[0];
    expect(spots?.pieces.slice(0, 2)).toEqual([{ name: "Table 1", across: "2.00", down: "2.00" }, { name: "Table 2", across: "6.00", down: "2.00" }]);
    expect(spotsOf(sceneOf(t.layout, "ceremony"), t)[0]?.rows[0]).toEqual({ name: "1 to 6: 7", across: `${(3).toFixed(2)} to ${(3 + 6 * 0.5).toFixed(2)}`, down: `${(2).toFixed(2)} to ${(2 + 5 * 0.9).toFixed(2)}` });
  });
  test("in a room that stands askew is said along the room's own walls, as on the plan", () => {
    const t = told();
    const askew = turnedAll(t, 17);
    const meal = sceneOf(askew.layout, "meal");
    expect(spotsOf(meal, askew, "hall")).toMatchObject([{ marked: true }]);
    const says = (spots: readonly RoomSpots[]): unknown => spots.map((s) => [s.pieces, s.rows]);
    for (const id of ["ceremony", "meal"]) expect(says(spotsOf(sceneOf(askew.layout, id), askew, "hall"))).toEqual(says(spotsOf(sceneOf(t.layout, id), t, "hall")));
    const drawn = (of: Told): readonly string[] => textsOf(composeCarried(of.venue, of.layout, "meal", { rooms: ["hall"], width: 168, height: 140, measured: "hall", paper: "A4" }).marks);
    expect(drawn(askew)).toEqual(drawn(t));
  });
  test("figures that would touch move apart by the least, and stay in order", () => {
    expect(spreadApart([0, 1, 10], 4)).toEqual([-1.5, 2.5, 10]);
    expect(spreadApart([0, 5, 10], 4)).toEqual([0, 5, 10]);
  });
});

describe("a turnover", () => {
  const t = told();
  const turnover = t.layout.turnovers[0];
  test("begins when the next part begins elsewhere, and its steps share its minutes", () => {
    if (!turnover) throw new Error("the fixture has a turnover");
    expect(beginOf(turnover, t)).toBe("14:15");
    expect(clock("23:50", 37)).toBe("00:27");
    const steps = sharedSteps(turnover, t);
    expect(steps[0]?.what).toBe("Stack 42 chairs");
    expect(steps[0]?.from).toBe(0);
    expect(steps.at(-1)?.to).toBeCloseTo(37.2, 9);
    steps.slice(1).forEach((s, i) => expect(s.from).toBe(steps[i]?.to));
  });
  test("is told by the layout's own timetable where it has one: the guests' leaving, what is stacked, then each step when it is done", () => {
    if (!turnover) throw new Error("the fixture has a turnover");
    expect(timetableOf(turnover, t)).toBeNull();
    const timed = { ...turnover, leaving: 1.2, aside: { pieces: 42, minutes: 10.5, begins: 1.2, ends: 3.9 }, moves: turnover.moves.map((m) => (m.act === "out" ? { ...m, begins: 3.9, ends: 9.4 } : { ...m, begins: 9.4, ends: 14 })) };
    expect(timetableOf(timed, t)?.map((s) => [s.what, s.from, s.to])).toEqual([
      ["Guests leave", 0, 1.2], ["Stack 42 chairs", 1.2, 3.9], ["Bring out 5 × round table", 3.9, 9.4], ["Bring out small table", 3.9, 9.4], ["Shift 42 × chair", 9.4, 14],
    ]);
    expect([spanOf({ from: 3.9, to: 9.4 }), spanOf({ from: 5, to: 5.1 }), spanOf({ from: 0.98, to: 2.02 })]).toEqual([[3, 10], [5, 6], [1, 2]]);
  });
  test("is built from the far end to the door", () => {
    // The door is in the west wall: tables 3 and, of the others at their distance, by the way to its middle.
    const order = buildOrder(sceneOf(t.layout, "meal"), t).find((s) => s.startsWith("Tables"));
    expect(order).toBe("Tables, from the far end to the door: 3, 5, 2, 4, 1.");
  });
  test("ends with a walk to the ways out, or through the doors where the rooms have none of their own", () => {
    const inner: Told = { ...t, venue: { ...t.venue, rooms: t.venue.rooms.map((r) => ({ ...r, doors: r.doors.map((d) => ({ ...d, exit: false })) })) } };
    expect(buildOrder(sceneOf(t.layout, "meal"), t).at(-1)).toMatch(/^Last, walk to (the way out|each of the [1-9]\d* ways out) of these rooms/);
    expect(buildOrder(sceneOf(t.layout, "meal"), inner).at(-1)).toMatch(/^Last, walk through the doors of these rooms/);
  });
});

describe("the walk from door to door", () => {
  test("within a room is straight, and there is none where no door joins", () => {
    expect(straightWalk(venue(), { room: "hall", at: [0, 0] }, { room: "hall", at: [3000, 4000] })).toBe(5000);
    expect(straightWalk(venue(), { room: "hall", at: [0, 0] }, { room: "parlour", at: [13000, 100] })).toBeNull();
  });
});

describe("the printed sheets", () => {
  test("hold no word under 3.5 mm, the cautions on each page, and a round scale on each plan", async () => {
    const { bytes, pages, missing } = await printSheets({ ...told(), meta: { reference: "R", revision: 1, now: new Date(0) } });
    expect(missing).toEqual([]);
    const doc = await open(bytes);
    for (let i = 1; i <= pages; i += 1) {
      const { items } = await (await doc.getPage(i)).getTextContent();
      const set = items.flatMap((item) => ("transform" in item && item.str.trim() !== "" ? [{ text: item.str, mm: (Math.hypot(item.transform[2], item.transform[3]) * 25.4) / 72 }] : []));
      set.forEach((s) => expect(s.mm, s.text).toBeGreaterThan(3.499));
      expect(set.some((s) => s.text.includes("Planning aid."))).toBe(true);
    }
    expect(await textOf(bytes)).toMatch(/1 ?: ?(50|75|100|125|150|200) on A4/);
  });
});
