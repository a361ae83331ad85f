import { capacity } from "../../engine/capacity";
import { STYLES, type Style } from "../../layout";
import { jsonText, resultTo, type Command } from "../command";
import { badLine } from "../problem";
import { readVenue } from "../read";

const isStyle = (text: string): text is Style => STYLES.some((s) => s === text);
const listed = (list: readonly string[]): string => list.map((x) => `"${x}"`).join(", ");

export const command: Command = {
  usage: { name: "capacity", files: ["VENUE"], options: ["--room", "--style", "--out"], switches: ["--bare", "--any-stock"] },
  run: async (args, io) => {
    const style = args.option("--style");
    if (style !== undefined && !isStyle(style)) throw badLine("--style", `"${style}" is not allowed; allowed: one of ${listed(STYLES)}`);
    const put = await resultTo(args, io);
    const venue = await readVenue(args.files[0] ?? "");
    const room = args.option("--room");
    const rooms = venue.rooms.map((r) => r.id);
    if (room !== undefined && !rooms.includes(room)) throw badLine("--room", `"${room}" is not a room of this venue; allowed: one of ${listed(rooms)}`);
    const found = capacity(venue, { room, style, bare: args.has("--bare"), anyStock: args.has("--any-stock") });
    await put(jsonText(found));
    return 0;
  },
};
