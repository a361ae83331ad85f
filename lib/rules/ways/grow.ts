import { add, aroundCircle, inflateAll, sinCos, turn, type Point, type Polygon, type Region } from "../../geometry";
import { isRound, type Item } from "../../layout";

/** Sagitta allowed on an arc, mm: half of it falls outside the true arc, half inside, far within the 0.5 mm let go of a width. */
const SAGITTA = 0.2;

const stepsFor = (radius: number): number => Math.max(4, Math.ceil(Math.PI / Math.sqrt((2 * SAGITTA) / Math.max(radius, 1)) / 4) * 4);

/** A disc as a polygon whose corners lie just outside the circle and whose sides run just inside it. */
function discPolygon(at: Point, radius: number): Polygon {
  const sides = Math.max(16, stepsFor(radius));
  return aroundCircle(at, radius * (1 + sinCos(180 / sides).cos) / 2, sides);
}

const grown = new WeakMap<Item, Map<number, Polygon>>();

/** The exact footprint of an item grown by a disc of radius `by` (mm): corners become arcs. Kept with the item. */
export function grownFootprint(item: Item, by: number): Polygon {
  const of = grown.get(item) ?? new Map<number, Polygon>(), known = of.get(by) ?? grow(item, by);
  grown.set(item, of);
  of.set(by, known);
  return known;
}

function grow(item: Item, by: number): Polygon {
  if (isRound(item.shape)) return discPolygon(item.at, item.shape.diameter / 2 + by);
  const w = item.shape.width / 2, d = item.shape.depth / 2;
  const corners = [[w, d], [-w, d], [-w, -d], [w, -d]] as const;
  if (by <= 0) return corners.map((c) => add(item.at, turn(c, item.angle)));
  const perCorner = stepsFor(by) / 4;
  const r = by * (1 + SAGITTA / 2 / by);
  const out: Point[] = [];
  corners.forEach((c, i) => {
    for (let k = 0; k <= perCorner; k++) {
      const a = (i + k / perCorner) * 90;
      // The ends of an arc lie on the straight sides and must be exact.
      const reach = k === 0 || k === perCorner ? by : r;
      out.push(add(item.at, turn(add(c, turn([reach, 0], a)), item.angle)));
    }
  });
  return out;
}

/** Corners of a coarse outline: round pieces, and each corner of a square one. */
const ROUND = 32, CORNER = 2;
const CORNER_OUT = 1 / sinCos(45 / CORNER).cos;

/** A footprint grown by a disc as a polygon of few corners drawn about it: never smaller than the exact one, so floor left free by it is free. */
export function grownCoarsely(item: Item, by: number): Polygon {
  if (isRound(item.shape)) return aroundCircle(item.at, item.shape.diameter / 2 + by, ROUND);
  const w = item.shape.width / 2, d = item.shape.depth / 2;
  const out: Point[] = [];
  ([[w, d], [-w, d], [-w, -d], [w, -d]] as const).forEach((c, i) => {
    for (let k = 0; k < CORNER; k++) out.push(add(item.at, turn(add(c, turn([by * CORNER_OUT, 0], (i + (k + 0.5) / CORNER) * 90)), item.angle)));
  });
  return out;
}

/** Polygons (columns and the like) grown by a disc. */
export const grownPolygons = (list: readonly Polygon[], by: number): Region => inflateAll(list.map((polygon) => ({ polygon, by })));
