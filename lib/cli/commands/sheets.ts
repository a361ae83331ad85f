import { printSheets } from "../../print";
import { readVenueAndLayout } from "../read";
import { resultTo, type Command } from "../command";
import { badLine } from "../problem";

export const command: Command = {
  usage: { name: "sheets", files: ["VENUE", "BRIEF", "LAYOUT"], options: ["--out"], switches: [] },
  run: async (args, io) => {
    if (args.option("--out") === undefined) throw badLine("--out", "missing; allowed: --out FILE, since a PDF is not text");
    const put = await resultTo(args, io);
    const [venueFile = "", briefFile = "", layoutFile = ""] = args.files;
    const { venue, brief, layout } = await readVenueAndLayout(venueFile, layoutFile, briefFile);
    if (!brief) throw new Error("a brief that was read is gone");
    // Noon of a day, so that the same files print the same bytes whenever they are printed.
    const printed = await printSheets({ venue, brief, layout, meta: { reference: brief.reference ?? venue.id, revision: 0, now: new Date(`${brief.today ?? brief.date}T12:00:00Z`) } });
    if (printed.missing.length > 0) io.err(`no embedded face holds: ${printed.missing.join(" ")}\n`);
    io.err(`${printed.pages} pages\n`);
    await put(printed.bytes);
    return 0;
  },
};
