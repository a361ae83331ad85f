import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { quote } from "../../lib/fees";
import { getBooking, returnRequest, sendRequest, type BookingView } from "../../lib/service";
import { added, coupleOf, DESK, testHouse, type TestHouse } from "./support/house";
import { chooseFirst, value } from "./support/line";
import { asked } from "./support/works";

let house: TestHouse;
let close: () => Promise<void>;
beforeAll(async () => { ({ house, close } = await testHouse()); house = { ...house, works: { ...asked().works, quote: async (...about) => quote(...about) } }; });
afterAll(() => close());

const see = async (reference: string): Promise<BookingView> => value(await getBooking(house, coupleOf(reference), { reference }));
const late = (q: { readonly lines: readonly { readonly charge: string }[] } | undefined): boolean => q?.lines.some((l) => l.charge === "late-answer") ?? false;

/** Chosen while in time, a dry hire of 12 June 2027: due on 1 May, 42 days before. */
async function chosen(): Promise<string> {
  house.clock.time = Date.UTC(2027, 3, 1, 12);
  const reference = await added(house);
  await chooseFirst(house, reference);
  return reference;
}
const send = async (reference: string) => { value(await sendRequest(house, coupleOf(reference), { reference, revision: (await see(reference)).revision })); return (await see(reference)).revisions.at(-1); };
/** 1 May ends in London at 23:00 UTC, as clocks are an hour ahead there. */
const END = Date.UTC(2027, 4, 1, 23);

describe("the charge for a late answer", () => {
  it("is not made a millisecond before the due date ends at the venue, and is made from its end on", async () => {
    const [a, b] = [await chosen(), await chosen()];
    house.clock.time = END - 1;
    const first = await send(a);
    expect([first?.brief.today, late(first?.quote)]).toEqual(["2027-05-01", false]);
    house.clock.time = END;
    const second = await send(b);
    expect([second?.brief.today, late(second?.quote)]).toEqual(["2027-05-02", true]);
    expect(second?.quote.lines.find((l) => l.charge === "late-answer")).toMatchObject({ count: 1, each: 6000, amount: 6000 });
  });

  it("is shown before sending, so that nobody is surprised by it", async () => {
    const reference = await chosen();
    house.clock.time = END - 1;
    expect(late((await see(reference)).chosen?.layout.quote)).toBe(false);
    house.clock.time = END;
    const shown = (await see(reference)).chosen?.layout.quote;
    expect(late(shown)).toBe(true);
    expect((await send(reference))?.quote).toEqual(shown);
  });

  it("is not made where the first sending was in time and the desk returned it", async () => {
    const reference = await chosen();
    house.clock.time = END - 1;
    await send(reference);
    house.clock.time = END + 5 * 86_400_000;
    value(await returnRequest(house, DESK, { reference, number: 1, reason: "May the cake stand elsewhere?" }));
    const again = await send(reference);
    expect([again?.number, again?.brief.today, late(again?.quote)]).toEqual([2, "2027-05-01", false]);
  });
});
