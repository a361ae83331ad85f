import { afterAll, beforeAll, describe, expect, it } from "vitest";
import {
  adjust, adjusting, adjustTurn, agreeRevision, chooseLayout, getBooking, putRight, saveStep, sendRequest, takeAdjusted, type Actor, type AdjustView, type BookingView,
} from "../../lib/service";
import type { ArrangeResult, Item, Layout } from "../../lib/layout";
import { bench } from "../../lib/server/bench";
import { outbox } from "../../lib/store";
import { LAYOUT } from "./support/works";
import { added, coupleOf, DESK, testHouse, type TestHouse } from "./support/house";
import { chooseFirst, value } from "./support/line";

const table = (n: number, x: number): Item => ({
  id: `t${n}`, kind: "table", role: "dining", label: `Table ${n}`, room: "grain-floor", from: { stock: "round" }, shape: { diameter: 1680 }, at: [x, 4700], angle: 0,
  seats: [{ x, y: 4700 - 970, facing: 90, place: "chair" }],
});
const MEAL: Layout = { ...LAYOUT, scenes: [{ id: "meal", title: "Meal", rooms: ["grain-floor"], drapes: [], items: [table(1, 6000), table(2, 10_000)], seats: 2, numbers: ["t1", "t2"] }] };
const OFFERED: ArrangeResult = {
  format: "marquetry.result/1", engine: { version: "test", seed: 1 }, status: "arranged", reasons: [], instead: [], layouts: [MEAL, { ...MEAL, id: "b", title: "Long tables" }], timing: { totalMs: 0, stages: {} },
};

let house: TestHouse;
let close: () => Promise<void>;
beforeAll(async () => {
  ({ house, close } = await testHouse());
  // What follows from a deed is worked out in earnest; only the search is not.
  Object.assign(house.works, { arrange: async () => OFFERED, settle: bench.settle, repair: bench.repair });
});
afterAll(() => close());

const see = async (reference: string, actor: Actor = coupleOf(reference)): Promise<BookingView> => value(await getBooking(house, actor, { reference }));
const look = async (reference: string, actor: Actor = coupleOf(reference)): Promise<AdjustView> => value(await adjusting(house, actor, { reference }));
const at = (view: AdjustView, id: string): Item | undefined => view.layout.scenes[0]?.items.find((i) => i.id === id);
const on = (act: string, more: Record<string, string> = {}): Record<string, string> => ({ scene: "meal", piece: "t1", act, ...more });

/** A couple who have chosen the first layout. */
async function chosen(): Promise<string> {
  const reference = await added(house);
  await chooseFirst(house, reference);
  return reference;
}
async function deed(reference: string, values: Record<string, string>, actor: Actor = coupleOf(reference)): Promise<AdjustView> {
  return value(await adjust(house, actor, { reference, seen: (await look(reference, actor)).seen, values }));
}

