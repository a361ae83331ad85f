import { boxOf, middle, type Box, type Point } from "../geometry";
import type { Item } from "../layout";
import { levelOf } from "../venue";
import { placed, type Context, type Raw, type SceneView } from "./context";
import { crosses, stretchesOn, type Stretch } from "./stretches";
import { isSeatedTable, isSolid, outward, quickWays, straightWalk, type FloorMap, type Outward } from "./ways";

/**
 * Every stretch of floor between pieces, and between a piece and a wall, against the people whose shortest ways out run through it: 0.2 in of
 * width a person (IBC 2018 1005.3.2). Nobody is bound to walk the shortest way, so it is a should; doors are judged by `drain`, where
 * people are sent through them as evenly as they can be, and aisles between rows of chairs by `aisles`. The worst is told.
 */
export function carried(v: SceneView, c: Context): readonly Raw[] {
  if (!v.scene.items.some(isSeatedTable)) return [];
  const seats = v.scene.items.reduce((n, i) => n + i.seats.length, 0), share = seats === 0 ? 0 : Math.min(1, v.people / seats);
  const levels = [...new Set(v.scene.items.filter((i) => i.seats.length > 0).map((i) => levelOf(v.site, i.room)))].sort((a, b) => a - b);
  const short = levels.flatMap((level): readonly Short[] => {
    const here = v.scene.items.filter((i) => levelOf(v.site, i.room) === level).reduce((n, i) => n + i.seats.length, 0) * share;
    // What carries everyone carries any part of them.
    const under = here * c.values.exitWidth - 1;
    return under <= c.values.path ? [] : shortOn(v, c, { level, under, share });
  });
  const worst = [...short].sort((a, b) => (b.limit - b.width) - (a.limit - a.width))[0];
  return worst ? [{
    code: "stretch", level: "should", source: "IBC 2018 1005.3.2, by the shortest ways out", scene: v.scene.id, items: worst.items, at: placed(middle(...worst.across)),
    measured: Math.floor(worst.width), limit: worst.limit, unit: "mm",
    data: { a: worst.items[0] ?? "", ...(worst.items[1] ? { b: worst.items[1] } : {}), width: Math.floor(worst.width), limit: worst.limit, people: worst.people },
  }] : [];
}

type Asked = { readonly level: number; readonly under: number; readonly share: number };
type Answer = Asked & { readonly items: readonly Item[]; readonly found: readonly Short[] };
const known = new WeakMap<FloorMap, Answer[]>();
/** Answers kept for a map. */
const KEPT = 3;

/** Stretches of a level that carry too many; kept with the map, which may serve several parts of the day alike. */
function shortOn(v: SceneView, c: Context, asked: Asked): readonly Short[] {
  const map = quickWays(v.site, v.scene, c.values), of = known.get(map) ?? [], items = v.scene.items.filter((i) => isSolid(i) || i.seats.length > 0);
  known.set(map, of);
  const before = of.find((k) => k.level === asked.level && k.under === asked.under && k.share === asked.share && k.items.length === items.length && k.items.every((i, n) => i === items[n]));
  if (before) return before.found;
  const found = shortBy(v, c, map, asked);
  if (of.length >= KEPT) of.shift();
  of.push({ ...asked, items, found });
  return found;
}

function shortBy(v: SceneView, c: Context, map: FloorMap, { level, under, share }: Asked): readonly Short[] {
  const out = outward(v.site, map, level);
  if (!out) return [];
  const loads = loadsOn(v, map, { out, level, share });
  // Of cells that a stretch is wide, one carries no fewer than these where all together carry too many.
  const few = c.values.path / c.values.exitWidth / ACROSS;
  return stretchesOn(v, c, { level, under, busy: busyOn(out, loads, few) }).flatMap((s): readonly Short[] => {
    const people = Math.round(through(out, loads, s)), limit = Math.ceil(people * c.values.exitWidth);
    return s.width < limit - 1 ? [{ ...s, people, limit }] : [];
  });
}

/** Cells that the narrowest stretch is wide, at the most. */
const ACROSS = 5;

type Short = Stretch & { readonly people: number; readonly limit: number };

/** People whose shortest way out runs over each cell. */
function loadsOn(v: SceneView, map: FloorMap, { out, level, share }: { readonly out: Outward; readonly level: number; readonly share: number }): Float64Array {
  const loads = new Float64Array(out.next.length), straight = straightWalk(v.site, v.scene, map);
  for (const item of v.scene.items) {
    if (levelOf(v.site, item.room) !== level) continue;
    for (const s of item.seats) {
      const at: Point = [s.x, s.y], k = out.from(at, (to) => straight(item, at, to));
      if (k >= 0) loads[k] = (loads[k] ?? 0) + share;
    }
  }
  for (let n = out.order.length - 1; n >= 0; n--) {
    const k = out.order[n] ?? 0, to = out.next[k] ?? -1;
    if (to >= 0) loads[to] = (loads[to] ?? 0) + (loads[k] ?? 0);
  }
  return loads;
}

/** Side of a block of cells that is looked at as one, in cells. */
const BLOCK = 8;

/** Whether some cell in a box carries so many people; by blocks, so it may say yes of a cell beside. */
function busyOn({ grid: { x0, y0, cell, across, down } }: Outward, loads: Float64Array, few: number): (box: Box) => boolean {
  const wide = Math.ceil(across / BLOCK), high = Math.ceil(down / BLOCK), blocks = new Uint8Array(wide * high);
  for (let y = 0, k = 0; y < down; y++) for (let x = 0; x < across; x++, k++) if ((loads[k] ?? 0) >= few) blocks[Math.floor(y / BLOCK) * wide + Math.floor(x / BLOCK)] = 1;
  const at = (mm: number, from: number, most: number): number => Math.max(0, Math.min(most - 1, Math.floor((mm - from) / cell / BLOCK)));
  return (b) => {
    for (let y = at(b.minY, y0, high); y <= at(b.maxY, y0, high); y++) for (let x = at(b.minX, x0, wide); x <= at(b.maxX, x0, wide); x++) if (blocks[y * wide + x] === 1) return true;
    return false;
  };
}

/** People whose ways cross a stretch. */
function through({ grid: { x0, y0, cell, across, down }, next }: Outward, loads: Float64Array, s: Stretch): number {
  const b = boxOf(s.across), spot = (k: number): Point => [x0 + ((k % across) + 0.5) * cell, y0 + (Math.floor(k / across) + 0.5) * cell];
  let people = 0;
  for (let y = Math.max(0, Math.floor((b.minY - y0) / cell) - 1); y <= Math.min(down - 1, Math.floor((b.maxY - y0) / cell) + 1); y++) {
    for (let x = Math.max(0, Math.floor((b.minX - x0) / cell) - 1); x <= Math.min(across - 1, Math.floor((b.maxX - x0) / cell) + 1); x++) {
      const k = y * across + x, to = next[k] ?? -1, load = loads[k] ?? 0;
      if (load > 0 && to >= 0 && crosses([spot(k), spot(to)], s)) people += load;
    }
  }
  return people;
}
