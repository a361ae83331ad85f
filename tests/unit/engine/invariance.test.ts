import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { briefSchema, type Brief } from "../../../lib/brief";
import { arrange } from "../../../lib/engine";
import { turn, type Point } from "../../../lib/geometry";
import type { ArrangeResult } from "../../../lib/layout";
import { venueSchema, type Venue } from "../../../lib/venue";

const read = (kind: string, name: string): unknown => JSON.parse(readFileSync(new URL(`../../fixtures/${kind}/${name}.json`, import.meta.url), "utf8"));

const isPoint = (v: unknown): v is Point => Array.isArray(v) && v.length === 2 && v.every((n) => typeof n === "number");
/** Every point of a file moved, and every angle turned. */
function moved(value: unknown, move: (p: Point) => Point, by: number): unknown {
  if (isPoint(value)) { const [x, y] = move(value); return [Math.round(x), Math.round(y)]; }
  if (Array.isArray(value)) return value.map((v) => moved(v, move, by));
  if (value === null || typeof value !== "object") return value;
  return Object.fromEntries(Object.entries(value).map(([k, v]) => [k, k === "angle" && typeof v === "number" ? (v + by + 360) % 360 : moved(v, move, by)]));
}
const venue = (name: string, move: (p: Point) => Point = (p) => p, by = 0): Venue => venueSchema.parse(moved(read("venues", name), move, by));
const brief = (name: string): Brief => briefSchema.parse(read("briefs", name));

const ask = { instead: false, layouts: 1 } as const;
const seats = (r: ArrangeResult): number => r.layouts[0]?.scenes.find((s) => s.id === "meal")?.seats ?? -1;

describe("a day laid out, whichever way the plan of the house is drawn", () => {
  for (const name of ["one-exit", "slanted-wall"]) {
    const plain = arrange(venue(name), brief(name), ask);
    for (const by of [17, 90]) it(`seats as many in ${name} turned by ${by} degrees`, () => {
      const turned = arrange(venue(name, (p) => turn(p, by), by), brief(name), ask);
      expect(turned.status).toBe(plain.status);
      expect(Math.abs(seats(turned) - seats(plain))).toBeLessThanOrEqual(8);
    });
    it(`seats as many in ${name} moved elsewhere`, () => {
      const there = arrange(venue(name, ([x, y]) => [x + 31_000, y - 52_000]), brief(name), ask);
      expect([there.status, seats(there)]).toEqual([plain.status, seats(plain)]);
    });
    it(`seats as many in ${name} seen in a mirror`, () => {
      const seen = arrange(venue(name, ([x, y]) => [-x, y]), brief(name), ask);
      expect([seen.status, seats(seen)]).toEqual([plain.status, seats(plain)]);
    });
  }

  it("lays the same in a house whose name, rooms' names and pieces' names are others", () => {
    const file = venue("one-exit"), other: Venue = {
      ...file, name: "Elsewhere", rooms: file.rooms.map((r) => ({ ...r, name: "Otherwise" })), stock: file.stock.map((s) => ({ ...s, name: `Piece of ${s.kind}` })),
    };
    const at = (v: Venue): unknown => arrange(v, brief("one-exit"), ask).layouts[0]?.scenes.map((s) => s.items.map((i) => [i.id, i.at, i.angle, i.seats]));
    expect(at(other)).toEqual(at(file));
  });
});
