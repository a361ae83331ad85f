import { fail, ok } from "../base";
import { gate } from "./gate";
import type { House } from "./house";
import { planSeen, type PlanWhich } from "./seen-layout";
import type { Actor, Outcome } from "./types";
import type { DrawnPlan, PlanLayers } from "./works";

type Plan = PlanWhich & PlanLayers & { readonly reference: string; readonly scene: string; readonly pixelWidth: number };

/** One part of the day as a display list, for the page to paint, with a word on each piece. */
export async function planDrawing(house: House, actor: Actor, { reference, scene: wanted, pixelWidth, ways, dimensions, findings, ...which }: Plan): Promise<Outcome<DrawnPlan>> {
  const booking = await gate(house.store.db, actor, { reference, action: "look" });
  if (!booking.ok) return booking;
  const seen = await planSeen(house, booking.value, which);
  if (!seen.ok) return seen;
  const { layout, venue, was } = seen.value;
  const scene = layout.scenes.find((one) => one.id === wanted);
  if (!scene) return fail({ code: "not-found" });
  return ok(await house.works.planDrawing({ venue: venue.venue, layout, scene: scene.id, pixelWidth, was, ways, dimensions, findings }));
}
