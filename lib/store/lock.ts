import { linkSync, mkdirSync, readFileSync, renameSync, rmSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { randomBytes } from "node:crypto";
import { fail, ok, type Result } from "../base";

/** Folders that this process holds: its own lock file is no reason to think that another holds them. */
const held = new Set<string>();

export type FolderLock = { readonly release: () => void };
export type Locked = { readonly code: "locked"; readonly folder: string; readonly pid: number };

/**
 * Takes a folder for this process alone. The embedded database would silently lose data if two processes opened it.
 * A lock whose process is gone is taken over; on Linux a reused process number is told apart by its start time.
 */
export function lockFolder(folder: string): Result<FolderLock, Locked> {
  mkdirSync(folder, { recursive: true });
  const path = join(folder, "lock.json");
  const mine = JSON.stringify({ pid: process.pid, started: startOf(process.pid), nonce: randomBytes(8).toString("hex") });
  for (let tries = 0; tries < 5; tries += 1) {
    if (claim(path, mine)) {
      held.add(path);
      return ok({ release: () => { if (held.delete(path) && read(path) === mine) rmSync(path, { force: true }); } });
    }
    const found = read(path);
    if (found === undefined) continue;
    const owner = ownerOf(found);
    if (owner && isAlive(owner, path)) return fail({ code: "locked", folder, pid: owner.pid });
    takeAway(path, found);
  }
  return fail({ code: "locked", folder, pid: ownerOf(read(path) ?? "")?.pid ?? 0 });
}

/** Writes beside and links into place: the lock appears whole or not at all. */
function claim(path: string, text: string): boolean {
  const beside = `${path}.${process.pid}.${randomBytes(4).toString("hex")}`;
  writeFileSync(beside, text, { flag: "wx" });
  try {
    linkSync(beside, path);
    return true;
  } catch {
    return false;
  } finally {
    rmSync(beside, { force: true });
  }
}

/** Moves a dead lock away; puts it back if another process replaced it between the look and the move. */
function takeAway(path: string, judged: string): void {
  const aside = `${path}.dead.${randomBytes(4).toString("hex")}`;
  try {
    renameSync(path, aside);
  } catch {
    return;
  }
  if (read(aside) !== judged) { try { linkSync(aside, path); } catch { /* a third process holds it by now */ } }
  rmSync(aside, { force: true });
}

function read(path: string): string | undefined {
  try { return readFileSync(path, "utf8"); } catch { return undefined; }
}

type Owner = { readonly pid: number; readonly started: string | null };
function ownerOf(text: string): Owner | undefined {
  try {
    const raw: unknown = JSON.parse(text);
    if (typeof raw !== "object" || raw === null || !("pid" in raw) || typeof raw.pid !== "number") return undefined;
    return { pid: raw.pid, started: "started" in raw && typeof raw.started === "string" ? raw.started : null };
  } catch {
    return undefined;
  }
}

function isAlive(owner: Owner, path: string): boolean {
  if (owner.pid === process.pid) return held.has(path);
  try {
    process.kill(owner.pid, 0);
  } catch (error) {
    // EPERM: the process is there, but another user's.
    if (!(error instanceof Error && "code" in error && error.code === "EPERM")) return false;
  }
  const started = startOf(owner.pid);
  return owner.started === null || started === null || owner.started === started;
}

/** When a process started, in the kernel's ticks (proc(5), field 22); null where there is no /proc. */
function startOf(pid: number): string | null {
  const stat = read(`/proc/${pid}/stat`);
  return stat?.slice(stat.lastIndexOf(")") + 2).split(" ")[19] ?? null;
}
