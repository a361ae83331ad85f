import { change } from "../../engine";
import { wholeOption } from "../args";
import { jsonText, resultTo, type Command } from "../command";
import { readVenueAndLayout } from "../read";
import { SEED } from "./arrange";
import { tell } from "./repair";

export const command: Command = {
  usage: { name: "change", files: ["VENUE", "AGREED-LAYOUT", "NEW-BRIEF"], options: ["--seed", "--out"], switches: [] },
  run: async (args, io) => {
    const seed = wholeOption(args, "--seed", SEED);
    const put = await resultTo(args, io);
    const { venue, layout, brief } = await readVenueAndLayout(args.files[0] ?? "", args.files[1] ?? "", args.files[2] ?? "");
    if (!brief) throw new Error("a brief that was read is gone");
    const from = io.clock.now();
    const result = change(venue, layout, brief, { seed });
    await put(jsonText({ ...result, timing: { ...result.timing, totalMs: io.clock.now() - from } }));
    return tell(result, io);
  },
};
