import { readFileSync, readdirSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { briefSchema } from "../../../lib/brief";
import { composeCarried, composePlan, squared, type PlanOptions } from "../../../lib/drawing";
import { arrange } from "../../../lib/engine";
import { venueSchema } from "../../../lib/venue";
import { faultsOf } from "./faults";
import { texts } from "./marks";

const read = (kind: "venues" | "briefs", name: string): unknown => JSON.parse(readFileSync(`tests/fixtures/${kind}/${name}`, "utf8"));
/** Houses whose day is laid in a second or so; those that are proved impossible have no plan. */
const HOUSES = readdirSync("tests/fixtures/venues").filter((name) => name !== "great-hall.json");
const sheet = { width: 297, height: 210, legend: true, frame: true, titleBlock: { couple: "Ines Calloway and Theo Brandt", day: "Saturday 12 June 2027", scene: "Meal" } };
const OPTIONS: readonly PlanOptions[] = [{ pixelWidth: 358 }, { pixelWidth: 1100, ways: true, dimensions: true }, { sheet, findings: true, layers: ["ways", "sight"] }];

describe.each(HOUSES)("the words on the plans of %s", (name) => {
  const venue = venueSchema.parse(read("venues", name)), brief = briefSchema.parse(read("briefs", name));
  const layout = arrange(venue, brief, { seed: 1, layouts: 1 }).layouts[0];
  it("keep off one another, off walls, and off the edges of pieces: small, large, on a sheet, and on one that is carried", () => {
    for (const scene of layout?.scenes ?? []) {
      OPTIONS.forEach((options) => {
        expect(faultsOf(composePlan(venue, { ...layout, scenes: layout?.scenes ?? [], findings: layout?.findings ?? [] }, scene.id, options), scene.items), `${scene.id}, ${JSON.stringify(options).slice(0, 30)}`).toEqual([]);
      });
      const [room] = scene.rooms;
      const drawn = composeCarried(venue, { scenes: layout?.scenes ?? [] }, scene.id, { rooms: scene.rooms, width: 168, height: 140, paper: "A4", ...(room ? { measured: room } : {}) });
      expect(faultsOf(drawn, squared(venue, scene, room).scene.items), `${scene.id}, carried`).toEqual([]);
    }
  }, 60_000);
});

describe("a room that stands askew on a sheet", () => {
  const venue = venueSchema.parse(read("venues", "turned-frame.json")), brief = briefSchema.parse(read("briefs", "turned-frame.json"));
  const layout = arrange(venue, brief, { seed: 1, layouts: 1 }).layouts[0];
  it("has its tables measured along two of its own walls: the parts of each string add up to the wall's length", () => {
    const scene = layout?.scenes.find((s) => s.id === "meal");
    if (!layout || !scene) throw new Error("the fixture has a meal");
    const figures = texts(composePlan(venue, layout, "meal", { sheet })).flatMap((t) => (/^\d+\.\d\d$/.test(t.text) && t.angle !== undefined ? [{ angle: Math.round(t.angle), metres: Number(t.text) }] : []));
    // A gap between two tables has its one figure, upright in the room; a string has its parts and their sum.
    const walls = [...new Set(figures.map((f) => f.angle))].filter((angle) => figures.filter((f) => f.angle === angle).length > 1);
    expect(walls).toHaveLength(2);
    for (const angle of walls) {
      const [total = 0, ...parts] = figures.filter((f) => f.angle === angle).map((f) => f.metres).sort((a, b) => b - a);
      expect(parts.length).toBeGreaterThan(1);
      // Each figure is rounded to a centimetre.
      expect(Math.abs(parts.reduce((n, m) => n + m, 0) - total)).toBeLessThanOrEqual(0.005 * (parts.length + 1));
    }
  });
});
