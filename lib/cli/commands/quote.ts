import { quote } from "../../fees";
import { formatMoney } from "../../measure";
import { jsonText, resultTo, type Command } from "../command";
import { readVenueAndLayout } from "../read";

export const command: Command = {
  usage: { name: "quote", files: ["VENUE", "BRIEF", "LAYOUT"], options: ["--out"], switches: [] },
  run: async (args, io) => {
    const put = await resultTo(args, io);
    const { venue, layout, brief } = await readVenueAndLayout(args.files[0] ?? "", args.files[2] ?? "", args.files[1] ?? "");
    if (!brief) throw new Error("a brief that was read is gone");
    const fees = quote(venue, brief, layout);
    const money = (n: number): string => formatMoney(n, fees.currency, venue.locale);
    for (const l of fees.lines) io.err(`${l.text}: ${l.count} × ${money(l.each)} = ${money(l.amount)}\n`);
    io.err(`${money(fees.total)}, ${venue.tax.name} ${money(fees.tax)}${venue.tax.included ? " in it" : " added"}\n`);
    await put(jsonText(fees));
    return 0;
  },
};
