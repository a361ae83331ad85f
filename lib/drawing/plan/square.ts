import { bearing, clockwise, distance, edges, sinCos, sub, type Point } from "../../geometry";
import type { Item, Scene } from "../../layout";
import { axisOf, type Room, type Venue } from "../../venue";
import { isPoint } from "./fittings";

/** A venue and a part of its day laid square with one room: a plan that is carried is held square to its walls. */
export type Squared = { readonly venue: Venue; readonly scene: Scene; readonly item: (item: Item) => Item; /** How far all was turned, clockwise degrees; 0 where the room stood square. */ readonly by: number };

/** Walls shorter than this are returns and reveals: they do not say how a room stands, mm. */
const LONG = 1_500;

/** How far a room whose long walls all stand askew is turned, -45 to 45 degrees clockwise; 0 where one of them is square with the page. */
function turnOf(room: Room): number {
  const off = ([a, b]: readonly [Point, Point]): number => { const d = ((bearing(sub(b, a)) % 90) + 90) % 90; return Math.min(d, 90 - d); };
  if (edges(room.outline).some((e) => distance(...e) >= LONG && off(e) < 0.5)) return 0;
  const tilt = axisOf(clockwise(room.outline));
  return tilt > 45 ? tilt - 90 : tilt;
}

/** A thousandth of a millimetre: walls that were turned square are square. */
const fine = (mm: number): number => Math.round(mm * 1_000) / 1_000;

export function squared(venue: Venue, scene: Scene, room: string | undefined): Squared {
  const main = venue.rooms.find((r) => r.id === room);
  const by = main ? -turnOf(main) : 0;
  if (by === 0) return { venue, scene, item: (i) => i, by };
  const { sin, cos } = sinCos(by);
  const at = ([x, y]: Point): Point => [fine(x * cos - y * sin), fine(x * sin + y * cos)];
  const all = (list: readonly Point[]): readonly Point[] => list.map(at);
  const ends = <T extends { readonly from: Point; readonly to: Point }>(list: readonly T[]): readonly T[] => list.map((x) => ({ ...x, from: at(x.from), to: at(x.to) }));
  const item = (i: Item): Item => ({
    ...i, at: at(i.at), angle: fine(i.angle + by),
    seats: i.seats.map((s) => { const [x, y] = at([s.x, s.y]); return { ...s, x, y, facing: fine(s.facing + by) }; }),
  });
  const turned = (r: Room): Room => ({
    ...r, outline: all(r.outline), doors: ends(r.doors), windows: ends(r.windows), walls: ends(r.walls),
    obstacles: r.obstacles.map((o) => ({ ...o, outline: all(o.outline) })), keepClear: r.keepClear.map((k) => ({ ...k, outline: all(k.outline) })),
    sockets: r.sockets.map((s) => (isPoint(s) ? at(s) : { ...s, at: at(s.at) })), standing: r.standing.map((s) => ({ ...s, at: at(s.at), angle: fine(s.angle + by) })),
  });
  return {
    venue: { ...venue, rooms: venue.rooms.map(turned), drapes: venue.drapes.map((d) => ({ ...d, area: all(d.area) })), ...(venue.north === undefined ? {} : { north: venue.north + by }) },
    scene: { ...scene, items: scene.items.map(item) }, item, by,
  };
}
