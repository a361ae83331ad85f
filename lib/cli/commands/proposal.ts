import { arrange } from "../../engine";
import { quote } from "../../fees";
import type { Layout } from "../../layout";
import { printProposal } from "../../print";
import { briefFileOf, readVenueAndBrief, readVenueAndLayout } from "../read";
import { resultTo, type Command, type Io } from "../command";
import { badLine } from "../problem";
import type { Brief } from "../../brief";
import type { Venue } from "../../venue";

/** Noon of a day, so that the same files print the same bytes whenever they are printed. */
const noon = (day: string): Date => new Date(`${day}T12:00:00Z`);

export const command: Command = {
  usage: { name: "proposal", files: ["VENUE", "BRIEF"], options: ["--layout", "--out"], switches: [] },
  run: async (args, io) => {
    if (args.option("--out") === undefined) throw badLine("--out", "missing; allowed: --out FILE, since a PDF is not text");
    const put = await resultTo(args, io);
    const [venueFile = "", briefFile = ""] = args.files;
    const given = args.option("--layout");
    const read = given === undefined ? { ...(await readVenueAndBrief(venueFile, briefFile)), layout: undefined } : await readVenueAndLayout(venueFile, given, briefFile);
    const { venue, brief } = read;
    if (!brief) throw new Error("a brief that was read is gone");
    const layout = read.layout ?? arranged(venue, brief, io);
    if (!layout) return 1;
    // What the couple left out is said to be left out: the paper wants the file itself, not the defaults taken.
    const file = await briefFileOf(briefFile);
    const printed = await printProposal({
      venue, brief: file, layout, quote: quote(venue, brief, layout),
      meta: { reference: brief.reference ?? venue.id, revision: 0, ...(brief.today === undefined ? {} : { drawnOn: brief.today }), now: noon(brief.today ?? brief.date) },
    });
    if (printed.missing.length > 0) io.err(`no embedded face holds: ${printed.missing.join(" ")}\n`);
    io.err(`${printed.pages} pages\n`);
    await put(printed.bytes);
    return 0;
  },
};

function arranged(venue: Venue, brief: Brief, io: Io): Layout | null {
  const result = arrange(venue, brief, { seed: 1, layouts: 1 });
  const layout = result.layouts[0];
  if (layout) return layout;
  io.err(`${result.status}\n`);
  for (const r of result.reasons) io.err(`${r.text}\n`);
  for (const i of result.instead) io.err(`instead: ${i.text}\n`);
  return null;
}
