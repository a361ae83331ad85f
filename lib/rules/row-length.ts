import { add, scale, turn, type Point } from "../geometry";
import type { Item } from "../layout";
import { placed, type Context, type Raw, type SceneView } from "./context";
import { rowClearInches } from "./formulas";
import { waysFor } from "./maps";
import { runsOf, type WalkMap } from "./ways";

/** How far beyond the half width of the path its middle may lie from the end of a row, mm. */
const BESIDE = 60;

/** Longer rows need more floor ahead of them: IBC 2018 1029.13.2.1 and .2, by the number of chairs and of open ends. */
export function rowLength(v: SceneView, c: Context): readonly Raw[] {
  const runs = runsOf(v.scene.items).filter((r) => r.length > 7);
  if (runs.length === 0) return [];
  const map = waysFor(v, c);
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

function openEnds(v: SceneView, map: WalkMap, run: readonly Item[]): number {
  const level = v.site.rooms.get(run[0]?.room ?? "")?.room.level ?? 0;
  const end = (i: Item | undefined, side: 1 | -1): boolean => {
    if (!i || "diameter" in i.shape) return false;
    const out = scale(turn([1, 0], i.angle), side);
    const at: Point = add(i.at, scale(out, i.shape.width / 2 + map.options.width / 2 + BESIDE / 2));
    return map.reaches(at, BESIDE, level).some((p) => p.exits.length > 0);
  };
  return Number(end(run[0], -1)) + Number(end(run.at(-1), 1));
}

/** Least clear floor ahead of the chairs of a run to pieces and chairs in front, mm; no more than is asked about. */
function clearAhead(v: SceneView, run: readonly Item[], limit: number): number {
  let clear = limit;
  const own = new Set(run);
  for (const i of run) {
    if ("diameter" in i.shape) continue;
    const half = i.shape.width / 2 - 1, front = i.shape.depth / 2;
    for (const p of v.parts) {
      if (own.has(p.item) || p.item.kind === "dance-floor" || p.item.room !== i.room) continue;
      const b = p.shape.box;
      if (Math.hypot((b.minX + b.maxX) / 2 - i.at[0], (b.minY + b.maxY) / 2 - i.at[1]) > limit + front + Math.hypot(b.maxX - b.minX, b.maxY - b.minY)) continue;
      const corners: readonly Point[] = p.shape.kind === "disc" ? [[p.shape.at[0], p.shape.at[1]]] : p.shape.points;
      const r = p.shape.kind === "disc" ? p.shape.radius : 0;
      const local = corners.map((q) => turn([q[0] - i.at[0], q[1] - i.at[1]], -i.angle));
      if (Math.max(...local.map((q) => q[0])) + r <= -half || Math.min(...local.map((q) => q[0])) - r >= half) continue;
      const near = Math.min(...local.map((q) => q[1])) - r;
      if (near > 0 && near - front < clear) clear = Math.max(0, near - front);
    }
  }
  return clear;
}
