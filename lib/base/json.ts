import type { z } from "zod";
import { pathText, problemsOf, type Problem } from "./problem";
import { fail, ok, type Result } from "./result";
import { LIMITS } from "./schema";

/** Control characters that neither a drawing nor a paper can carry; tab, line feed and return may stand in a text. */
const UNPRINTABLE = /[\u0000-\u0008\u000b\u000c\u000e-\u001f\u007f\ufffe\uffff]|\p{Surrogate}/u;

const whole = (message: string): Result<never, readonly Problem[]> => fail([{ path: "file", message }]);

/** Reads a file's text: its size, its nesting, its JSON, then the schema. All problems of one kind are told at once. */
export function readAs<S extends z.ZodType>(schema: S, text: string): Result<z.output<S>, readonly Problem[]> {
  if (bytesOf(text) > LIMITS.fileBytes) return whole(`larger than ${LIMITS.fileBytes / 1024 / 1024} MB; allowed: up to ${LIMITS.fileBytes} bytes`);
  const bare = text.startsWith("\ufeff") ? text.slice(1) : text;
  if (deepest(bare) > LIMITS.nesting) return whole(`nested more than ${LIMITS.nesting} levels deep; allowed: up to ${LIMITS.nesting} levels`);
  const json = parseJson(bare);
  if (!json.ok) return json;
  const odd = unprintable(json.value, []);
  if (odd.length > 0) return fail(odd);
  return fitTo(schema, json.value);
}

/** The schema's word on a value that is no longer text. */
export function fitTo<S extends z.ZodType>(schema: S, value: unknown): Result<z.output<S>, readonly Problem[]> {
  const read = schema.safeParse(value);
  return read.success ? ok(read.data) : fail(problemsOf(schema, read.error.issues, value));
}

function parseJson(text: string): Result<unknown, readonly Problem[]> {
  if (text.trim() === "") return whole("empty; allowed: one JSON object");
  try {
    return ok(JSON.parse(text));
  } catch (error) {
    const where = /position (\d+)/.exec(error instanceof Error ? error.message : "");
    const before = where ? text.slice(0, Number(where[1])) : null;
    const lines = before?.split("\n");
    const at = lines ? ` at line ${lines.length}, column ${(lines.at(-1)?.length ?? 0) + 1}` : "";
    return whole(`not valid JSON${at}; allowed: one JSON object as RFC 8259 writes it`);
  }
}

/** Length in UTF-8, without a Node or DOM class. */
function bytesOf(text: string): number {
  if (text.length > LIMITS.fileBytes) return text.length;
  let bytes = 0;
  for (const ch of text) { const c = ch.codePointAt(0) ?? 0; bytes += c < 0x80 ? 1 : c < 0x800 ? 2 : c < 0x10000 ? 3 : 4; }
  return bytes;
}

/** Depth of brackets outside of strings. */
function deepest(text: string): number {
  let depth = 0, most = 0, quoted = false;
  for (let i = 0; i < text.length; i++) {
    const c = text[i];
    if (quoted) { if (c === "\\") i++; else if (c === "\"") quoted = false; }
    else if (c === "\"") quoted = true;
    else if (c === "{" || c === "[") most = Math.max(most, ++depth);
    else if (c === "}" || c === "]") depth--;
  }
  return most;
}

function unprintable(value: unknown, path: readonly PropertyKey[]): readonly Problem[] {
  const message = "holds a control character or half a character; allowed: text that can be printed";
  if (typeof value === "string") return UNPRINTABLE.test(value) ? [{ path: pathText(path), message }] : [];
  if (typeof value !== "object" || value === null) return [];
  const entries: readonly (readonly [PropertyKey, unknown])[] = Array.isArray(value) ? value.map((v, i) => [i, v] as const) : Object.entries(value);
  return entries.flatMap(([key, v]) => (typeof key === "string" && UNPRINTABLE.test(key) ? [{ path: pathText([...path, key]), message }] : unprintable(v, [...path, key])));
}
