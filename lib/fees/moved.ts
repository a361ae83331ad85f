import { contains, distance } from "../geometry";
import { isRound, type Layout, type Item } from "../layout";
import type { Standing, Venue } from "../venue";

/** What rounding may shift a piece by without anybody having moved it: mm, degrees. */
const STILL = { mm: 1, degrees: 0.5 } as const;

/**
 * Standing pieces that are moved in the day, in the venue's order: some part of the day that uses their room does not list
 * them, or some part lists them elsewhere or turned. Away and back again is one move.
 */
export function movedStanding(venue: Venue, layout: Layout): readonly Standing[] {
  return venue.rooms.flatMap((room) => room.standing.filter((piece) => layout.scenes.some((scene) => {
    const listed = scene.items.filter((i) => "standing" in i.from && i.from.standing === piece.id);
    // In a strip that a drape lends, a piece stands in the grown room without having been moved.
    const lentTo = venue.drapes.filter((d) => scene.drapes.includes(d.id) && d.from === room.id && contains(d.area, piece.at)).map((d) => d.grows);
    return listed.length === 0 ? scene.rooms.includes(room.id) : !listed.some((i) => [room.id, ...lentTo].some((r) => stays(i, piece, r)));
  })));
}

function stays(item: Item, piece: Standing, room: string): boolean {
  if (item.room !== room || distance(item.at, piece.at) > STILL.mm) return false;
  const turned = Math.abs(((((item.angle - piece.angle) % 360) + 540) % 360) - 180);
  return isRound(piece.shape) || turned <= STILL.degrees;
}
