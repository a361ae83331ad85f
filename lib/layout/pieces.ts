import { add, bearing, sub, turn, type Point } from "../geometry";
import type { Item, Scene, Turnover } from "./types";

/** True where two items are one piece that has not been touched in between: the same name at the same spot. */
export const standsAs = (a: Item, b: Item): boolean =>
  a.id === b.id && a.room === b.room && a.at[0] === b.at[0] && a.at[1] === b.at[1] && a.angle === b.angle;

/** True for a turnover of a room that the part of the day before does not use: it stands laid, and is brought chairs that were wanted elsewhere. */
export const bringsChairs = (scenes: readonly Scene[], { from, room }: Pick<Turnover, "from" | "room">): boolean =>
  room !== undefined && !scenes.some((s) => s.id === from && s.rooms.includes(room));

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
