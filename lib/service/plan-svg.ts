import { fail, ok } from "../base";
import { briefSchema } from "../brief";
import type { Layout } from "../layout";
import { gate } from "./gate";
import { inWords, type InWords } from "./in-words";
import type { House } from "./house";
import { daysOf, planSeen, type PlanSeen, type PlanWhich } from "./seen-layout";
import type { Actor, Outcome } from "./types";

type Look = InWords & { readonly scene?: string; readonly sheet?: boolean; readonly pixelWidth?: number; readonly rooms?: readonly string[] };
type Plan = PlanWhich & Look & { readonly reference: string };

/** One part of the day as SVG; its first when none is named. */
export async function planSvg(house: House, actor: Actor, { reference, scene, sheet = false, pixelWidth, rooms, words, wet, ...which }: Plan): Promise<Outcome<string>> {
  const booking = await gate(house.store.db, actor, { reference, action: "glance" });
  if (!booking.ok) return booking;
  // Who may only look sees what speaks for the booking now, and no other.
  const seen = await planSeen(house, booking.value, actor.kind === "look" ? { set: which.set } : { ...which, late: which.late === true && actor.kind === "desk" });
  return seen.ok ? pictureOf(house, seen.value, { scene, sheet, pixelWidth, rooms, words, wet }) : seen;
}

/**
 * Pictures by the layout that they are of. What the engine offered stays one and the same as long as it is held, and each look at a page
 * wants its pictures again; when the layout is let go of, they go with it.
 */
const drawn = new WeakMap<Layout, Map<string, Promise<Outcome<string>>>>();
const MOST = 24;

async function pictureOf(house: House, seen: PlanSeen, look: Look): Promise<Outcome<string>> {
  // A sheet of its own bears names and a revision; what changed is drawn against another layout.
  if (look.sheet || seen.was || seen.number > 0) return draw(house, seen, look);
  const mine = drawn.get(seen.layout) ?? new Map<string, Promise<Outcome<string>>>(), key = JSON.stringify([seen.venue.hash, look]);
  drawn.set(seen.layout, mine);
  const picture = mine.get(key) ?? draw(house, seen, look);
  if (mine.size >= MOST) mine.clear();
  mine.set(key, picture);
  picture.catch(() => mine.delete(key));
  return picture;
}

async function draw(house: House, seen: PlanSeen, { scene: wanted, sheet = false, pixelWidth, rooms, words, wet }: Look): Promise<Outcome<string>> {
  const { brief, was, number, fingerprint } = seen;
  const { layout, venue } = inWords({ layout: seen.layout, venue: seen.venue.venue }, { words, wet });
  const scene = wanted === undefined ? layout.scenes[0] : layout.scenes.find((one) => one.id === wanted);
  if (!scene) return fail({ code: "not-found" });
  const { drawnOn, agreedOn } = daysOf(house, seen);
  return ok(await house.works.planSvg({
    venue, layout, scene: scene.id, sheet, pixelWidth, rooms, was, brief: brief && briefSchema.parse(brief), revision: number, fingerprint, ...(sheet ? { reference: brief?.reference, drawnOn, agreedOn } : {}),
  }));
}
