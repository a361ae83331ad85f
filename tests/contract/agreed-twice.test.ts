import { sql } from "kysely";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { agreeRevision, closeBooking, getBooking, type BookingView, type Outcome } from "../../lib/service";
import { heldRooms, isClash } from "../../lib/store";
import { added, DESK, testHouse, type TestHouse } from "./support/house";
import { sendFirst, value } from "./support/line";

let house: TestHouse;
let close: () => Promise<void>;
beforeAll(async () => { ({ house, close } = await testHouse()); });
afterAll(() => close());

const see = async (reference: string): Promise<BookingView> => value(await getBooking(house, DESK, { reference }));
async function sent(date: string): Promise<string> {
  const reference = await added(house, { date });
  await sendFirst(house, reference);
  return reference;
}
const agree = async (reference: string): Promise<Outcome<unknown>> => {
  const last = (await see(reference)).revisions.at(-1);
  return agreeRevision(house, DESK, { reference, number: last?.number ?? 0, fingerprint: last?.fingerprint ?? "" });
};

describe("one room and one time", () => {
  it("are agreed once: the second is told which rooms and whose they are, and stays sent", async () => {
    const [one, two] = [await sent("2027-06-12"), await sent("2027-06-12")];
    value(await agree(one));
    const refused = await agree(two);
    expect(refused).toMatchObject({ ok: false, error: { code: "taken", by: one } });
    expect(!refused.ok && refused.error.code === "taken" && refused.error.rooms).toContain("Grain Floor");
    expect((await see(two)).state).toBe("sent");
    value(await agree(await sent("2027-06-13")));
  });

  it("are agreed once when two coordinators agree two bookings at the same moment", async () => {
    const [one, two] = [await sent("2027-08-14"), await sent("2027-08-14")];
    const both = await Promise.all([agree(one), agree(two)]);
    expect(both.filter((b) => b.ok)).toHaveLength(1);
    expect(both.find((b) => !b.ok)).toMatchObject({ error: { code: "taken", by: both[0]?.ok ? one : two } });
    expect([(await see(one)).state, (await see(two)).state].sort()).toEqual(["agreed", "sent"]);
  });

  it("are free again when the booking that held them is closed", async () => {
    const [one, two] = [await sent("2027-09-04"), await sent("2027-09-04")];
    value(await agree(one));
    value(await closeBooking(house, DESK, { reference: one, reason: "" }));
    value(await agree(two));
  });

  it("are kept apart by the database itself, hour by hour", async () => {
    const [one, two, three] = [await added(house), await added(house), await added(house)];
    const hold = (booking: string, from: string, to: string, room = "barn") => house.store.transaction((tx) => heldRooms.hold(tx, { booking, venue: "v", rooms: [room], starts: `2027-10-02 ${from}`, ends: `2027-10-02 ${to}` }));
    await hold(one, "08:00", "15:00");
    await hold(two, "15:00", "23:00");
    const clash: unknown = await hold(three, "14:59", "15:01").catch((error: unknown) => error);
    expect(isClash(clash)).toBe(true);
    await hold(three, "14:59", "15:01", "loft");
    expect((await sql`select 1 from held_rooms where venue = 'v'`.execute(house.store.db)).rows).toHaveLength(3);
  });
});