describe("a layout under the hand", () => {
  it("moves a table to typed distances from two walls, turns it, and both survive being looked at anew", async () => {
    const reference = await chosen();
    await deed(reference, on("place", { wall1: "left", far1: "1.20 m", wall2: "upper", far2: "150 cm" }));
    await deed(reference, on("quarter"));
    const view = await look(reference);
    expect(at(view, "t1")).toMatchObject({ at: [1200 + 1680 / 2, 1500 + 1680 / 2], angle: 90 });
    expect(at(view, "t1")?.seats[0]).toMatchObject({ x: 1200 + 840 + 970, y: 1500 + 840, facing: 180 });
    expect(view.done).toEqual(["Table 1 to 1.20\u00a0m from the left wall, 1.50\u00a0m from the upper wall", "Table 1 turned to 90°"]);
    expect(view).toMatchObject({ undo: "Table 1 turned to 90°", taken: false });
    expect(view.was.scenes[0]?.items[0]?.at).toEqual([6000, 4700]);
  });

  it("undoes and does again across visits, until it is as it was", async () => {
    const reference = await chosen();
    const before = JSON.stringify((await look(reference)).layout.scenes);
    await deed(reference, on("place", { wall1: "right", far1: "2" }));
    await deed(reference, on("note", { note: "Near the window" }));
    const after = JSON.stringify((await look(reference)).layout.scenes);
    for (const way of ["undo", "undo"] as const) value(await adjustTurn(house, coupleOf(reference), { reference, seen: (await look(reference)).seen, way }));
    expect(JSON.stringify((await look(reference)).layout.scenes)).toBe(before);
    expect(await look(reference)).toMatchObject({ redo: "Table 1 to 2.00\u00a0m from the right wall, 3.86\u00a0m from the upper wall", taken: true });
    for (const way of ["redo", "redo"] as const) value(await adjustTurn(house, coupleOf(reference), { reference, seen: (await look(reference)).seen, way }));
    expect(JSON.stringify((await look(reference)).layout.scenes)).toBe(after);
    value(await adjustTurn(house, coupleOf(reference), { reference, seen: (await look(reference)).seen, way: "again" }));
    expect(JSON.stringify((await look(reference)).layout.scenes)).toBe(before);
  });

  it("refuses a deed on an older state as stale, and leaves what stands", async () => {
    const reference = await chosen();
    const { seen } = await look(reference);
    value(await adjust(house, coupleOf(reference), { reference, seen, values: on("quarter") }));
    const late = await adjust(house, DESK, { reference, seen, values: on("remove") });
    expect(late).toMatchObject({ ok: false, error: { code: "stale" } });
    expect(at(await look(reference), "t1")?.angle).toBe(90);
    expect(await takeAdjusted(house, coupleOf(reference), { reference, seen })).toMatchObject({ ok: false, error: { code: "stale" } });
    expect(await putRight(house, coupleOf(reference), { reference, seen })).toMatchObject({ ok: false, error: { code: "stale" } });
  });

  it("lets one of two simultaneous deeds through", async () => {
    const reference = await chosen();
    const { seen } = await look(reference);
    const both = await Promise.all(["30", "60"].map((angle) => adjust(house, coupleOf(reference), { reference, seen, values: on("turn", { angle }) })));
    expect(both.map((one) => one.ok).sort()).toEqual([false, true]);
  });

  it("names the field that is amiss and does nothing", async () => {
    const reference = await chosen();
    const { seen } = await look(reference);
    const why = async (values: Record<string, string>) => adjust(house, coupleOf(reference), { reference, seen, values });
    expect(await why(on("place", { wall1: "left", far1: "a stride" }))).toMatchObject({ error: { code: "invalid", errors: [{ field: "far1", message: "A distance, such as 1.20 m." }] } });
    expect(await why(on("place", { wall1: "left", far1: "1", wall2: "right", far2: "1" }))).toMatchObject({ error: { code: "invalid", errors: [{ field: "far1" }] } });
    expect(await why(on("turn", { angle: "round" }))).toMatchObject({ error: { code: "invalid", errors: [{ field: "angle" }] } });
    expect(await why({ ...on("quarter"), piece: "t9" })).toMatchObject({ error: { code: "invalid", errors: [{ field: "piece" }] } });
    expect(await why({ scene: "meal", act: "add", what: "stock/piano", room: "grain-floor" })).toMatchObject({ error: { code: "invalid", errors: [{ field: "what" }] } });
    expect(await why({ edit: "{" })).toMatchObject({ error: { code: "invalid" } });
    expect((await look(reference)).seen).toBe(seen);
  });

  it("tells findings, places and fees as the pieces stand now", async () => {
    const reference = await chosen();
    const view = await deed(reference, on("place", { wall1: "left", far1: "8.3", wall2: "upper", far2: "3.86" }));
    expect(view.layout.findings.some((f) => f.code === "overlap" && f.items.includes("t1") && f.items.includes("t2"))).toBe(true);
    const fewer = await deed(reference, on("remove"));
    expect(fewer.layout.findings.some((f) => f.code === "overlap")).toBe(false);
    expect(fewer.layout.scenes[0]?.seats).toBe(1);
    expect(fewer.layout.quote).toBeDefined();
    const more = await deed(reference, { scene: "meal", act: "add", what: "stock/round", room: "grain-floor" });
    expect(more.layout.scenes[0]?.items.at(-1)).toMatchObject({ label: "Table 3", from: { stock: "round" } });
    expect(more.layout.scenes[0]?.seats).toBe(1 + 8);
  });

  it("puts it right round what is held, as one deed that can be undone", async () => {
    const reference = await chosen();
    await deed(reference, on("place", { wall1: "left", far1: "8.3", wall2: "upper", far2: "3.86" }));
    const held = await deed(reference, on("hold"));
    expect(held.held).toEqual(["t1"]);
    const before = at(held, "t1");
    expect(await adjust(house, coupleOf(reference), { reference, seen: held.seen, values: on("quarter") })).toMatchObject({ error: { code: "invalid", errors: [{ field: "hold" }] } });
    const { view, moved } = value(await putRight(house, coupleOf(reference), { reference, seen: held.seen }));
    expect(moved).toBeGreaterThan(0);
    expect(at(view, "t1")).toEqual(before);
    expect(view.layout.findings.some((f) => f.code === "overlap")).toBe(false);
    const back = value(await adjustTurn(house, coupleOf(reference), { reference, seen: view.seen, way: "undo" }));
    expect(JSON.stringify(back.layout.scenes)).toBe(JSON.stringify(held.layout.scenes));
  });
});

