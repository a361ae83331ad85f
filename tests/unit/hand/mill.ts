import { briefSchema, type Brief } from "../../../lib/brief";
import { tidewheel } from "../../../lib/demo";
import { arrange } from "../../../lib/engine";
import type { Item, Layout } from "../../../lib/layout";
import { venueSchema, type Room } from "../../../lib/venue";

export const mill = venueSchema.parse(tidewheel);
export const answers: Brief = briefSchema.parse({
  format: "marquetry.brief/1", package: "hosted-day", date: "2027-06-12", guests: { adults: 78, children: 6, wheelchairs: 1 },
  meal: { tables: "mixed" }, music: { by: "dj", dancing: 0.4 }, displays: ["welcome", "cards"],
  brought: [{ what: "Ice-cream cart", width: 1800, depth: 900 }],
});

let made: Layout | undefined;
/** A day at the mill, arranged once. */
export function day(): Layout {
  const found = made ?? arrange(mill, answers, { seed: 1, layouts: 1, instead: false }).layouts[0];
  if (!found) throw new Error("the mill has no layout for these answers");
  made = found;
  return found;
}
export const grain: Room = (() => { const r = mill.rooms.find((one) => one.id === "grain-floor"); if (!r) throw new Error("no grain floor"); return r; })();
export const atMeal = (layout: Layout): readonly Item[] => layout.scenes.find((s) => s.id === "meal")?.items ?? [];
export function piece(layout: Layout, is: (i: Item) => boolean): Item {
  const found = atMeal(layout).find(is);
  if (!found) throw new Error("no such piece at the meal");
  return found;
}
