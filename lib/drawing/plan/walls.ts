import {
  add, cross, edges, minus, offsetMitred, regionContains, scale, sub, subtract, union, unite, type Point, type Polygon, type Region,
} from "../../geometry";
import type { Room } from "../../venue";

/** Thickness that a wall is drawn with where the venue's rooms do not give it, mm. */
const WALL = 500;
/** Slots narrower than this between two walls, or a wall and a terrace, are wall too, mm. */
const SLOT = 600;

export type Mass = {
  /** Wall as a filled mass: the floors and the terraces cut out of it. */
  readonly walls: Region;
  readonly indoors: readonly Room[];
  readonly outdoors: readonly Room[];
};

/** The walls about the rooms of one level: every indoor outline grown outward, what lies between neighbours closed, floors cut out. */
export function massOf(rooms: readonly Room[]): Mass {
  const indoors = rooms.filter((r) => !r.outdoor);
  const outdoors = rooms.filter((r) => r.outdoor);
  const grown = indoors.map((r) => offsetMitred(union([r.outline]), WALL)).reduce<Region>((all, r) => unite(all, r), []);
  const open = outdoors.map((r) => r.outline);
  const solid = unite(grown, union(open));
  const closed = offsetMitred(offsetMitred(solid, SLOT / 2), -SLOT / 2);
  const walls = minus(subtract(closed, indoors.map((r) => r.outline)), union(open));
  return { walls, indoors, outdoors };
}

/** How deep the mass is behind a point of a wall, going along a unit vector, mm; 0 where there is none. */
export function depthAt(walls: Region, from: Point, along: Point): number {
  if (!regionContains(walls, add(from, scale(along, 10)))) return 0;
  let depth = Infinity;
  for (const piece of walls) for (const ring of [piece.outer, ...piece.holes]) for (const e of edges(ring as Polygon)) {
    const d = sub(e[1], e[0]);
    const den = cross(along, d);
    if (Math.abs(den) < 1e-9) continue;
    const t = cross(sub(e[0], from), d) / den;
    const s = cross(sub(e[0], from), along) / den;
    if (t > 5 && s >= -1e-9 && s <= 1 + 1e-9) depth = Math.min(depth, t);
  }
  return Number.isFinite(depth) ? depth : 0;
}

/** The four corners of an opening through a wall: on the room's face, then on the far one. */
export const through = (from: Point, to: Point, outward: Point, depth: number): Polygon => {
  const out = scale(outward, depth);
  return [from, to, add(to, out), add(from, out)];
};
