import { sql } from "kysely";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { changeAddress, closeBooking, eraseBooking, listQueue, type QueueFilter, type QueueView } from "../../lib/service";
import { queue, search } from "../../lib/store";
import { added, DESK, testHouse, type TestHouse } from "./support/house";
import { sendFirst, value } from "./support/line";

const MANY = 130;
let house: TestHouse;
let close: () => Promise<void>;
beforeAll(async () => {
  ({ house, close } = await testHouse());
  await sql`insert into bookings (reference, venue, names, email, package, event_date, due_date, state, revision, draft, created_at, changed_at)
    select 'Q' || n, 'tidewheel-mill', json_build_array('Ana ' || n, 'Bo ' || n), 'c' || n || '@example.org', 'dry-hire', date '2027-01-01' + (n * 7919) % 90, date '2026-12-20' + (n * 7919) % 60,
      (array['invited','started','sent','returned','agreed','closed'])[1 + n % 6], 0, '{}', now(), now() from generate_series(1, ${MANY}) n`.execute(house.store.db);
  await search.noteMissing(house.store.db);
});
afterAll(() => close());

const seen = async (ask: { readonly filter?: QueueFilter; readonly from?: string; readonly search?: string; readonly sort?: "due" | "day" }): Promise<QueueView> => value(await listQueue(house, DESK, ask));
const names = (view: QueueView): readonly string[] => view.rows.map((row) => row.reference);

/** The queue from one end to the other, a page after another. */
async function walked(filter: QueueFilter, sort: "due" | "day", way: "later" | "earlier"): Promise<readonly string[]> {
  const pages: (readonly string[])[] = [];
  for (let at: string | undefined = way === "later" ? "" : "last"; at !== undefined;) {
    const view: QueueView = await seen({ filter, sort, from: at });
    pages.push(names(view));
    at = view[way];
  }
  return (way === "later" ? pages : pages.reverse()).flat();
}

describe("the queue, a page at a time", () => {
  for (const filter of ["all", "agreed", "overdue"] as const) for (const sort of ["due", "day"] as const) {
    it(`of ${filter} by ${sort} is the same from either end, each booking once`, async () => {
      const forward = await walked(filter, sort, "later");
      expect(await walked(filter, sort, "earlier")).toEqual(forward);
      expect(new Set(forward).size).toBe((await seen({ filter })).counts[filter]);
    });
  }

  it("begins at the beginning for an address that is no place", async () => {
    expect(names(await seen({ from: "after~0~2027-99-99~Q1" }))).toEqual(names(await seen({})));
    expect(names(await seen({ from: "'; drop table bookings" }))).toEqual(names(await seen({})));
  });

  it("keeps its counts as bookings come, change and close", async () => {
    const counted = async (): Promise<unknown> => Object.fromEntries((await sql<{ readonly state: string; readonly n: string }>`select state, count(*) as n from bookings group by state order by state`.execute(house.store.db)).rows.map((r) => [r.state, Number(r.n)]));
    const kept = async (): Promise<unknown> => Object.fromEntries([...(await queue.counts(house.store.db, { today: {} })).states].sort());
    expect(await kept()).toEqual(await counted());
    const reference = await added(house);
    await sendFirst(house, reference);
    expect(await kept()).toEqual(await counted());
    await closeBooking(house, DESK, { reference, reason: "" });
    expect(await kept()).toEqual(await counted());
  });
});

describe("a search of the queue", () => {
  it("finds any part of a name, a reference or an address, whatever its accents and capitals", async () => {
    const reference = await added(house, { names: "Zoë Ångström-Brown & 李 明", email: "zoe.b@example.net" });
    for (const text of ["zoe", "ANGSTROM", "strom-b", "李", "明", "z", reference, reference.toLowerCase().replace("-", ""), "b@example.net"]) {
      expect(names(await seen({ search: text })), text).toContain(reference);
    }
    expect(names(await seen({ search: "zoe brown" }))).toEqual([]);
    // Ana 17; Bo 17 stands in the same booking.
    expect(names(await seen({ search: "ana 17" }))).toEqual(["Q17"]);
  });

  it("finds a changed address and not the one before, and nothing of a booking that was erased", async () => {
    const reference = await added(house, { names: "Ysolde & Tristan", email: "old.place@example.org" });
    value(await changeAddress(house, DESK, { reference, values: { email: "new.place@example.org" } }));
    expect([names(await seen({ search: "old.place" })), names(await seen({ search: "new.place" }))]).toEqual([[], [reference]]);
    await closeBooking(house, DESK, { reference, reason: "" });
    value(await eraseBooking(house, DESK, { reference }));
    expect(names(await seen({ search: "ysolde" }))).toEqual([]);
    expect(names(await seen({ search: reference }))).toEqual([reference]);
    const { rows } = await sql`select * from booking_search where booking = ${reference}`.execute(house.store.db);
    expect(JSON.stringify(rows)).not.toMatch(/yso|tris|place/);
  });

  it("counts what it found by state", async () => {
    const view = await seen({ search: "ana 1" });
    expect(view.counts.all).toBe(names(view).length);
    expect(view.found).toBe("all");
  });

  it("asks its index, however many were added just before and however often the house was tidied", async () => {
    await sql`insert into bookings (reference, venue, names, email, package, event_date, due_date, state, revision, draft, created_at, changed_at)
      select 'S' || n, 'tidewheel-mill', json_build_array(md5(n::text)), md5('a' || n) || '@example.org', 'dry-hire', date '2027-01-01', date '2026-12-20', 'closed', 0, '{}', now(), now() from generate_series(1, 1500) n`.execute(house.store.db);
    await search.noteMissing(house.store.db);
    await house.store.tidy();
    await sql`analyze booking_search`.execute(house.store.db);
    const { rows } = await sql<Readonly<Record<string, string>>>`explain select booking from booking_search where grams @> array['ysl', 'slo', 'old']`.execute(house.store.db);
    expect(JSON.stringify(rows)).toContain("booking_search_grams");
  });
});
