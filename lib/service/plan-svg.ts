import { sha256 } from "../access";
import { fail, ok } from "../base";
import { briefSchema } from "../brief";
import { inWords, type InWords } from "./in-words";
import type { House } from "./house";
import { daysOf, planFor, type PlanSeen, type PlanWhich } from "./seen-layout";
import type { Actor, Outcome } from "./types";

type Look = InWords & { readonly scene?: string; readonly sheet?: boolean; readonly pixelWidth?: number; readonly rooms?: readonly string[] };
type Plan = PlanWhich & Look & { readonly reference: string };
type Plans = PlanWhich & { readonly reference: string; readonly looks: readonly Look[] };

/** One part of the day as SVG; its first when none is named. */
export async function planSvg(house: House, actor: Actor, { scene, sheet, pixelWidth, rooms, words, wet, ...which }: Plan): Promise<Outcome<string>> {
  const all = await planSvgs(house, actor, { ...which, looks: [{ scene, sheet, pixelWidth, rooms, words, wet }] });
  return all.ok ? (all.value[0] ?? fail({ code: "not-found" })) : all;
}

/** Several pictures of one layout, in the order asked for: it is looked up once, whatever their number. */
export async function planSvgs(house: House, actor: Actor, { looks, ...which }: Plans): Promise<Outcome<readonly Outcome<string>[]>> {
  const seen = await planFor(house, actor, which);
  if (!seen.ok) return seen;
  const of = contentOf(seen.value);
  return ok(await Promise.all(looks.map((look) => pictureOf(house, { seen: seen.value, of }, look))));
}

/** Pictures by what is drawn on them: a layout is read from the store for each page, and is the same layout each time. */
const drawn = new WeakMap<House["works"], Map<string, Promise<Outcome<string>>>>();
/** About 40 KB each. */
const MOST = 400;

const contentOf = ({ venue, layout, was }: PlanSeen): string => sha256(JSON.stringify([venue.hash, layout, was]));

async function pictureOf(house: House, { seen, of }: { readonly seen: PlanSeen; readonly of: string }, look: Look): Promise<Outcome<string>> {
  // A sheet of its own bears names, days and a revision.
  if (look.sheet) return draw(house, seen, look);
  const kept = drawn.get(house.works) ?? new Map<string, Promise<Outcome<string>>>(), key = of + JSON.stringify(look);
  drawn.set(house.works, kept);
  const picture = kept.get(key) ?? draw(house, seen, look);
  // The one asked for last stands last: the first is let go of.
  kept.delete(key);
  kept.set(key, picture);
  const oldest = kept.size > MOST ? kept.keys().next().value : undefined;
  if (oldest !== undefined) kept.delete(oldest);
  picture.catch(() => kept.delete(key));
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
