import { fail, ok } from "../base";
import { inWords, type InWords } from "./in-words";
import type { House } from "./house";
import { planFor, type PlanWhich } from "./seen-layout";
import type { Actor, Outcome } from "./types";
import type { DrawnPlan, PlanLayers } from "./works";

type Plan = PlanWhich & PlanLayers & InWords & { readonly reference: string; readonly scene: string; readonly pixelWidth: number };

/** One part of the day as a display list, for the page to paint, with a word on each piece. */
export async function planDrawing(house: House, actor: Actor, { scene: wanted, pixelWidth, ways, dimensions, findings, words, wet, ...which }: Plan): Promise<Outcome<DrawnPlan>> {
  const seen = await planFor(house, actor, which);
  if (!seen.ok) return seen;
  const { was } = seen.value;
  const { layout, venue } = inWords({ layout: seen.value.layout, venue: seen.value.venue.venue }, { words, wet });
  const scene = layout.scenes.find((one) => one.id === wanted);
  if (!scene) return fail({ code: "not-found" });
  return ok(await house.works.planDrawing({ venue, layout, scene: scene.id, pixelWidth, was, ways, dimensions, findings }));
}
