import { fail, ok } from "../base";
import { briefSchema } from "../brief";
import { gate } from "./gate";
import type { House } from "./house";
import { planSeen, type PlanWhich } from "./seen-layout";
import type { Actor, Outcome } from "./types";

type Plan = PlanWhich & { readonly reference: string; readonly scene?: string; readonly sheet?: boolean; readonly pixelWidth?: number; readonly rooms?: readonly string[] };

/** One part of the day as SVG; its first when none is named. */
export async function planSvg(house: House, actor: Actor, { reference, scene: wanted, sheet = false, pixelWidth, rooms, ...which }: Plan): Promise<Outcome<string>> {
  const booking = await gate(house.store.db, actor, { reference, action: "look" });
  if (!booking.ok) return booking;
  const seen = await planSeen(house, booking.value, which);
  if (!seen.ok) return seen;
  const { layout, venue, brief, was, number, fingerprint } = seen.value;
  const scene = wanted === undefined ? layout.scenes[0] : layout.scenes.find((one) => one.id === wanted);
  if (!scene) return fail({ code: "not-found" });
  return ok(await house.works.planSvg({
    venue: venue.venue, layout, scene: scene.id, sheet, pixelWidth, rooms, was, brief: brief && briefSchema.parse(brief), revision: number, fingerprint,
  }));
}
