import { add, scale, sinCos, turn, type Point, type Shape } from "../geometry";
import type { Item } from "../layout";
import { levelOf } from "../venue";
import { placed, type Context, type Raw, type SceneView } from "./context";
import { rowClearInches } from "./formulas";
import { onWays } from "./maps";
import { near } from "./near";
import { runsOf, type FloorMap } from "./ways";

type Run = readonly Item[];

/** How far beyond the half width of the path its middle may lie from the end of a row, mm. */
const BESIDE = 60;

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

/** How many ends of a run open on floor from which a way out can be reached. */
export function openEnds(v: SceneView, map: FloorMap, run: Run): number {
  const level = levelOf(v.site, run[0]?.room ?? "");
  const end = (i: Item | undefined, side: 1 | -1): boolean => {
    if (!i || "diameter" in i.shape) return false;
    const out = scale(turn([1, 0], i.angle), side);
    const at: Point = add(i.at, scale(out, i.shape.width / 2 + map.options.width / 2 + BESIDE / 2));
    return map.reaches(at, BESIDE, level).some((p) => p.exits.length > 0);
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
    const { sin, cos } = sinCos(i.angle);
    const box = { minX: i.at[0] - far, minY: i.at[1] - far, maxX: i.at[0] + far, maxY: i.at[1] + far };
    for (const p of near(v, box)) {
      if (own.has(p.item) || p.item.kind === "dance-floor" || p.item.room !== i.room) continue;
      const s = spanFrom(p.shape, i.at, { sin, cos });
      if (s.maxX > -half && s.minX < half && s.minY > 0 && s.minY - front < clear) clear = Math.max(0, s.minY - front);
    }
  }
  return clear;
}

/** What a shape covers, as a piece that stands at a point and is turned so sees it. */
function spanFrom(shape: Shape, at: Point, { sin, cos }: { readonly sin: number; readonly cos: number }): { readonly minX: number; readonly maxX: number; readonly minY: number } {
  let minX = Infinity, maxX = -Infinity, minY = Infinity;
  const r = shape.kind === "disc" ? shape.radius : 0;
  for (const q of shape.kind === "disc" ? [shape.at] : shape.points) {
    const dx = q[0] - at[0], dy = q[1] - at[1];
    const x = dx * cos + dy * sin, y = dy * cos - dx * sin;
    minX = Math.min(minX, x - r); maxX = Math.max(maxX, x + r); minY = Math.min(minY, y - r);
  }
  return { minX, maxX, minY };
}
