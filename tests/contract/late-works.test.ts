import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { agreeRevision, closeBooking, dropChange, lateChangeOf, lateWorkOf, workOutChange } from "../../lib/service";
import { workOutWaiting } from "../../lib/service/late-works";
import type { House } from "../../lib/service/house";
import { lateWorks } from "../../lib/store";
import { added, DESK, testHouse, type TestHouse } from "./support/house";
import { sendFirst, value } from "./support/line";

let house: TestHouse;
let close: () => Promise<void>;
beforeAll(async () => { ({ house, close } = await testHouse()); });
afterAll(() => close());

let days = 0;
async function agreed(): Promise<string> {
  days += 1;
  const reference = await added(house, { date: `2027-06-${10 + days}` }), sent = await sendFirst(house, reference);
  value(await agreeRevision(house, DESK, { reference, ...sent }));
  return reference;
}
/** The same house with an engine of its own making. */
const withEngine = (change: House["works"]["change"]): House => ({ ...house, works: { ...house.works, change } });
const stuck = (): { readonly house: House; readonly go: () => void } => {
  let go = (): void => undefined;
  const gate = new Promise<void>((resolve) => { go = resolve; });
  return { house: withEngine(async (...args) => { await gate; return house.works.change(...args); }), go };
};
const askFor = async (h: House, reference: string, adults: string): Promise<void> => { value(await workOutChange(h, DESK, { reference, values: { adults } })); };

describe("a late change that is asked for", () => {
  it("is answered while the engine still thinks, is told as being worked out, and is there when it is ready", async () => {
    const reference = await agreed(), slow = stuck();
    await askFor(slow.house, reference, "44");
    expect(value(await lateWorkOf(house, DESK, { reference }))).toMatchObject({ state: "working", guests: 44 });
    expect(value(await lateChangeOf(house, DESK, { reference }))).toBeNull();
    slow.go();
    await workOutWaiting(slow.house);
    expect(value(await lateWorkOf(house, DESK, { reference }))).toBeNull();
    expect(value(await lateChangeOf(house, DESK, { reference }))).toMatchObject({ guestsWere: 40, guests: 44 });
  });

  it("is taken up by another process where the one that was asked has stopped, once its claim has run out", async () => {
    const reference = await agreed();
    // Asked and claimed, and nothing done: as a process that was killed leaves it.
    const dead = withEngine(() => new Promise(() => undefined));
    await askFor(dead, reference, "45");
    while ((await lateWorks.find(house.store.db, reference))?.until === null) await new Promise((resolve) => setTimeout(resolve, 5));
    expect(await workOutWaiting(house)).toBe(0);
    house.clock.time += 3 * 60_000 + 1;
    expect(await workOutWaiting(house)).toBe(1);
    expect(value(await lateChangeOf(house, DESK, { reference }))).toMatchObject({ guests: 45 });
  });

  it("keeps the last of two that were asked one after the other", async () => {
    const reference = await agreed(), slow = stuck();
    await askFor(slow.house, reference, "46");
    house.clock.time += 1000;
    await askFor(slow.house, reference, "47");
    slow.go();
    await workOutWaiting(slow.house);
    expect(value(await lateChangeOf(house, DESK, { reference }))).toMatchObject({ guests: 47 });
    expect(value(await lateWorkOf(house, DESK, { reference }))).toBeNull();
  });

  it("that breaks the engine is tried three times, told as failed, and can be asked again", async () => {
    const reference = await agreed();
    let tries = 0;
    const broken = withEngine(async () => { tries += 1; throw new Error("out of memory"); });
    await askFor(broken, reference, "48");
    await workOutWaiting(broken);
    expect(tries).toBe(3);
    expect(value(await lateWorkOf(house, DESK, { reference }))).toMatchObject({ state: "failed", guests: 48 });
    await askFor(house, reference, "48");
    await workOutWaiting(house);
    expect(value(await lateChangeOf(house, DESK, { reference }))).toMatchObject({ guests: 48 });
  });

  it("goes with the booking that is closed, and with letting it go", async () => {
    const reference = await agreed(), other = await agreed(), slow = stuck();
    await askFor(slow.house, reference, "49");
    await askFor(slow.house, other, "49");
    await closeBooking(house, DESK, { reference, reason: "" });
    expect(await dropChange(house, DESK, { reference: other })).toMatchObject({ ok: true });
    slow.go();
    await workOutWaiting(slow.house);
    expect(await lateWorks.find(house.store.db, reference)).toBeUndefined();
    expect(value(await lateChangeOf(house, DESK, { reference: other }))).toBeNull();
  });
});
