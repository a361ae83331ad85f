import type { Item, Layout } from "../../layout";
import { isRound } from "../../layout";
import { axisOf } from "../../venue";
import { mapPiece, moved } from "./edit";
import { addsNone, keyOf, type Bench } from "./judge";
import { freeRegion, nearestSpots, scenesWith, type Near } from "./region";

/** Spots judged for one piece before it is given up. */
const SPOTS = 14, APART = 120;
/** What turning a piece weighs against moving it, mm. */
const TURN = 400;

type Spot = Near & { readonly angle: number; readonly room: string };

/** Spots where a piece fits by itself, nearest first: turned as it is, then true to the room either way; other rooms of the day last. */
export function spotsFor(b: Bench, layout: Layout, item: Item, rooms: readonly string[]): readonly Spot[] {
  const scenes = scenesWith(layout, item);
  return rooms.flatMap((room, k) => {
    const own = b.venue.rooms.find((r) => r.id === room);
    const axis = own ? axisOf(own.outline) : 0;
    const angles = isRound(item.shape) ? [item.angle] : [...new Set([item.angle, (item.angle + 90) % 360, axis, (axis + 90) % 360])];
    return angles.flatMap((angle) => {
      const turned = moved(item, item.at, angle);
      const region = freeRegion(b.venue, scenes, turned, room);
      return nearestSpots(region, item.at, { apart: APART, most: SPOTS }).map((n): Spot => ({ ...n, angle, room, far: n.far + (angle === item.angle ? 0 : TURN) + k * 100_000 }));
    });
  }).sort((x, y) => x.far - y.far || x.at[0] - y.at[0] || x.at[1] - y.at[1]);
}

/** Moves one piece to the nearest spot where no must names it and no other is new; null where there is none. */
export function relocate(b: Bench, layout: Layout, item: Item, options: { readonly otherRooms?: boolean; readonly gone?: ReadonlySet<string> } = {}): Layout | null {
  const scenes = scenesWith(layout, item);
  const others = options.otherRooms ? [...new Set(scenes.flatMap((s) => s.rooms))].filter((r) => r !== item.room && scenes.every((s) => s.rooms.includes(r))) : [];
  const spots = spotsFor(b, layout, item, [item.room, ...others]);
  let tried = 0;
  for (const s of spots) {
    if (tried++ >= SPOTS * 2 || b.budget.left <= 0) return null;
    const next = mapPiece(layout, item, (i) => ({ ...moved(i, s.at, s.angle), room: s.room }));
    if (addsNone(b, layout, next, (f) => f.items.includes(item.id) || (options.gone?.has(keyOf(f)) ?? false))) return next;
  }
  return null;
}
