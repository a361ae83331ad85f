import { add, edges, polygonShape, scale, segmentClearance, segmentDistance, type Segment } from "../geometry";
import { placed, type Context, type Raw, type SceneView } from "./context";
import { beforeRows } from "./sight";
import { blockOf } from "./rows";

/**
 * Floor between the first row and the wall it looks at, for the couple and the officials: 6 ft (common practice, no source); 3 m by
 * the guide for marriage rooms of Warwickshire's fire authority. Measured on the middle of the rows.
 */
export function frontStrip(v: SceneView, c: Context): readonly Raw[] {
  if (v.scene.id !== "ceremony") return [];
  const block = blockOf(v.scene.items), from = beforeRows(v.scene.items, 0);
  const room = block?.seats[0] ? v.site.rooms.get(block.seats[0].room) : undefined;
  if (!block || !from || !room) return [];
  const limit = c.values.frontDepth;
  const walls: readonly Segment[] = room.floor.flatMap((p) => [p.outer, ...p.holes].flatMap((r) => [...edges(r)]));
  const meets = (depth: number): boolean => {
    const line: Segment = [from, add(from, scale(block.look, depth))];
    return walls.some((w) => segmentDistance(w, line) === 0) || room.room.obstacles.some((o) => segmentClearance(polygonShape(o.outline), line) <= 0);
  };
  if (!meets(limit - 1)) return [];
  const depth = nearest(meets, limit);
  return [{
    code: "front-strip", level: "should", source: c.values.source.front, scene: v.scene.id, items: [], at: placed(from), measured: depth, limit, unit: "mm", data: { depth, limit },
  }];
}

/** The depth in whole mm at which the first wall is met. */
function nearest(meets: (depth: number) => boolean, limit: number): number {
  let lo = 0, hi = limit;
  while (hi - lo > 1) { const m = Math.floor((lo + hi) / 2); if (meets(m)) hi = m; else lo = m; }
  return hi;
}
