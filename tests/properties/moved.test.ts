import { describe, expect, it } from "vitest";
import { briefSchema } from "../../lib/brief";
import { tidewheel } from "../../lib/demo";
import { arrange } from "../../lib/engine";
import { scale, turn, type Point } from "../../lib/geometry";
import type { Finding, Item, Layout, Scene } from "../../lib/layout";
import { checker, type Checker } from "../../lib/rules";
import { venueSchema, type Venue } from "../../lib/venue";

const mill = venueSchema.parse(tidewheel);
const day = (more: Record<string, unknown>) => briefSchema.parse({
  format: "marquetry.brief/1", package: "hosted-day", date: "2027-06-12", guests: { adults: 56 }, meal: { service: "buffet" }, music: { by: "dj", dancing: 0.3 }, displays: ["welcome", "cake"], ...more,
});
const FAR = 6000, OVER = 10;

const moved = (item: Item, by: Point): Item => ({ ...item, at: [Math.round(item.at[0] + by[0]), Math.round(item.at[1] + by[1])], seats: item.seats.map((s) => ({ ...s, x: Math.round(s.x + by[0]), y: Math.round(s.y + by[1]) })) });
const musts = (list: readonly Finding[]): readonly Finding[] => list.filter((f) => f.level === "must");

/** The first whole millimetre at which moving a piece one way brings a must, and the musts 10 mm on; null where none comes. */
function firstMust(held: Checker, item: Item, way: Point): { readonly at: number; readonly beyond: readonly Finding[] } | null {
  // Elsewhere in every part of the day where it stands: else the room would have to be turned over for it.
  const shifted = (s: Scene, to: Item): Scene => (s.items.some((i) => i.id === item.id && i.at.join() === item.at.join()) ? { ...s, items: s.items.map((i) => (i.id === item.id ? to : i)) } : s);
  const ask = (d: number): readonly Finding[] => { const to = moved(item, scale(way, d)); return musts(held.next({ ...held.layout, scenes: held.layout.scenes.map((s) => shifted(s, to)) }).findings); };
  let lo = 0, hi = 16;
  while (ask(hi).length === 0) { lo = hi; hi *= 2; if (hi > FAR) return null; }
  while (hi - lo > 1) { const m = Math.floor((lo + hi) / 2); if (ask(m).length > 0) hi = m; else lo = m; }
  return { at: hi, beyond: ask(hi - 1 + OVER) };
}

/** How far a finding is past its limit, mm; null where it is no distance. */
function past(f: Finding): number | null {
  if (f.unit !== "mm" || f.measured === undefined || f.limit === undefined) return null;
  return f.limit === 0 ? f.measured : f.limit - f.measured;
}

/** Moves pieces of a layout the four ways of their own axes and says which musts came alone, each with how far past its limit it is. */
function told(venue: Venue, brief: ReturnType<typeof day>, layout: Layout, wanted: ReadonlySet<string>): ReadonlyMap<string, number> {
  const alone = new Map<string, number>();
  const held = checker(venue, brief, layout);
  expect(musts(held.findings)).toEqual([]);
  for (const scene of layout.scenes) for (const item of scene.items.filter((_, k) => k % 3 === 0)) for (const a of [0, 90, 180, 270]) {
    if ([...wanted].every((c) => alone.has(c))) return alone;
    const found = firstMust(held, item, turn([1, 0], item.angle + a));
    const codes = [...new Set(found?.beyond.map((f) => f.code))], [first] = found?.beyond ?? [];
    if (!first || codes.length !== 1) continue;
    const by = past(first);
    // A place that comes to face sideways what was too near all along is no step over a distance. Millimetres are whole, and one is let go.
    if (by !== null && by > OVER + 3) continue;
    alone.set(first.code, by ?? 0);
  }
  return alone;
}

describe("one piece of an arranged layout moved 10 mm past a limit gives that finding and no other", () => {
  it.each([
    ["rounds and rows", { meal: { service: "buffet", tables: "rounds" } }, ["overlap", "outside-room", "row-clear"]],
    ["long tables", { ceremony: { here: false }, meal: { service: "sharing", tables: "long" } }, ["table-gap", "outside-room", "overlap"]],
  ] as const)("%s", (_, more, wanted) => {
    const brief = day(more), [layout] = arrange(mill, brief, { layouts: 1, instead: false }).layouts;
    expect(layout).toBeDefined();
    if (!layout) return;
    const alone = told(mill, brief, layout, new Set(wanted));
    expect([...wanted].filter((c) => !alone.has(c))).toEqual([]);
  }, 240_000);
});
