import { dot, sub, type Point } from "../geometry";
import { widthOf, type Item } from "../layout";
import { placed, type Context, type Raw, type SceneView } from "./context";
import { wheelchairSpaces } from "./formulas";
import { lookOf } from "./rows";
import { isRowChair, isWheelchairSpace } from "./ways";

/** Widest gap between a wheelchair's space and the chair beside it, and most by which their middles may be out of line, mm. */
const BESIDE = 250, ALIGNED = 400;

/**
 * Wheelchair spaces among chairs in rows by their number: 2010 ADA Standards Table 221.2.1.1. The table is written for seating that is
 * built in, so it is a note, and where the brief names a guest in a wheelchair; a space for each of those is a must of another rule.
 */
export function wheelchairSpacesInRows(v: SceneView, c: Context): readonly Raw[] {
  if (!c.brief || c.brief.guests.wheelchairs === 0) return [];
  const spaces = v.scene.items.filter(isWheelchairSpace);
  const seats = v.scene.items.filter(isRowChair).length + spaces.length;
  const needed = wheelchairSpaces(seats);
  if (spaces.length >= needed || seats === spaces.length) return [];
  return [{
    code: "wheelchair-spaces", level: "note", source: "2010 ADA Standards Table 221.2.1.1", scene: v.scene.id, items: spaces.map((i) => i.id),
    measured: spaces.length, limit: needed, unit: "spaces", data: { seats, spaces: spaces.length, needed },
  }];
}

/** A companion's chair beside each wheelchair space, shoulders in line: 2010 ADA Standards 221.3 and 802.3. */
export function companions(v: SceneView): readonly Raw[] {
  const chairs = v.scene.items.filter(isRowChair);
  const taken = new Set<Item>();
  return v.scene.items.filter(isWheelchairSpace).flatMap((space): readonly Raw[] => {
    const facing = space.seats[0]?.facing;
    if (facing === undefined) return [];
    const f = lookOf(facing), side: Point = [-f[1], f[0]];
    const beside = chairs.find((i) => {
      const d = sub(i.at, space.at);
      const gap = Math.abs(dot(d, side)) - (widthOf(space.shape) + widthOf(i.shape)) / 2;
      return !taken.has(i) && i.room === space.room && gap <= BESIDE && gap > -widthOf(i.shape) && Math.abs(dot(d, f)) <= ALIGNED;
    });
    if (beside) { taken.add(beside); return []; }
    return [{
      code: "companion", level: "should", source: "2010 ADA Standards 221.3, 802.3", scene: v.scene.id, items: [space.id], at: placed(space.at), data: { a: space.id },
    }];
  });
}
