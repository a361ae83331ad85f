import { edges, sinCos, type Point, type Shape } from "../geometry";
import type { Item } from "../layout";
import type { SceneView } from "./context";
import { wallsNear } from "./facing";
import { near } from "./near";
import { isRowChair, isWheelchairSpace } from "./ways";

/** A frame in which a chair looks along y, or to a side of its row. */
type Frame = { readonly at: Point; readonly sin: number; readonly cos: number };

/** What a shape covers, as a piece that stands at a point and is turned so sees it. */
export function spanFrom(shape: Shape, { at, sin, cos }: Frame): { readonly minX: number; readonly maxX: number; readonly minY: number } {
  let minX = Infinity, maxX = -Infinity, minY = Infinity;
  const r = shape.kind === "disc" ? shape.radius : 0;
  for (const q of shape.kind === "disc" ? [shape.at] : shape.points) {
    const [x, y] = seen(q, { at, sin, cos });
    minX = Math.min(minX, x - r); maxX = Math.max(maxX, x + r); minY = Math.min(minY, y - r);
  }
  return { minX, maxX, minY };
}
function seen(q: Point, { at, sin, cos }: Frame): Point {
  const dx = q[0] - at[0], dy = q[1] - at[1];
  return [dx * cos + dy * sin, dy * cos - dx * sin];
}

/** How near a line comes within a strip about y, from 0 on; Infinity where it does not. */
function nearest(a: Point, b: Point, half: number): number {
  const from = Math.max(-half, Math.min(a[0], b[0])), to = Math.min(half, Math.max(a[0], b[0]));
  if (from > to) return Infinity;
  const at = (x: number): number => (a[0] === b[0] ? Math.min(a[1], b[1]) : a[1] + ((x - a[0]) / (b[0] - a[0])) * (b[1] - a[1]));
  const y = Math.min(at(from), at(to));
  return Math.max(at(from), at(to)) > 0 ? Math.max(0, y) : Infinity;
}

/**
 * The floor beside a chair at the end of a row, mm, to a wall, a pier or a piece; no more than is asked about. Infinity where another row or
 * a wheelchair's space begins there: that is an aisle between rows. `side`: 1 along the chair's own x, -1 against it.
 */
export function laneBeside(v: SceneView, chair: Item, { side, most }: { readonly side: 1 | -1; readonly most: number }): number {
  if ("diameter" in chair.shape) return most;
  const { sin, cos } = sinCos(chair.angle - side * 90), frame: Frame = { at: chair.at, sin, cos };
  const half = chair.shape.depth / 2 - 1, edge = chair.shape.width / 2, far = Math.hypot(half, edge + most);
  const box = { minX: chair.at[0] - far, minY: chair.at[1] - far, maxX: chair.at[0] + far, maxY: chair.at[1] + far };
  let lane = most, row = false;
  for (const p of near(v, box)) {
    if (p.item === chair || p.item.kind === "dance-floor" || p.item.room !== chair.room) continue;
    const s = spanFrom(p.shape, frame);
    if (s.maxX <= -half || s.minX >= half || s.minY <= 0 || s.minY - edge >= lane) continue;
    lane = Math.max(0, s.minY - edge);
    row = isRowChair(p.item) || isWheelchairSpace(p.item);
  }
  const room = v.site.rooms.get(chair.room);
  const sides = [...(room ? wallsNear(room, box, 0) : []), ...(room?.room.obstacles ?? []).flatMap((o) => [...edges(o.outline)])];
  for (const [a, b] of sides) {
    const y = nearest(seen(a, frame), seen(b, frame), half) - edge;
    if (y < lane) { lane = Math.max(0, y); row = false; }
  }
  return row ? Infinity : lane;
}
