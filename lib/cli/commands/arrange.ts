import { arrange } from "../../engine";
import { wholeOption } from "../args";
import { jsonText, resultTo, type Command } from "../command";
import { readVenueAndBrief } from "../read";

/** Most layouts that are asked for at once. */
const MOST_LAYOUTS = 8;
export const SEED = { least: 0, most: 4_294_967_295, otherwise: 1 } as const;

export const command: Command = {
  usage: { name: "arrange", files: ["VENUE", "BRIEF"], options: ["--seed", "--layouts", "--out"], switches: [] },
  run: async (args, io) => {
    const seed = wholeOption(args, "--seed", SEED);
    const layouts = wholeOption(args, "--layouts", { least: 1, most: MOST_LAYOUTS, otherwise: 3 });
    const put = await resultTo(args, io);
    const { venue, brief } = await readVenueAndBrief(args.files[0] ?? "", args.files[1] ?? "");
    const result = arrange(venue, brief, { seed, layouts, clock: io.clock });
    for (const r of result.reasons) io.err(`${r.text}\n`);
    for (const i of result.instead) io.err(`instead: ${i.text}\n`);
    for (const l of result.layouts) io.err(`${l.id}: ${l.title}\n`);
    io.err(`${result.status}\n`);
    await put(jsonText(result));
    return result.status === "arranged" ? 0 : 1;
  },
};
