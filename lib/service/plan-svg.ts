import { fail, ok } from "../base";
import { briefSchema } from "../brief";
import { gate } from "./gate";
import { inWords, type InWords } from "./in-words";
import type { House } from "./house";
import { planSeen, type PlanWhich } from "./seen-layout";
import type { Actor, Outcome } from "./types";

type Plan = PlanWhich & InWords & { readonly reference: string; readonly scene?: string; readonly sheet?: boolean; readonly pixelWidth?: number; readonly rooms?: readonly string[] };

/** One part of the day as SVG; its first when none is named. */
export async function planSvg(house: House, actor: Actor, { reference, scene: wanted, sheet = false, pixelWidth, rooms, words, wet, ...which }: Plan): Promise<Outcome<string>> {
  const booking = await gate(house.store.db, actor, { reference, action: "glance" });
  if (!booking.ok) return booking;
  // Who may only look sees what speaks for the booking now, and no other.
  const seen = await planSeen(house, booking.value, actor.kind === "look" ? { set: which.set } : { ...which, late: which.late === true && actor.kind === "desk" });
  if (!seen.ok) return seen;
  const { brief, was, number, fingerprint } = seen.value;
  const { layout, venue } = inWords({ layout: seen.value.layout, venue: seen.value.venue.venue }, { words, wet });
  const scene = wanted === undefined ? layout.scenes[0] : layout.scenes.find((one) => one.id === wanted);
  if (!scene) return fail({ code: "not-found" });
  return ok(await house.works.planSvg({
    venue, layout, scene: scene.id, sheet, pixelWidth, rooms, was, brief: brief && briefSchema.parse(brief), revision: number, fingerprint,
  }));
}
