import { composePlan, toSvg, type Drawing } from "../../lib/drawing";
import type { Item, Layout } from "../../lib/layout";
import { layout, piece, round, scene } from "../unit/drawing/kit";
import { mill, millMeal } from "../unit/drawing/mill";
import type { Venue } from "../../lib/venue";

/** The least of several runs, in milliseconds: what the work takes when nothing else asks for the machine. The first runs warm it up. */
function least(run: () => unknown, runs = 25): number {
  for (let i = 0; i < 5; i++) run();
  const taken = Array.from({ length: runs }, () => { const from = performance.now(); run(); return performance.now() - from; });
  return Math.min(...taken);
}

/** A hall of rounds, each with its places: as many pieces as asked, chairs counted. */
function hallOf(pieces: number): readonly [Venue, Layout] {
  const [first] = mill.rooms;
  if (!first) throw new Error("the mill has rooms");
  const tables = Math.round(pieces / 9), across = Math.ceil(Math.sqrt(tables * 1.5));
  const width = across * 3400 + 2000, depth = Math.ceil(tables / across) * 3400 + 2000;
  const hall: Venue = { ...mill, drapes: [], rooms: [{ ...first, outline: [[0, 0], [width, 0], [width, depth], [0, depth]], doors: [], obstacles: [], windows: [], sockets: [], walls: [], standing: [] }] };
  const items: readonly Item[] = Array.from({ length: tables }, (_, i) => round(`t${i + 1}`, i + 1, [2700 + (i % across) * 3400, 2700 + Math.floor(i / across) * 3400], { room: first.id, diameter: 1680, stock: "round", places: 8 }));
  return [hall, layout("A", [scene("meal", "Meal", [first.id], items)])];
}

/** 400 pieces that are all of their own: every one is a group with a name. */
function crowd(): readonly [Venue, Layout] {
  const [hall] = hallOf(400);
  const items = Array.from({ length: 400 }, (_, i) => piece({ id: `p${i}`, kind: i % 3 === 0 ? "lounge" : "table", room: "grain-floor", label: `Piece ${i}`, at: [1200 + (i % 25) * 1000, 1200 + Math.floor(i / 25) * 1000], shape: { width: 700, depth: 500 }, angle: (i * 7) % 90 }));
  return [hall, layout("A", [scene("meal", "Meal", ["grain-floor"], items)])];
}

const a4 = { width: 297, height: 210, legend: true, frame: true, titleBlock: { couple: "Ines Calloway and Theo Brandt", scene: "Meal" } };

/** What drawing costs: the aim is 30 ms from a display list of 400 pieces to SVG. */
export function drawingBench(): readonly { readonly name: string; readonly ms: number; readonly aim?: number }[] {
  const out: { readonly name: string; readonly ms: number; readonly aim?: number }[] = [];
  const cases: readonly (readonly [string, readonly [Venue, Layout]])[] = [["400 tables and chairs", hallOf(400)], ["400 pieces by themselves", crowd()], ["the mill's meal", [mill, millMeal()]]];
  for (const [name, [v, l]] of cases) for (const [where, options] of [["A4", { sheet: a4 }], ["a page", { pixelWidth: 900 }]] as const) {
    const drawing: Drawing = composePlan(v, l, "meal", options);
    out.push({ name: `${name}, ${where}: display list`, ms: least(() => composePlan(v, l, "meal", options)) });
    out.push({ name: `${name}, ${where}: SVG`, ms: least(() => toSvg(drawing, { theme: "css" })), aim: 30 });
  }
  return out;
}
