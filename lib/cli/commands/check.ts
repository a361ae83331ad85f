import { check } from "../../rules";
import { jsonText, resultTo, type Command } from "../command";
import { readVenueAndLayout } from "../read";

export const command: Command = {
  usage: { name: "check", files: ["VENUE", "LAYOUT"], options: ["--brief", "--out"], switches: [] },
  run: async (args, io) => {
    const put = await resultTo(args, io);
    const { venue, layout, brief } = await readVenueAndLayout(args.files[0] ?? "", args.files[1] ?? "", args.option("--brief"));
    const findings = check(venue, layout, brief);
    for (const f of findings) io.err(`${f.level}: ${f.text}\n`);
    if (findings.length === 0) io.err("nothing was found\n");
    await put(jsonText(findings));
    return findings.some((f) => f.level === "must") ? 1 : 0;
  },
};
