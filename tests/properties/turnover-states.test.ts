import { describe, expect, it } from "vitest";
import { briefSchema } from "../../lib/brief";
import { tidewheel } from "../../lib/demo";
import { arrange } from "../../lib/engine";
import { clearance } from "../../lib/geometry";
import { footprint, type Item, type Layout, type Turnover } from "../../lib/layout";
import { venueSchema } from "../../lib/venue";

const mill = venueSchema.parse(tidewheel);
const day = (more: Record<string, unknown>) => briefSchema.parse({
  format: "marquetry.brief/1", package: "hosted-day", date: "2027-06-12", guests: { adults: 60 }, meal: { service: "buffet" }, music: { by: "dj", dancing: 0.3 }, displays: ["welcome", "cake"], ...more,
});

/** A floor is walked on and laid under what stands about it; chairs are stacked while the rest is set. */
const counts = (i: Item): boolean => i.kind !== "dance-floor" && i.kind !== "chair" && i.role !== "wheelchair-space";
const same = (a: Item, b: Item): boolean => a.kind === b.kind && a.at.join() === b.at.join() && a.angle === b.angle && JSON.stringify(a.from) === JSON.stringify(b.from);

/** Old pieces that a piece is set down on though nothing has taken them away yet, over the whole of a turnover, in the order of its moves. */
function stoodOn(layout: Layout, t: Turnover): ReadonlySet<string> {
  const at = (id: string): readonly Item[] => (layout.scenes.find((s) => s.id === id)?.items ?? []).filter((i) => counts(i) && (t.room === undefined || i.room === t.room));
  const before = at(t.from), after = at(t.to);
  const floor = new Map(before.filter((i) => !after.some((a) => same(a, i))).map((i) => [i.id, i]));
  const bad = new Set<string>();
  for (const m of [...t.moves].filter((x) => x.act !== "lay").sort((a, b) => (a.ends ?? 0) - (b.ends ?? 0))) {
    const gone = m.act === "out" ? undefined : floor.get(m.item);
    if (gone) floor.delete(m.item);
    const set = m.act === "away" ? undefined : after.find((i) => i.id === (m.act === "out" ? m.item : m.to));
    if (!set) continue;
    for (const [id, old] of floor) if (clearance(footprint(set), footprint(old)) < -1) bad.add(id);
  }
  return bad;
}

describe("a turnover of an arranged layout", () => {
  it.each([
    ["rounds after rows", {}], ["long tables after rows", { meal: { service: "sharing", tables: "long" } }], ["tables struck for dancing", { ceremony: { here: false }, guests: { adults: 96 }, music: { by: "dj", dancing: 0.35 } }],
  ] as const)("sets nothing down on what still stands, but for what it says is put aside: %s", (_, more) => {
    const { layouts } = arrange(mill, day(more), { layouts: 2, instead: false });
    expect(layouts.length).toBeGreaterThan(0);
    for (const l of layouts) for (const t of l.turnovers) expect(stoodOn(l, t).size, `${l.id} ${t.from} to ${t.to} in ${t.room}`).toBeLessThanOrEqual(t.aside?.pieces ?? 0);
  }, 240_000);

  it("never leaves guests without a room that the hired rooms could have given", () => {
    for (const adults of [40, 60, 80]) for (const l of arrange(mill, day({ guests: { adults } }), { layouts: 1, instead: false }).layouts)
      expect(l.findings.filter((f) => f.code === "turnover-room" && f.level === "must")).toEqual([]);
  }, 240_000);
});
