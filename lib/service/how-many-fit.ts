import { fail, ok } from "../base";
import { STYLES, type Capacity, type Fit, type Layout, type Style } from "../layout";
import { venues } from "../store";
import type { Venue } from "../venue";
import { countsOf } from "./capacity-for";
import { deskGate } from "./gate";
import type { House } from "./house";
import type { Actor, Outcome } from "./types";

type StyleCounts = Capacity["rooms"][number]["styles"][Style];
export type RoomFits = {
  readonly room: string;
  readonly drape: string | null;
  readonly styles: readonly { readonly style: Style; readonly counts: NonNullable<StyleCounts>; readonly svg: string }[];
};
export type FitsView = { readonly venue: Venue; readonly version: number; readonly rooms: readonly RoomFits[] };

/** The width at which these drawings stand beside each other, CSS pixels: their words are sized for it. */
const SMALL = 340;

/** A count as a layout of one scene, so that it can be drawn. */
const asLayout = (room: string, drape: string | null, fit: Fit): Layout => ({
  id: "fit", title: "", why: [], turnovers: [], findings: [],
  scenes: [{ id: "meal", title: "Meal", rooms: [room], drapes: drape === null ? [] : [drape], items: fit.items, seats: fit.seats, numbers: [] }],
});

/** How many fit in every room of a venue, by style, with the drawing of what sits in comfort. The first venue when none is named. */
export async function howManyFit(house: House, actor: Actor, { venue: wanted }: { readonly venue?: string }): Promise<Outcome<FitsView>> {
  const desk = deskGate(actor, "venues");
  if (!desk.ok) return desk;
  const all = await venues.list(house.store.db);
  const found = wanted === undefined ? all[0] : all.find((one) => one.id === wanted);
  if (!found) return fail({ code: "not-found" });
  const capacity = await countsOf(house, found);
  const rooms = await Promise.all(capacity.rooms.map(async ({ room, drape, styles }): Promise<RoomFits> => ({
    room, drape,
    styles: await Promise.all(STYLES.flatMap((style) => { const counts = styles[style]; return counts ? [{ style, counts }] : []; }).map(async ({ style, counts }) => ({
      style, counts,
      svg: counts.comfort.items.length === 0 ? "" : await house.works.planSvg({ venue: found.venue, layout: asLayout(room, drape, counts.comfort), scene: "meal", sheet: false, pixelWidth: SMALL }),
    }))),
  })));
  return ok({ venue: found.venue, version: found.version, rooms });
}
