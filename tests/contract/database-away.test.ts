import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { sql } from "kysely";
import { startPostman } from "../../lib/jobs";
import { mailbox } from "../../lib/mail";
import { getBooking, health, saveStep } from "../../lib/service";
import { outbox } from "../../lib/store";
import { openStore, storeErrorText } from "../../lib/store/open";
import { added, coupleOf, testHouse, type TestHouse } from "./support/house";
import { emptyDatabase, postgresServer, type Server } from "./support/postgres";

let server: Server;
let house: TestHouse;
let close: () => Promise<void>;
beforeAll(async () => {
  server = await postgresServer();
  const { url } = await emptyDatabase(server.url);
  const opened = await openStore({ dataDir: "", databaseUrl: url });
  if (!opened.ok) throw new Error(storeErrorText(opened.error));
  ({ house, close } = await testHouse({ store: opened.value }));
});
afterAll(async () => {
  await close();
  await house.store.close();
  await server.remove();
});

describe("a database that goes away", () => {
  it.each(["in order", "at once"] as const)("%s and comes back: meanwhile the house says so and saves nothing, then it goes on, with nothing lost", async (how) => {
    const reference = await added(house);
    const save = (adults: string, revision: number) => saveStep(house, coupleOf(reference), { reference, step: "guests", values: { adults }, revision });
    expect(await save("40", 0)).toMatchObject({ ok: true });
    expect(await health(house)).toEqual({ ok: true, store: "answers", migrations: "up to date", mails: "leave" });
    const complaints: unknown[] = [];
    const postman = startPostman({ store: house.store, transport: mailbox, clock: house.clock, from: house.mailFrom, keepLinks: false }, (error) => complaints.push(error));

    await server.stop(how === "at once" ? "at once" : undefined);
    expect(await health(house)).toMatchObject({ ok: false, store: "does not answer" });
    await expect(save("41", 1)).rejects.toThrow();
    postman.poke();
    await new Promise((done) => { setTimeout(done, 200); });
    expect(complaints.length).toBeGreaterThan(0);

    await server.start();
    expect(await health(house)).toMatchObject({ ok: true });
    const seen = await getBooking(house, coupleOf(reference), { reference });
    expect(seen).toMatchObject({ ok: true, value: { revision: 1, draft: { guests: { adults: 40 } } } });
    expect(await save("42", 1)).toMatchObject({ ok: true });
    postman.poke();
    await postman.stop();
    expect((await outbox.counts(house.store.db)).waiting).toBe(0);
  });

  it("in the middle of a transaction undoes it whole", async () => {
    const reference = await added(house);
    const half = house.store.transaction(async (tx) => {
      await sql`update bookings set email = 'half@example.org' where reference = ${reference}`.execute(tx);
      await server.stop("at once");
      await sql`update bookings set revision = 9 where reference = ${reference}`.execute(tx);
    });
    await expect(half).rejects.toThrow();
    await server.start();
    expect(await getBooking(house, coupleOf(reference), { reference })).toMatchObject({ ok: true, value: { revision: 0, email: expect.stringMatching(/^couple/) } });
  });
});
