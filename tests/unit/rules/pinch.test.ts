import { describe, expect, it } from "vitest";
import { add, turn, type Point } from "../../../lib/geometry";
import { contextOf, SCENE_RULES } from "../../../lib/rules";
import { siteOf } from "../../../lib/venue";
import { pinchOf, walkMap } from "../../../lib/rules/ways";
import { box, hall, itemOf, venueOf } from "./kit";

describe("the pinch that a route fails at", () => {
  for (const angle of [0, 17, 45, 90]) it(`is found between two screens 700 mm apart, at ${angle} degrees, and measured there`, () => {
    const spin = (p: Point): Point => { const q = add([10_000, 10_000], turn(p, angle)); return [Math.round(q[0]), Math.round(q[1])]; };
    const venue = venueOf({ rooms: [hall({
      outline: box(-6000, -6000, 12_000, 12_000).map((p) => spin([p[0], p[1]])).map(([x, y]) => [x, y] as [number, number]),
      doors: [{ id: "out", from: [...spin([-800, -6000])] as [number, number], to: [...spin([800, -6000])] as [number, number], leads: "outside", exit: true, for: ["guests"], swing: "out" }],
    })] });
    const piece = (id: string, at: Point) => ({ ...itemOf({ id, kind: "screen", from: { brought: true }, shape: { width: 6000, depth: 300 }, at: [0, 0] }), at: spin(at), angle });
    const scene = { id: "meal" as const, rooms: ["hall"], items: [piece("l", [-3350, 0]), piece("r", [3350, 0])] };
    const site = siteOf(venue), map = walkMap(site, scene, { width: 914, tableLine: 483 });
    const pinch = pinchOf(site, scene, map, { target: spin([0, 4000]), within: 500, level: 0 });
    expect(Math.round(pinch?.width ?? 0)).toBeGreaterThanOrEqual(698);
    expect(Math.round(pinch?.width ?? 0)).toBeLessThanOrEqual(702);
    expect(Math.hypot((pinch?.at[0] ?? 0) - 10_000, (pinch?.at[1] ?? 0) - 10_000)).toBeLessThan(200);
  });

  it("stands in the finding, with its width", () => {
    const venue = venueOf({ rooms: [hall({ doors: [{ id: "west", from: [0, 5200], to: [0, 6800], leads: "outside", exit: true, for: ["guests"], swing: "out" }] })] });
    const wall = (id: string, x: number) => itemOf({ id, kind: "screen", from: { brought: true }, shape: { width: 300, depth: 5576 }, at: [x, id === "a" ? 2788 : 12_000 - 2788] });
    const bar = itemOf({ id: "bar", kind: "bar", from: { stock: "bar" }, shape: { width: 2400, depth: 700 }, at: [17_000, 3000] });
    const items = [wall("a", 12_000), wall("b", 12_000), bar];
    const layout = { id: "a", title: "", why: [], turnovers: [], findings: [], scenes: [{ id: "meal" as const, title: "Meal", rooms: ["hall"], drapes: [], items, seats: 0, numbers: [] }] };
    const c = contextOf(venue, layout), view = c.scenes[0];
    const found = view ? (SCENE_RULES["route"]?.(view, c) ?? []) : [];
    // The hall is 12 000 mm deep, the screens 5 576 each: 848 is left between them.
    expect(found.map((f) => [f.items, f.measured, f.at])).toEqual([[["bar"], 12_000 - 2 * 5576, [12_000, 6000]]]);
  });
});
