import type { Clock } from "../base";
import type { Args, Usage } from "./args";
import { checkOut, writeWhole } from "./files";

/** What a command may touch of the world beside the files it is given. */
export type Io = {
  readonly out: (text: string) => void;
  readonly err: (text: string) => void;
  /** For `timing` alone. */
  readonly clock: Clock;
};

/** 0: done. 1: done, and the answer is "no". Bad input is thrown as BadInput and becomes 2. */
export type Exit = 0 | 1;

export type Command = { readonly usage: Usage; readonly run: (args: Args, io: Io) => Promise<Exit> };

export const jsonText = (value: unknown): string => `${JSON.stringify(value, null, 2)}\n`;

/** Prepares where a result goes: standard output, or the file of `--out`, refused at once where it cannot be written. */
export async function resultTo(args: Args, io: Io): Promise<(content: string | Uint8Array) => Promise<void>> {
  const out = args.option("--out");
  if (out === undefined) return async (content) => { io.out(typeof content === "string" ? content : Buffer.from(content).toString("utf8")); };
  await checkOut(out, args.files);
  return async (content) => { await writeWhole(out, content); io.err(`written to ${out}\n`); };
}