describe("taking it", () => {
  it("makes it the couple's choice, which is sent as it stands; further deeds go on from it", async () => {
    const reference = await chosen();
    const view = await deed(reference, on("place", { wall1: "left", far1: "1.20" }));
    value(await takeAdjusted(house, coupleOf(reference), { reference, seen: view.seen }));
    const booking = await see(reference);
    expect(booking.chosen).toMatchObject({ outdated: false, layout: { id: "a-hand", title: "Rounds about the floor, adjusted by hand" } });
    expect(await look(reference)).toMatchObject({ taken: true, undo: expect.stringContaining("Table 1") as string });
    value(await sendRequest(house, coupleOf(reference), { reference, revision: booking.revision }));
    expect((await see(reference)).revisions.at(-1)?.layout.scenes[0]?.items[0]?.at).toEqual([1200 + 840, 4700]);
    expect(await adjusting(house, coupleOf(reference), { reference })).toMatchObject({ error: { code: "wrong-state", state: "sent" } });
  });

  it("at the desk makes a further revision of what was sent, told to the couple, which can be agreed", async () => {
    const reference = await chosen();
    value(await sendRequest(house, coupleOf(reference), { reference, revision: (await see(reference)).revision }));
    const view = await deed(reference, on("quarter"), DESK);
    expect(view.sent).toBe(1);
    expect(value(await takeAdjusted(house, DESK, { reference, seen: view.seen }))).toEqual({ number: 2 });
    const booking = await see(reference, DESK);
    expect(booking).toMatchObject({ state: "sent", revisions: [{ number: 1 }, { number: 2 }] });
    expect(booking.history.at(-1)).toMatchObject({ what: "amended", data: { number: 2 } });
    expect((await outbox.list(house.store.db, { booking: reference }))[0]?.kind).toBe("amended");
    const two = booking.revisions.at(-1);
    expect(two?.layout.scenes[0]?.items[0]?.angle).toBe(90);
    expect(value(await agreeRevision(house, DESK, { reference, number: 2, fingerprint: two?.fingerprint ?? "" }))).toEqual({ fingerprint: two?.fingerprint });
  });

  it("begins anew where another layout is chosen", async () => {
    const reference = await chosen();
    await deed(reference, on("quarter"));
    value(await chooseLayout(house, coupleOf(reference), { reference, layout: "b", revision: (await see(reference)).revision }));
    // The second stands as the first did: it is the same plan under another name, and goes on.
    expect(at(await look(reference), "t1")?.angle).toBe(90);
    value(await adjustTurn(house, coupleOf(reference), { reference, seen: (await look(reference)).seen, way: "again" }));
    expect((await look(reference)).done).toEqual([]);
  });

  it("is refused without a choice, and once the answers have changed", async () => {
    const reference = await added(house);
    expect(await adjusting(house, coupleOf(reference), { reference })).toMatchObject({ error: { code: "incomplete", missing: ["guests"] } });
    const other = await chosen();
    value(await saveStep(house, coupleOf(other), { reference: other, step: "guests", values: { adults: "44" }, revision: (await see(other)).revision }));
    expect(await adjusting(house, coupleOf(other), { reference: other })).toMatchObject({ error: { code: "incomplete", missing: ["layout-outdated"] } });
  });
});
