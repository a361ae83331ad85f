import { describe, expect, it } from "vitest";
import { composePlan } from "../../../lib/drawing";
import { withRunsAsOne } from "../../../lib/drawing/plan/numbers";
import { turn, type Point } from "../../../lib/geometry";
import type { Item } from "../../../lib/layout";
import { tidewheel } from "../../../lib/demo/tidewheel";
import { along, layout, piece, scene, venue } from "./kit";
import { texts } from "./marks";

const mill = venue(tidewheel), room = "grain-floor", [width, depth] = [1830, 760];
const top = (id: string, at: Point, angle = 0): Item => piece({
  id, kind: "table", role: "top", label: "Top table", room, shape: { width, depth }, at, angle, from: { stock: "trestle-6ft" }, seats: along(at, [width, depth], { angle, places: 3, sides: [-1] }),
});
const said = (items: readonly Item[], text: RegExp, pixelWidth = 900): number =>
  texts(composePlan(mill, layout("A", [scene("meal", "Meal", [room], items)]), "meal", { pixelWidth })).filter((t) => text.test(t.text)).length;

describe("the name of a run of joined top tables", () => {
  const run = [0, 1, 2].map((i) => top(`top-${i + 1}`, [4_000 + i * width, 2_500]));

  it.each([900, 2_400])("is written once at %i pixels, and without their number", (pixels) => {
    expect([said(run, /^Top table$|^Top$/, pixels), said(run, /\(3\)/, pixels)]).toEqual([1, 0]);
  });

  it("stands at the middle of the run, however that is turned", () => {
    const turned = [0, 1].map((i) => top(`top-${i + 1}`, ((p: Point): Point => [6_000 + Math.round(p[0]), 5_000 + Math.round(p[1])])(turn([i * width, 0], 30)), 30));
    const [one, ...more] = withRunsAsOne(turned);
    expect(more).toEqual([]);
    // Half a table from the middle of the first, along the run; its ends two tables apart.
    const to = turn([width / 2, 0], 30);
    expect(Math.hypot((one?.at[0] ?? 0) - 6_000 - to[0], (one?.at[1] ?? 0) - 5_000 - to[1])).toBeLessThan(1);
    expect(Math.abs((one && "width" in one.shape ? one.shape.width : 0) - 2 * width)).toBeLessThan(2);
  });

  it("is written for each where they stand apart", () => {
    expect(withRunsAsOne([top("a", [4_000, 2_500]), top("b", [4_000 + width + 300, 2_500])])).toHaveLength(2);
  });
});
