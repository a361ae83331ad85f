import { open, rename, rm, stat, writeFile } from "node:fs/promises";
import path from "node:path";
import { LIMITS } from "../base/schema";
import type { Problem, Result } from "../base";
import { badLine, BadInput } from "./problem";

const WHY: Readonly<Record<string, string>> = {
  ENOENT: "no such file", EACCES: "no leave to read it", EISDIR: "a folder", ENOTDIR: "no such file", ENAMETOOLONG: "its name is too long",
};
const codeOf = (error: unknown): string => (error instanceof Error && "code" in error && typeof error.code === "string" ? error.code : "unknown");

const CHUNK = 64 * 1024;

const refuse = (file: string, message: string): BadInput => new BadInput([{ file, problem: { path: "file", message } }]);

/** The text of a file: at most 5 MB, valid UTF-8. */
export async function readText(file: string): Promise<string> {
  const bytes = await readBytes(file);
  if (bytes.length > LIMITS.fileBytes) throw refuse(file, `larger than 5 MB; allowed: up to ${LIMITS.fileBytes} bytes`);
  try {
    return new TextDecoder("utf-8", { fatal: true }).decode(bytes);
  } catch {
    throw refuse(file, "not valid UTF-8; allowed: JSON in UTF-8");
  }
}

async function readBytes(file: string): Promise<Uint8Array> {
  try {
    const handle = await open(file, "r");
    try {
      // One chunk past the limit is enough to know; the rest of a huge file is not taken into memory.
      const chunks: Buffer[] = [];
      for (let held = 0; held <= LIMITS.fileBytes;) {
        const { bytesRead, buffer } = await handle.read(Buffer.allocUnsafe(CHUNK), 0, CHUNK, null);
        if (bytesRead === 0) break;
        chunks.push(buffer.subarray(0, bytesRead));
        held += bytesRead;
      }
      return Buffer.concat(chunks);
    } finally {
      await handle.close();
    }
  } catch (error) {
    const code = codeOf(error);
    throw refuse(file, `cannot be read (${WHY[code] ?? code}); allowed: a readable file of JSON`);
  }
}

/** Reads and parses a file, or tells all that is wrong with it under its name. */
export async function readFileAs<T>(file: string, parse: (text: string) => Result<T, readonly Problem[]>): Promise<T> {
  const read = parse(await readText(file));
  if (read.ok) return read.value;
  throw new BadInput(read.error.map((problem) => ({ file, problem })));
}

/** Refuses an `--out` that could not be written, before any work is done. */
export async function checkOut(out: string, inputs: readonly string[]): Promise<void> {
  const folder = path.dirname(path.resolve(out));
  const inFolder = await stat(folder).catch(() => null);
  if (!inFolder?.isDirectory()) throw badLine("--out", `${folder} is not a folder; allowed: a file in a folder that is there`);
  const there = await stat(out).catch(() => null);
  if (there?.isDirectory()) throw badLine("--out", `${out} is a folder; allowed: a file`);
  if (inputs.some((i) => path.resolve(i) === path.resolve(out))) throw badLine("--out", `${out} is one of the files read; allowed: another file`);
}

/** Writes beside the file and renames: a reader finds the old file or the whole new one. */
export async function writeWhole(out: string, content: string | Uint8Array): Promise<void> {
  const beside = `${out}.${process.pid}.part`;
  try {
    await writeFile(beside, content);
    await rename(beside, out);
  } catch (error) {
    await rm(beside, { force: true });
    throw badLine("--out", `${out} cannot be written (${codeOf(error)}); allowed: a file in a folder that may be written to`);
  }
}
