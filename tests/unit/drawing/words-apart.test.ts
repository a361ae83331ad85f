import { describe, expect, it } from "vitest";
import { seeded } from "../../../lib/base";
import { composePlan, type PlanOptions } from "../../../lib/drawing";
import type { Item, Layout } from "../../../lib/layout";
import { rectangle, type Polygon } from "../../../lib/geometry";
import type { Room, Venue } from "../../../lib/venue";
import { along, layout, piece, round, scene } from "./kit";
import { faultsOf } from "./faults";
import { flat, texts } from "./marks";
import { mill } from "./mill";

type Draw = () => number;
const pick = <T>(draw: Draw, list: readonly T[]): T => { const one = list[Math.floor(draw() * list.length)]; if (one === undefined) throw new Error("nothing to pick"); return one; };
const between = (draw: Draw, lo: number, hi: number): number => Math.round(lo + draw() * (hi - lo));

const NAMES = ["Bar", "Buffet", "Cake", "Gifts and guest book", "Photographs by the old stair", "DJ", "Welcome", "Ljósmyndabás", "A name that is a good deal longer than its piece"] as const;

/** A room of some shape with a door, windows, columns and floor that is kept clear. */
function roomOf(draw: Draw, id: string, [x, y]: readonly [number, number]): Room {
  const [first] = mill.rooms;
  if (!first) throw new Error("the mill has rooms");
  const w = between(draw, 5, 24) * 1000, d = between(draw, 4, 16) * 1000, cut = between(draw, 1, 3) * 1000;
  const shape = pick(draw, ["box", "ell", "slant"] as const);
  const outline: Polygon = shape === "box" ? [[x, y], [x + w, y], [x + w, y + d], [x, y + d]]
    : shape === "ell" ? [[x, y], [x + w, y], [x + w, y + d - cut], [x + w - cut, y + d - cut], [x + w - cut, y + d], [x, y + d]]
      : [[x, y], [x + w, y], [x + w - cut, y + d], [x, y + d]];
  const column = (cx: number, cy: number): Room["obstacles"][number] => ({ id: `c${cx}-${cy}`, kind: "column", outline: rectangle([cx, cy], 300, 300, 0) });
  return {
    ...first, id, name: pick(draw, ["Hall", "Long Parlour", "The Room over the Water"]), level: 0, outline, standing: [],
    doors: [{ id: "d", from: [x + 1500, y], to: [x + 3000, y], leads: "outside", exit: true, for: ["guests"], swing: pick(draw, ["in", "out"] as const) }],
    windows: [{ from: [x, y + 1000], to: [x, y + 2500], sill: 900 }], sockets: [[x + 200, y + d - 10]],
    obstacles: draw() < 0.5 ? [column(x + w / 2, y + d / 2)] : [], walls: [],
    keepClear: draw() < 0.4 ? [{ id: "k", why: "Well cover", outline: rectangle([x + w - cut - 900, y + d - cut - 900], 700, 700, 0) }] : [],
  };
}

function thingsIn(draw: Draw, room: Room): readonly Item[] {
  const xs = room.outline.map((p) => p[0]), ys = room.outline.map((p) => p[1]);
  const [x, y] = [Math.min(...xs), Math.min(...ys)], [w, d] = [Math.max(...xs) - x, Math.max(...ys) - y];
  const items: Item[] = [];
  let n = 0;
  for (let cy = y + 1900; cy < y + d - 2600; cy += 2700) for (let cx = x + 1900; cx < x + w - 4400; cx += 2900) {
    const kind = draw();
    if (kind < 0.35) items.push(round(`${room.id}-${++n}`, n, [cx, cy], { room: room.id, diameter: pick(draw, [1200, 1500, 1680]), stock: "round", places: between(draw, 4, 8) }));
    else if (kind < 0.55) { n++; items.push(piece({ id: `${room.id}-${n}`, kind: "table", role: "dining", label: `Table ${n}`, room: room.id, from: { stock: "long" }, at: [cx, cy], shape: { width: 1830, depth: 760 }, angle: pick(draw, [0, 90, 30]), seats: along([cx, cy], [1830, 760], { angle: 0, places: 3 }) })); }
    else if (kind < 0.85) items.push(piece({ id: `${room.id}-x${cx}-${cy}`, kind: pick(draw, ["bar", "buffet", "lounge", "dance-floor", "dj", "easel"] as const), label: pick(draw, NAMES), room: room.id, at: [cx, cy], shape: { width: between(draw, 400, 2600), depth: between(draw, 400, 1600) }, angle: pick(draw, [0, 0, 90, 45, 200]) }));
  }
  return items;
}

function caseOf(seed: number): { readonly venue: Venue; readonly plan: Layout; readonly options: PlanOptions } {
  const random = seeded(seed);
  const draw: Draw = () => random();
  const one = roomOf(draw, "one", [0, 0]);
  const right = Math.max(...one.outline.map((p) => p[0]));
  const two = draw() < 0.4 ? [{ ...roomOf(draw, "two", [right + 400, 0]), level: draw() < 0.5 ? 0 : 1 }] : [];
  const rooms = [one, ...two];
  const venue: Venue = { ...mill, drapes: [], rooms };
  const plan = layout("A", [scene("meal", "Meal", rooms.map((r) => r.id), rooms.flatMap((r) => thingsIn(draw, r)))]);
  const sheet = { width: 297, height: 210, legend: true, frame: true, titleBlock: { couple: "Ines Calloway and Theo Brandt", scene: "Meal", layoutTitle: "Rounds and long tables, closely filled", day: "Saturday 12 June 2027" } };
  const options = pick(draw, [{ sheet }, { sheet, layers: ["ways", "sight"] }, { pixelWidth: 358 }, { pixelWidth: 720 }, { pixelWidth: 1100, ways: true, dimensions: true }] satisfies readonly PlanOptions[]);
  return { venue, plan, options };
}

describe("words on any plan", () => {
  const seeds = Array.from({ length: Number(process.env["PLANS"] ?? 60) }, (_, i) => i + 1);
  it("keep off one another, off walls and every edge of a piece, and on the paper", () => {
    for (const seed of seeds) {
      const { venue, plan, options } = caseOf(seed);
      const d = composePlan(venue, plan, "meal", options);
      expect(faultsOf(d, plan.scenes[0]?.items ?? []), `seed ${seed}`).toEqual([]);
    }
  }, 300_000);
  it("bear every table's number, whatever the scale", () => {
    for (const seed of seeds.slice(0, 20)) {
      const { venue, plan, options } = caseOf(seed);
      const d = composePlan(venue, plan, "meal", options);
      if (d.perMetre < 1000 / 250) continue;
      const seen = new Set(texts(d).map((t) => t.text));
      const drawn = new Set(flat(d.marks).flatMap((m) => (m.kind === "group" && m.role === "piece" && m.id ? [m.id.slice(6)] : [])));
      for (const i of plan.scenes[0]?.items ?? []) if (i.role === "dining" && drawn.has(i.id)) expect(seen.has(i.label.replace("Table ", "")), `${i.label}, seed ${seed}`).toBe(true);
    }
  });
});
