import { spawnSync } from "node:child_process";
import { existsSync, mkdirSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import type { Store } from "../../lib/store";
import { openStore, storeErrorText } from "../../lib/store/open";
import { tempFolder } from "./support/temp";

const folder = tempFolder();
let store: Store;

beforeAll(async () => {
  const opened = await openStore({ dataDir: folder.path });
  if (!opened.ok) throw new Error(storeErrorText(opened.error));
  store = opened.value;
});
afterAll(async () => {
  await store.close();
  folder.remove();
});

describe("a first start that was broken off", () => {
  it("is begun anew, and a database that cannot be read is named and not touched", async () => {
    const half = tempFolder();
    mkdirSync(join(half.path, "database.new"), { recursive: true });
    writeFileSync(join(half.path, "database.new", "PG_VERSION"), "half");
    const opened = await openStore({ dataDir: half.path });
    expect(opened.ok).toBe(true);
    if (opened.ok) await opened.value.close();
    expect(existsSync(join(half.path, "database.new"))).toBe(false);
    half.remove();

    const broken = tempFolder();
    mkdirSync(join(broken.path, "database"), { recursive: true });
    writeFileSync(join(broken.path, "database", "PG_VERSION"), "18\n");
    const refused = await openStore({ dataDir: broken.path });
    expect(refused).toMatchObject({ ok: false, error: { code: "unreadable", folder: join(broken.path, "database") } });
    expect(existsSync(join(broken.path, "lock.json"))).toBe(false);
    broken.remove();
  });
});

describe("the lock on the folder", () => {
  it("refuses a second process, naming the folder and the first", () => {
    const script = `import { openStore, storeErrorText } from ${JSON.stringify(join(process.cwd(), "lib/store/open.ts"))};
      openStore({ dataDir: ${JSON.stringify(folder.path)} }).then((one) => { console.log(one.ok ? "opened" : storeErrorText(one.error)); });`;
    const path = join(folder.path, "second.ts");
    writeFileSync(path, script);
    const run = spawnSync(process.execPath, ["--import", "tsx", path], { cwd: process.cwd(), encoding: "utf8" });
    expect(run.stdout).toContain(`The data folder ${folder.path} is in use by process ${process.pid}.`);
  });

  it("takes over from a process that is gone, and leaves nothing behind when closed", async () => {
    const other = tempFolder();
    const gone = spawnSync(process.execPath, ["-e", ""]);
    writeFileSync(join(other.path, "lock.json"), JSON.stringify({ pid: gone.pid, started: "1", nonce: "x" }));
    const opened = await openStore({ dataDir: other.path });
    expect(opened.ok).toBe(true);
    if (opened.ok) await opened.value.close();
    expect(existsSync(join(other.path, "lock.json"))).toBe(false);
    other.remove();
  });
});
