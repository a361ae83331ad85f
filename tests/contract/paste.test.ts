import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { addPasted, getBooking, listQueue, lookAtPasted, type Pasted } from "../../lib/service";
import { outbox } from "../../lib/store";
import { DESK, testHouse, type TestHouse } from "./support/house";

let house: TestHouse;
let close: () => Promise<void>;
beforeAll(async () => { ({ house, close } = await testHouse()); });
afterAll(() => close());

const look = async (text: string): Promise<Pasted> => {
  const seen = await lookAtPasted(house, DESK, { text });
  if (!seen.ok) throw new Error(JSON.stringify(seen.error));
  return seen.value;
};
const LIST = [
  "Couple,E-Mail,Wedding date,Package,Guests,Colour",
  '"Ana Silva, Bo Lind",ana@example.org,2027-06-12,Dry hire,92,blue',
  "Zoë Ånd & 李 明,zoe@example.org,19/06/2027,hosted day,,",
  "Nobody,not an address,2027-06-26,Dry hire,,",
  "Late Ones,late@example.org,2026-01-01,Dry hire,,",
  "Strange Ones,strange@example.org,2027-07-03,Gold,many,",
  "Ana again,ANA@example.org,12.6.27,Dry hire,,",
].join("\r\n");

describe("a pasted list", () => {
  it("is looked at row by row, each fault with its field and what is allowed, and adds nothing", async () => {
    const seen = await look(LIST);
    expect(seen).toMatchObject({ good: 2, left: ["Colour"] });
    expect(seen.rows.map((r) => [r.line, r.faults.map((f) => f.field)])).toEqual([[2, []], [3, []], [4, ["email"]], [5, ["date"]], [6, ["package", "guests"]], [7, ["email"]]]);
    expect(seen.rows[0]?.good).toMatchObject({ names: ["Ana Silva", "Bo Lind"], date: "2027-06-12", guests: 92, packageName: "Dry hire" });
    // The venue's locale is en-GB: the day goes first.
    expect(seen.rows[1]?.good).toMatchObject({ names: ["Zoë Ånd", "李 明"], date: "2027-06-19" });
    expect(seen.rows[4]?.faults[0]?.message).toContain("there are Dry hire");
    const queue = await listQueue(house, DESK, {});
    expect(queue.ok && queue.value.rows).toEqual([]);
  });

  it("adds all its good rows at once and mails their links; the same list again adds none", async () => {
    const added = await addPasted(house, DESK, { text: LIST, good: 2, mail: true });
    if (!added.ok) throw new Error(JSON.stringify(added.error));
    expect(added.value.references).toHaveLength(2);
    const first = await getBooking(house, DESK, { reference: added.value.references[0] ?? "" });
    expect(first).toMatchObject({ ok: true, value: { state: "invited", draft: { guests: { adults: 92 } } } });
    expect((await outbox.list(house.store.db)).filter((m) => m.kind === "invitation")).toHaveLength(2);
    expect((await look(LIST)).good).toBe(0);
    expect(await addPasted(house, DESK, { text: LIST, good: 2, mail: true })).toMatchObject({ ok: false, error: { code: "stale" } });
  });

  it("adds nothing where a row cannot be written, however many went before it", async () => {
    const text = ["names;mail;date;package", "Eva & Ida;eva@example.org;2027-08-07;Dry hire", "Uwe & Ole;uwe@example.org;2027-08-14;Dry hire"].join("\n");
    let times = 0;
    const broken = { ...house, random: () => { times += 1; if (times > 8) throw new Error("no more figures"); return 0.01 * times; } };
    await expect(addPasted(broken, DESK, { text, good: 2, mail: true })).rejects.toThrow("no more figures");
    expect((await look(text)).good).toBe(2);
  });

  it("says of a list as a whole what is amiss", async () => {
    const amiss = async (text: string): Promise<string> => { const seen = await lookAtPasted(house, DESK, { text }); return seen.ok || seen.error.code !== "invalid" ? "" : (seen.error.errors[0]?.message ?? ""); };
    expect(await amiss("")).toContain("Paste the list");
    expect(await amiss("names,mail\nA,b@example.org")).toContain("Not found: date, package");
    expect(await amiss("names,mail,date,package")).toContain("no row");
    expect(await amiss(`names,mail,date,package\n${"A,a@example.org,2027-01-01,x\n".repeat(501)}`)).toContain("500");
    expect(await amiss('names,mail,date,package\n"A,b')).toContain("could not be read");
  });
});
