import type { Box } from "../geometry";
import type { Part, SceneView } from "./context";

/** Side of a cell, mm: about a table with its chairs. */
const CELL = 1500;

type Cells = { readonly of: ReadonlyMap<number, readonly number[]>; readonly seen: Uint32Array; turn: number };
const kept = new WeakMap<SceneView, Cells>();
/** One number a cell: the plan reaches 1,000 m either way, so a column of cells has fewer than 4,096 of them. */
const key = (x: number, y: number): number => x * 4096 + y;
const cellOf = (mm: number): number => Math.floor(mm / CELL);

function cellsOf(v: SceneView): Cells {
  const of = new Map<number, number[]>();
  v.parts.forEach(({ shape: { box } }, i) => {
    for (let x = cellOf(box.minX); x <= cellOf(box.maxX); x++) for (let y = cellOf(box.minY); y <= cellOf(box.maxY); y++) {
      const list = of.get(key(x, y));
      if (list) list.push(i); else of.set(key(x, y), [i]);
    }
  });
  const cells: Cells = { of, seen: new Uint32Array(v.parts.length), turn: 0 };
  kept.set(v, cells);
  return cells;
}

/** The bodies whose boxes meet a box, in their own order: looked up by cells of floor instead of gone through one by one. */
export function near(v: SceneView, box: Box): readonly Part[] {
  const cells = kept.get(v) ?? cellsOf(v);
  const found: number[] = [];
  const turn = ++cells.turn;
  for (let x = cellOf(box.minX); x <= cellOf(box.maxX); x++) for (let y = cellOf(box.minY); y <= cellOf(box.maxY); y++) {
    for (const i of cells.of.get(key(x, y)) ?? []) {
      if (cells.seen[i] === turn) continue;
      cells.seen[i] = turn;
      const b = v.parts[i]?.shape.box;
      if (b && b.minX <= box.maxX && b.maxX >= box.minX && b.minY <= box.maxY && b.maxY >= box.minY) found.push(i);
    }
  }
  return found.sort((a, b) => a - b).flatMap((i) => v.parts[i] ?? []);
}
