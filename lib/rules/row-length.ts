import { add, dot, scale, sinCos, sub, turn, type Point } from "../geometry";
import type { Item, Scene } from "../layout";
import { levelOf } from "../venue";
import { placed, type Context, type Raw, type SceneView } from "./context";
import { rowClearInches } from "./formulas";
import { laneBeside, spanFrom } from "./lane";
import { onWays } from "./maps";
import { near } from "./near";
import { isWheelchairSpace, runsOf, type FloorMap } from "./ways";

type Run = readonly Item[];

/** How far beyond the half width of the path its middle may lie from the end of a row, mm. */
const BESIDE = 60;
/** An aisle with seats on one side: 36 in, and 30 in where it serves fewer than 15 places, mm. */
const WIDE = 914, NARROW = 762, FEW = 15;

/** Longer rows need more floor ahead of them: IBC 2018 1029.13.2.1 and .2, by the number of chairs and of open ends. */
export function rowLength(v: SceneView, c: Context): readonly Raw[] {
  const runs = runsOf(v.scene.items).filter((r) => r.length > 7);
  return runs.length === 0 ? [] : onWays(v, c, (map) => runsBy(v, c, map, runs));
}

function runsBy(v: SceneView, c: Context, map: FloorMap, runs: readonly Run[]): readonly Raw[] {
  return runs.flatMap((run): readonly Raw[] => {
    const first = run[0];
    if (!first) return [];
    const ends = openEnds(v, map, run) === 2 ? 2 : 1;
    const inches = rowClearInches(run.length, ends);
    const base = { level: "must" as const, source: ends === 2 ? "IBC 2018 1029.13.2.1" : "IBC 2018 1029.13.2.2", scene: v.scene.id, items: run.map((i) => i.id), at: placed(first.at) };
    if (inches === null) return [{ ...base, code: "row-long", measured: run.length, limit: 100, unit: "chairs", data: { chairs: run.length, limit: 100 } }];
    const limit = Math.round(inches * 25.4);
    const clear = clearAhead(v, run, limit);
    if (limit <= c.values.rowClear || clear >= limit - 1) return [];
    return [{ ...base, code: "row-narrow", measured: Math.round(clear), limit, unit: "mm", data: { chairs: run.length, ends, clear: Math.round(clear), limit } }];
  });
}

/** Ends of rows that lie no farther apart across than this open on one lane, mm. */
const ONE = 500;
const runs = new WeakMap<Scene["items"], readonly Run[]>();
/** Places that a lane at one end of the rows serves: half of each run that ends there. */
function servedAt(v: SceneView, chair: Item, side: 1 | -1): number {
  const all = runs.get(v.scene.items) ?? runsOf(v.scene.items), across = turn([1, 0], chair.angle);
  runs.set(v.scene.items, all);
  return all.reduce((n, r) => { const end = side === 1 ? r.at(-1) : r[0]; return n + (end && end.room === chair.room && Math.abs(dot(sub(end.at, chair.at), across)) <= ONE ? r.length / 2 : 0); }, 0);
}

/**
 * How many ends of a run open on floor from which a way out can be reached. Beside a wall or a piece that floor is an aisle with seats on
 * one side: 36 in wide, 30 in where it serves under 15 places and no wheelchair (IBC 2018 1029.9.1(5)); a narrower lane is no way out of a row.
 */
export function openEnds(v: SceneView, map: FloorMap, run: Run): number {
  const level = levelOf(v.site, run[0]?.room ?? "");
  const end = (i: Item | undefined, side: 1 | -1): boolean => {
    if (!i || "diameter" in i.shape) return false;
    const out = scale(turn([1, 0], i.angle), side);
    const at: Point = add(i.at, scale(out, i.shape.width / 2 + map.options.width / 2 + BESIDE / 2));
    if (!map.reaches(at, BESIDE, level).some((p) => p.exits.length > 0)) return false;
    const lane = laneBeside(v, i, { side, most: WIDE });
    return lane >= WIDE - 1 || (lane >= NARROW - 1 && servedAt(v, i, side) < FEW && !v.scene.items.some(isWheelchairSpace));
  };
  return Number(end(run[0], -1)) + Number(end(run.at(-1), 1));
}

/** Least clear floor ahead of the chairs of a run to pieces and chairs in front, mm; no more than is asked about. */
function clearAhead(v: SceneView, run: Run, limit: number): number {
  let clear = limit;
  const own = new Set(run);
  for (const i of run) {
    if ("diameter" in i.shape) continue;
    const half = i.shape.width / 2 - 1, front = i.shape.depth / 2, far = Math.hypot(half, front + limit);
    const frame = { at: i.at, ...sinCos(i.angle) };
    const box = { minX: i.at[0] - far, minY: i.at[1] - far, maxX: i.at[0] + far, maxY: i.at[1] + far };
    for (const p of near(v, box)) {
      if (own.has(p.item) || p.item.kind === "dance-floor" || p.item.room !== i.room) continue;
      const s = spanFrom(p.shape, frame);
      if (s.maxX > -half && s.minX < half && s.minY > 0 && s.minY - front < clear) clear = Math.max(0, s.minY - front);
    }
  }
  return clear;
}
