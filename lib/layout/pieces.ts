import { add, bearing, sub, turn, type Point } from "../geometry";
import type { Item } from "./types";

/** True where two items are one piece that has not been touched in between: the same name at the same spot. */
export const standsAs = (a: Item, b: Item): boolean =>
  a.id === b.id && a.room === b.room && a.at[0] === b.at[0] && a.at[1] === b.at[1] && a.angle === b.angle;

/** The same piece at another spot and turned to another angle, its places with it, whole millimetres. */
export function movedTo(item: Item, at: Point, angle: number): Item {
  const by = angle - item.angle;
  return {
    ...item, at, angle,
    seats: item.seats.map((s) => {
      const [x, y] = add(at, turn(sub([s.x, s.y], item.at), by));
      return { ...s, x: Math.round(x), y: Math.round(y), facing: by === 0 ? s.facing : bearing(turn([1, 0], s.facing + by)) };
    }),
  };
}

/** Guests' places among some pieces: those of work tables (suppliers') are left out. */
export const guestPlaces = (items: readonly Item[]): number => items.reduce((n, i) => n + (i.role === "work" ? 0 : i.seats.length), 0);
