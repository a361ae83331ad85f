import { boxesNear, clearance, distance, insideBy, polygonShape, roundPoint, type Point, type Shape } from "../geometry";
import { footprint, movedTo, seatPolygon, type Item, type Scene } from "../layout";
import { chairOf } from "../rules/context";
import { blockedFloor, gatesToKeep, siteOf, type Venue } from "../venue";
import { frameOf, outOfFrame } from "./walls";

/** Spots are looked at on a net of this width, mm, true to the room's axes. */
const NET = 200;
/** Clear floor that is looked for about a new piece, mm; the least is taken where no spot has more. Common practice, no source. */
const EASE = [900, 450, 20] as const;

/** The floor that a piece takes: itself, and the places at it. */
function bodies(item: Item, chair: { readonly width: number; readonly depth: number }): readonly Shape[] {
  return [footprint(item), ...(item.kind === "chair" ? [] : item.seats.map((s) => polygonShape(seatPolygon(s, chair))))];
}

/** Free floor for a new piece, nearest to the middle of its room; null where there is none. It stands true to the room's axes. */
export function freeSpot(venue: Venue, scene: Scene, item: Item): { readonly at: Point; readonly angle: number } | null {
  const room = venue.rooms.find((r) => r.id === item.room);
  if (!room) return null;
  if ("standing" in item.from) return { at: item.at, angle: item.angle };
  const f = frameOf(room), chair = chairOf(venue), site = siteOf(venue, scene.drapes);
  const others = [
    ...scene.items.filter((i) => i.room === room.id).flatMap((i) => bodies(i, chair)),
    ...[...blockedFloor(room), ...gatesToKeep(site, room.id, scene.rooms).map((g) => g.clear)].map((p) => polygonShape(p)),
    ...site.drapes.filter((d) => d.from === room.id).map((d) => polygonShape(d.area)),
  ];
  const middle: Point = [(f.box.minX + f.box.maxX) / 2, (f.box.minY + f.box.maxY) / 2];
  const net: Point[] = [];
  for (let x = f.box.minX + NET; x < f.box.maxX; x += NET) for (let y = f.box.minY + NET; y < f.box.maxY; y += NET) net.push([x, y]);
  net.sort((a, b) => distance(a, middle) - distance(b, middle) || a[0] - b[0] || a[1] - b[1]);
  const angles = "diameter" in item.shape ? [f.tilt] : [item.angle + f.tilt, item.angle + f.tilt + 90];
  for (const ease of EASE) for (const p of net) for (const angle of angles) {
    const at = roundPoint(outOfFrame(f, p));
    const own = bodies(movedTo(item, at, ((angle % 360) + 360) % 360), chair);
    if (own.every((b) => insideBy(b, room.outline) >= 0 && others.every((o) => !boxesNear(b.box, o.box, ease) || clearance(b, o) >= ease))) return { at, angle };
  }
  return null;
}
