import { repair } from "../../engine";
import type { ArrangeResult, Layout } from "../../layout";
import { wholeOption, type Args } from "../args";
import { jsonText, resultTo, type Command, type Io } from "../command";
import { badLine } from "../problem";
import { readVenueAndLayout } from "../read";
import { SEED } from "./arrange";

/** The pieces of `--fixed`, each of which the layout must have. */
function fixedOf(args: Args, layout: Layout): readonly string[] {
  const text = args.option("--fixed");
  if (text === undefined) return [];
  const known = new Set(layout.scenes.flatMap((s) => s.items.map((i) => i.id)));
  const ids = [...new Set(text.split(",").map((t) => t.trim()).filter((t) => t !== ""))];
  const wrong = ids.find((id) => !known.has(id));
  if (wrong !== undefined) throw badLine("--fixed", `"${wrong}" is not a piece of this layout; allowed: ${[...known].slice(0, 40).join(", ")}`);
  return ids;
}

/** Works a late answer out and puts it where it is wanted, with the time it took; then says what became of the layout. */
export async function answerLate(io: Io, put: (text: string) => Promise<void>, work: () => ArrangeResult): Promise<0 | 1> {
  const from = io.clock.now();
  const result = work();
  await put(jsonText({ ...result, timing: { ...result.timing, totalMs: io.clock.now() - from } }));
  return tell(result, io);
}

/** What became of a layout, in words and as an exit. */
function tell(result: ArrangeResult, io: Io): 0 | 1 {
  for (const r of result.reasons) io.err(`${r.text}\n`);
  for (const i of result.instead) io.err(`instead: ${i.text}\n`);
  const [moved, relaid] = [result.moved ?? [], result.relaid ?? []];
  if (result.moved) io.err(moved.length === 0 ? "nothing is moved\n" : `moved, new or gone: ${moved.join(", ")}\n`);
  if (relaid.length > 0) io.err(`laid otherwise: ${relaid.join(", ")}\n`);
  io.err(`${result.status}\n`);
  return result.status === "arranged" ? 0 : 1;
}

export const command: Command = {
  usage: { name: "repair", files: ["VENUE", "BRIEF", "LAYOUT"], options: ["--fixed", "--seed", "--out"], switches: [] },
  run: async (args, io) => {
    const seed = wholeOption(args, "--seed", SEED);
    const put = await resultTo(args, io);
    const { venue, layout, brief } = await readVenueAndLayout(args.files[0] ?? "", args.files[2] ?? "", args.files[1] ?? "");
    if (!brief) throw new Error("a brief that was read is gone");
    return answerLate(io, put, () => repair(venue, brief, layout, fixedOf(args, layout), { seed }));
  },
};
