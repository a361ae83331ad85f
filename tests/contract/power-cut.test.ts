import fs, { cpSync, existsSync, mkdirSync, statSync } from "node:fs";
import { dirname, join } from "node:path";
import { afterEach, describe, expect, it, vi } from "vitest";
import { seeded } from "../../lib/base";
import { openFlushed } from "../../lib/store/flushed-files";
import { saveStep } from "../../lib/service";
import { added, coupleOf, testHouse } from "./support/house";
import { tempFolder } from "./support/temp";
import { copyTemplate } from "./support/template";

const folders: ReturnType<typeof tempFolder>[] = [];
afterEach(() => { vi.restoreAllMocks(); for (const one of folders.splice(0)) one.remove(); });
const folder = (): string => { const made = tempFolder(); folders.push(made); return made.path; };

/**
 * A disk that holds what was flushed and nothing else: of each file the bytes that stood in it when the database last asked for them
 * to be brought to the disk. What was only written is lost, as when the power goes.
 */
async function twoDisks(): Promise<{ readonly live: string; readonly platter: string; readonly flushed: (path: string) => void }> {
  const made = folder();
  await copyTemplate(made, "ready");
  const live = join(made, "database"), platter = join(made, "platter");
  cpSync(live, platter, { recursive: true });
  const flushed = (path: string): void => {
    const from = join(live, path), to = join(platter, path), file = existsSync(from) && statSync(from).isFile();
    mkdirSync(file ? dirname(to) : to, { recursive: true });
    if (file) cpSync(from, to);
  };
  return { live, platter, flushed };
}

const add = "insert into history (at, who, what, data) values (now(), 'couple', $1, $2)";
/** What stands on the disk once the power is back. */
async function afterwards(platter: string): Promise<readonly number[]> {
  const copy = join(folder(), "database");
  cpSync(platter, copy, { recursive: true });
  const again = await openFlushed(copy);
  const { rows } = await again.query<{ readonly what: string }>("select what from history order by id");
  await again.close();
  return rows.map((row) => Number(row.what));
}

describe("the power, cut under the embedded database", () => {
  it("takes nothing that was acknowledged, and leaves nothing half done", async () => {
    const { live, platter, flushed } = await twoDisks(), random = seeded(11);
    const database = await openFlushed(live, {}, flushed);
    const told: number[] = [];
    for (let cut = 0; cut < 6; cut += 1) {
      for (let i = 0; i < 12; i += 1) {
        await database.query(add, [String(told.length), JSON.stringify({ words: "w".repeat(Math.floor(random() * 9_000)) })]);
        told.push(told.length);
      }
      if (cut === 2) await database.exec("checkpoint");
      if (cut === 4) await database.exec("create table later (x int); insert into later values (1)");
      await database.exec("begin");
      await database.query(add, ["-1", "{}"]);
      expect(await afterwards(platter)).toEqual(told);
      await database.exec("rollback");
    }
    // 6 cuts, 12 saves before each.
    expect(told).toHaveLength(6 * 12);
    await database.close();
  });

  it("would take what is written and not flushed: the disk that is tried here does lose things", async () => {
    const { live, platter } = await twoDisks();
    const database = await openFlushed(live);
    await database.query(add, ["0", "{}"]);
    expect(await afterwards(platter)).toEqual([]);
    await database.close();
  });

  it("is thought of by the store that the pages use: each save is flushed before it is acknowledged", async () => {
    const { house, close } = await testHouse();
    const reference = await added(house);
    const flush = vi.spyOn(fs, "fsyncSync");
    expect(await saveStep(house, coupleOf(reference), { reference, step: "guests", values: { adults: "40" }, revision: 0 })).toMatchObject({ ok: true });
    expect(flush).toHaveBeenCalled();
    await close();
  });
});
