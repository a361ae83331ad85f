import { composePlan, toSvg } from "../../drawing";
import { sheetFor } from "../../papers";
import { resultTo, type Command } from "../command";
import { badLine } from "../problem";
import { readVenueAndLayout } from "../read";

/** One part of the day on a full sheet of the venue's office paper, at the largest scale of the row that it holds; the meal unless asked. */
export const command: Command = {
  usage: { name: "draw", files: ["VENUE", "LAYOUT"], options: ["--scene", "--out"], switches: [] },
  run: async (args, io) => {
    const put = await resultTo(args, io);
    const { venue, layout } = await readVenueAndLayout(args.files[0] ?? "", args.files[1] ?? "");
    const asked = args.option("--scene");
    const scene = asked === undefined ? (layout.scenes.find((s) => s.id === "meal") ?? layout.scenes[0]) : layout.scenes.find((s) => s.id === asked);
    if (!scene) throw badLine("--scene", `"${asked ?? ""}" is not in the layout; allowed: one of ${layout.scenes.map((s) => `"${s.id}"`).join(", ")}`);
    const titleBlock = { scene: scene.title, layoutTitle: layout.title, ...(scene.seats > 0 ? { places: scene.seats } : {}) };
    const drawing = composePlan(venue, layout, scene.id, { sheet: { ...sheetFor(venue.locale), titleBlock, legend: true, frame: true }, scale: "fit" });
    io.err(`${drawing.title}\n`);
    await put(toSvg(drawing, { theme: "light" }));
    return 0;
  },
};
