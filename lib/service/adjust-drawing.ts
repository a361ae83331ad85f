import { fail, ok } from "../base";
import { layoutIn } from "../words/layout";
import { languageOf, sayIn } from "../words/pages";
import { heardBy, openBench, type Asking } from "./adjust";
import type { House } from "./house";
import type { Actor, Outcome } from "./types";
import type { DrawnPlan } from "./works";

type Want = Asking & { readonly scene: string; /** Of each drawing, CSS pixels. */ readonly pixelWidths: readonly number[]; /** What changed since the version before is drawn over it. */ readonly changes?: boolean };

/** One part of the day as it stands under the hand, at each of the widths: every room of it, with what the check found marked on it. */
export async function adjustDrawing(house: House, actor: Actor, { scene: wanted, pixelWidths, changes = false, ...asking }: Want): Promise<Outcome<readonly DrawnPlan[]>> {
  const bench = await openBench(house, actor, asking);
  if (!bench.ok) return bench;
  const { work, from } = bench.value, venue = heardBy(actor, bench.value);
  const scene = work.layout.scenes.find((one) => one.id === wanted);
  if (!scene) return fail({ code: "not-found" });
  const rooms = venue.rooms.filter((r) => scene.rooms.includes(r.id)).map((r) => r.id);
  const layout = actor.kind === "couple" ? layoutIn(work.layout, { venue, say: sayIn(languageOf(venue.locale)) }) : work.layout;
  return ok(await Promise.all(pixelWidths.map((pixelWidth) => house.works.planDrawing({ venue, layout, scene: scene.id, pixelWidth, rooms, findings: true, ...(changes ? { was: from } : {}) }))));
}
