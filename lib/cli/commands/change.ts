import { change } from "../../engine";
import { wholeOption } from "../args";
import { resultTo, type Command } from "../command";
import { readVenueAndLayout } from "../read";
import { SEED } from "./arrange";
import { answerLate } from "./repair";

export const command: Command = {
  usage: { name: "change", files: ["VENUE", "AGREED-LAYOUT", "NEW-BRIEF"], options: ["--seed", "--out"], switches: [] },
  run: async (args, io) => {
    const seed = wholeOption(args, "--seed", SEED);
    const put = await resultTo(args, io);
    const { venue, layout, brief } = await readVenueAndLayout(args.files[0] ?? "", args.files[1] ?? "", args.files[2] ?? "");
    if (!brief) throw new Error("a brief that was read is gone");
    return answerLate(io, put, () => change(venue, layout, brief, { seed }));
  },
};
