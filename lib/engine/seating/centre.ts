import { area, boxOf, intersect, type Box, type Point } from "../../geometry";
import type { Field } from "./field";
import { boxAt, type Hall } from "./hall";
import { groupsIn, standingOf } from "./items";
import { groupOf, straight } from "./line-up";
import type { Laid } from "./types";

/** A block this little off is in the middle, mm; parts of the way that are tried; a piece of less floor is a column, sq mm; farther than any wall, mm. */
const NEARLY = 300, PARTS = 12, COLUMN = 5e5, FAR = 100_000;

/**
 * A block of tables moved as a whole, where nobody's table says which way it looks, until the free floor is alike on both sides of it, or
 * as far as walls and pieces let it. Pre: all stand where they may. Post: so they do, as they stood to one another.
 */
export function centred(hall: Hall, laid: readonly Laid[]): readonly Laid[] {
  if (hall.focus || laid.length === 0) return laid;
  const all = groupsIn(laid), fields = new Map<string, Field>();
  const groups = all.every(straight) ? all.flatMap((tables) => groupOf(hall, tables, fields) ?? []) : [];
  if (groups.length < all.length) return laid;
  let by: Point = [0, 0];
  for (const k of [0, 1] as const) {
    const box = boxOf(laid.flatMap((l) => standingOf(l).polygon)), block: Box = { minX: box.minX + by[0], maxX: box.maxX + by[0], minY: box.minY + by[1], maxY: box.maxY + by[1] };
    const want = (beside(hall, block, k, 1) - beside(hall, block, k, -1)) / 2;
    if (Math.abs(want) < NEARLY) continue;
    const steps = Array.from({ length: PARTS }, (_, i) => Math.round((want * (PARTS - i)) / PARTS)).map((d): Point => (k === 0 ? [by[0] + d, by[1]] : [by[0], by[1] + d]));
    by = steps.find(([x, y]) => groups.every((g) => g.field.holds([g.at[0] + x, g.at[1] + y]))) ?? by;
  }
  return by[0] === 0 && by[1] === 0 ? laid : laid.map((l) => ({ ...l, at: [l.at[0] + by[0], l.at[1] + by[1]] }));
}

/** How deep the floor is free beside a block, as broad as it is: to the wall, or to the first piece that is no column. */
function beside(hall: Hall, block: Box, k: 0 | 1, to: -1 | 1): number {
  const [low, high] = k === 0 ? [block.minX, block.maxX] : [block.minY, block.maxY], edge = to > 0 ? high : low;
  const middle: Point = k === 0 ? [edge + (to * FAR) / 2, (block.minY + block.maxY) / 2] : [(block.minX + block.maxX) / 2, edge + (to * FAR) / 2];
  const strip = k === 0 ? boxAt(middle, FAR, block.maxY - block.minY) : boxAt(middle, block.maxX - block.minX, FAR);
  const reach = (b: Box): readonly [number, number] => (k === 0 ? [to > 0 ? b.minX - edge : edge - b.maxX, to > 0 ? b.maxX - edge : edge - b.minX] : [to > 0 ? b.minY - edge : edge - b.maxY, to > 0 ? b.maxY - edge : edge - b.minY]);
  const floor = intersect(hall.floor, [strip]).map((p) => reach(p.box)).filter(([from]) => from < NEARLY).map(([, end]) => end);
  const pieces = [...hall.solids.filter((s) => area(s) > COLUMN), ...hall.zones.filter((z) => z.tableClear > 0).map((z) => z.polygon)];
  const first = intersect([{ outer: strip, holes: [], box: boxOf(strip) }], pieces).map((p) => Math.max(0, reach(p.box)[0]));
  return Math.max(0, Math.min(Math.max(0, ...floor), ...first));
}
