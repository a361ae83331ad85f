import { add, dot, edges, scale, segmentClearance, segmentDistance, polygonShape, type Point } from "../geometry";
import { footprint, type Item } from "../layout";
import { placed, type Context, type Raw, type SceneView } from "./context";
import { blockOf } from "./rows";
import { isRowChair } from "./ways";

/** Obstacles and pieces from this height on hide what is behind them, mm (contract of the venue's file). */
const HIDES = 1500;

/** The point 900 mm before the first row, on the middle of its chairs. */
export function beforeRows(items: readonly Item[], before: number): Point | null {
  const block = blockOf(items);
  if (!block) return null;
  const chairs = items.filter(isRowChair);
  const first = chairs.filter((i) => dot(i.at, block.look) > block.to - 600);
  const all = (first.length > 0 ? first : chairs).map((i) => dot(i.at, block.side));
  const across = (Math.min(...all) + Math.max(...all)) / 2;
  return add(scale(block.look, block.to + before), scale(block.side, across));
}

/** True when nothing high stands between two points of a level: walls, obstacles to the ceiling or over 1500 mm, screens. */
export function sees(v: SceneView, a: { readonly at: Point; readonly item: Item }, b: Point): boolean {
  const line = [a.at, b] as const;
  const home = v.site.rooms.get(a.item.room);
  if (!home) return false;
  const level = home.room.level;
  const here = [...v.site.rooms.values()].filter((r) => r.room.level === level);
  for (const r of here) for (const o of r.room.obstacles) {
    if ((o.height ?? Infinity) >= HIDES && segmentClearance(polygonShape(o.outline), line) === 0) return false;
  }
  for (const i of v.scene.items) {
    if (i !== a.item && (i.kind === "screen" || i.kind === "backdrop") && segmentClearance(footprint(i), line) === 0) return false;
  }
  return !here.some((r) => r.floor.some((p) => [p.outer, ...p.holes].some((ring) => edges(ring).some((e) =>
    segmentDistance(e, line) === 0 && !r.gates.some((g) => segmentDistance([g.from, g.to], line) < 1)))));
}

/** The DJ or band that plays the ceremony sees to 900 mm before the first row. */
export function musicSight(v: SceneView, c: Context): readonly Raw[] {
  const music = c.brief?.music;
  if (!music?.atCeremony || v.scene.id !== "ceremony" || (music.by !== "dj" && music.by !== "band")) return [];
  const base = { level: "should" as const, source: "common practice, no source", scene: v.scene.id };
  const players = v.scene.items.filter((i) => i.kind === music.by);
  const to = beforeRows(v.scene.items, c.values.sightBefore);
  if (players.length === 0) return [{ ...base, code: "music-absent", items: [], data: { by: music.by } }];
  if (!to || players.some((i) => sees(v, { at: i.at, item: i }, to))) return [];
  const first = players[0];
  return first ? [{ ...base, code: "music-sight", items: [first.id], at: placed(first.at), data: { by: music.by, a: first.id, before: c.values.sightBefore } }] : [];
}
