import type { Brief } from "../../lib/brief";
import { arrange, change, repair } from "../../lib/engine";
import type { ArrangeResult, Layout } from "../../lib/layout";
import { check } from "../../lib/rules";
import { parseVenue, type Venue } from "../../lib/venue";
import { briefFrom } from "./brief";
import { diceOf } from "./dice";
import { proofFault } from "./prove";
import { venueFrom } from "./venue";

export type Told = { readonly seed: number; readonly status: ArrangeResult["status"] | "crashed"; readonly faults: readonly string[] };

/** One day in so many is arranged twice, changed, or repaired as well. */
const TWICE = 10, LATE = 12;

const bytes = (r: ArrangeResult): string => JSON.stringify({ ...r, timing: null });

export const pairFrom = (seed: number): { readonly venue: Venue; readonly brief: Brief } => {
  const venue = venueFrom(seed);
  return { venue, brief: briefFrom(seed, venue) };
};

/** Arranges the random day of a seed, with so many steps at most, and says everything that is wrong with the answer. */
export function soakOne(seed: number, effort?: number): Told {
  try {
    const { venue, brief } = pairFrom(seed);
    const options = { layouts: seed % 8 === 0 ? 3 : 1, instead: false, effort };
    const result = arrange(venue, brief, options);
    const faults = [...judged(venue, brief, result)];
    if (seed % TWICE === 0) {
      // Another copy of the same files: nothing that was remembered may speak.
      const copy = parseVenue(JSON.stringify(venue));
      if (!copy.ok || bytes(arrange(copy.value, brief, options)) !== bytes(result)) faults.push("the same seed gives other bytes");
    }
    const first = result.layouts[0];
    if (first && seed % LATE === 0) faults.push(...late(seed, venue, brief, first));
    return { seed, status: result.status, faults };
  } catch (error) {
    return { seed, status: "crashed", faults: [error instanceof Error ? `${error.message} ${error.stack?.split("\n")[1]?.trim() ?? ""}` : String(error)] };
  }
}

/** The bounds of a seed's day alone: what they call impossible is worked out again; nothing is searched for. */
export function proveOne(seed: number): Told {
  try {
    const { venue, brief } = pairFrom(seed);
    const result = arrange(venue, brief, { layouts: 1, instead: false, attempts: 0 });
    return { seed, status: result.status, faults: result.status === "impossible" ? judged(venue, brief, result) : [] };
  } catch (error) {
    return { seed, status: "crashed", faults: [String(error)] };
  }
}

function judged(venue: Venue, brief: Brief, result: ArrangeResult): readonly string[] {
  const proofs = result.status === "impossible" ? result.reasons.map((f) => { const fault = proofFault(venue, brief, f); return fault === null ? null : `${f.code} (${f.scene ?? ""}) does not hold: ${fault}`; }) : [];
  return [
    ...result.layouts.flatMap((l) => mustsIn(venue, brief, l)),
    ...(result.status === "impossible" && result.reasons.length === 0 ? ["impossible without a proof"] : []),
    ...(result.status === "not-found" && result.reasons.length === 0 ? ["not found without a reason"] : []),
    ...(result.status === "arranged" && result.layouts.length === 0 ? ["arranged without a layout"] : []),
    ...proofs.filter((p): p is string => p !== null),
  ];
}

/** Must findings of a layout, read back from its file as anyone else would. */
function mustsIn(venue: Venue, brief: Brief, layout: Layout): readonly string[] {
  const back: Layout = JSON.parse(JSON.stringify(layout));
  const guests = brief.guests.adults + brief.guests.children;
  const meal = back.scenes.find((s) => s.id === "meal");
  return [
    ...check(venue, back, brief).filter((f) => f.level === "must").map((f) => `must: ${f.code} ${f.text}`),
    ...(meal && meal.seats < guests ? [`${meal.seats} places for ${guests} guests`] : []),
    ...(brief.meal.service !== "none" && !meal ? ["no meal is laid"] : []),
  ];
}

/** A late change and a hand's slip on an arranged day: answers hold, and what is fixed stays. */
function late(seed: number, venue: Venue, brief: Brief, layout: Layout): readonly string[] {
  const d = diceOf(seed * 31 + 5);
  const more = Math.max(1, brief.guests.adults + d.pick([-3, -1, 1, 2]));
  const asked: Brief = { ...brief, guests: { ...brief.guests, adults: more, wheelchairs: Math.min(brief.guests.wheelchairs, more) } };
  const changed = change(venue, layout, asked);
  const faults = changed.layouts.flatMap((l) => mustsIn(venue, asked, l)).map((f) => `after a change: ${f}`);
  const pieces = layout.scenes.flatMap((s) => s.items).filter((i) => !("standing" in i.from));
  if (pieces.length === 0) return faults;
  const [slip, keep] = [d.pick(pieces), d.pick(pieces)];
  const by = d.pick([-900, -250, 40, 400, 1500]);
  const shifted: Layout = {
    ...layout, scenes: layout.scenes.map((s) => ({ ...s, items: s.items.map((i) => (i.id === slip.id ? { ...i, at: [i.at[0] + by, i.at[1]] as const, seats: i.seats.map((p) => ({ ...p, x: p.x + by })) } : i)) })),
  };
  const mended = repair(venue, brief, shifted, [keep.id]);
  const after = mended.layouts[0] ?? mended.closest;
  const stood = (l: Layout | undefined): string => JSON.stringify(l?.scenes.map((s) => s.items.filter((i) => i.id === keep.id).map((i) => [i.at, i.angle])));
  return [
    ...faults, ...mended.layouts.flatMap((l) => mustsIn(venue, brief, l)).map((f) => `after a repair: ${f}`),
    ...(after && stood(after) !== stood(shifted) ? [`a repair moved ${keep.id}, which was fixed`] : []),
  ];
}
