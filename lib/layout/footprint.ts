import { aroundCircle, disc, polygonShape, rectangle, type Point, type Polygon, type Shape } from "../geometry";
import type { Item, ItemShape, Seat } from "./types";

/** Clear floor of a wheelchair place, mm: 2010 ADA Standards 305.3 (30 x 48 in, the document's own 760 x 1220). */
export const WHEELCHAIR_FLOOR = { width: 760, depth: 1220 } as const;
/** Chair taken where the stock names none, mm: research 3c, 3d (rental trade, second-hand). */
export const CHAIR = { width: 450, depth: 500 } as const;

export const isRound = (s: ItemShape): s is Extract<ItemShape, { diameter: number }> => "diameter" in s;

/** The exact footprint of a shape standing at a point. */
export function shapeAt(s: ItemShape, at: Point, angle: number): Shape {
  return isRound(s) ? disc(at, s.diameter / 2) : polygonShape(rectangle(at, s.width, s.depth, angle));
}
export const footprint = (item: Item): Shape => shapeAt(item.shape, item.at, item.angle);

const discs = new WeakMap<Item, Polygon>();

/** The footprint as a polygon; a disc by the polygon drawn about it (never smaller than the disc). */
export function footprintPolygon(item: Item): Polygon {
  if (!isRound(item.shape)) return rectangle(item.at, item.shape.width, item.shape.depth, item.angle);
  // Items are never changed once made, and discs have many corners.
  const known = discs.get(item) ?? aroundCircle(item.at, item.shape.diameter / 2);
  discs.set(item, known);
  return known;
}

/** The floor that a seat takes: the chair, or the clear floor of a wheelchair place; it looks along `facing`. */
export function seatPolygon(seat: Seat, chair: { readonly width: number; readonly depth: number } = CHAIR): Polygon {
  const { width, depth } = seat.place === "wheelchair" ? WHEELCHAIR_FLOOR : chair;
  // A thing with a front faces down the page (+y, 90 degrees) at angle 0.
  return rectangle([seat.x, seat.y], width, depth, seat.facing - 90);
}

export const widthOf = (s: ItemShape): number => (isRound(s) ? s.diameter : s.width);
export const depthOf = (s: ItemShape): number => (isRound(s) ? s.diameter : s.depth);
