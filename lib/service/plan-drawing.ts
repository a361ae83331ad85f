import { fail, ok } from "../base";
import { gate } from "./gate";
import { inWords, type InWords } from "./in-words";
import type { House } from "./house";
import { planSeen, type PlanWhich } from "./seen-layout";
import type { Actor, Outcome } from "./types";
import type { DrawnPlan, PlanLayers } from "./works";

type Plan = PlanWhich & PlanLayers & InWords & { readonly reference: string; readonly scene: string; readonly pixelWidth: number };

/** One part of the day as a display list, for the page to paint, with a word on each piece. */
export async function planDrawing(house: House, actor: Actor, { reference, scene: wanted, pixelWidth, ways, dimensions, findings, words, wet, ...which }: Plan): Promise<Outcome<DrawnPlan>> {
  const booking = await gate(house.store.db, actor, { reference, action: "glance" });
  if (!booking.ok) return booking;
  // Who may only look sees what speaks for the booking now, and no other.
  const seen = await planSeen(house, booking.value, actor.kind === "look" ? { set: which.set } : { ...which, late: which.late === true && actor.kind === "desk" });
  if (!seen.ok) return seen;
  const { was } = seen.value;
  const { layout, venue } = inWords({ layout: seen.value.layout, venue: seen.value.venue.venue }, { words, wet });
  const scene = layout.scenes.find((one) => one.id === wanted);
  if (!scene) return fail({ code: "not-found" });
  return ok(await house.works.planDrawing({ venue, layout, scene: scene.id, pixelWidth, was, ways, dimensions, findings }));
}
