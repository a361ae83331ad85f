import { planWords } from "../../words/plan";
import { boxOf, type Box, type Point, type Polygon } from "../../geometry";
import type { Finding, Item, Scene } from "../../layout";
import type { Room, Venue } from "../../venue";
import { isPoint } from "./fittings";

/** One level of a drawing that shows several: how it is called, and where its rooms lie in the drawing's frame. */
export type Storey = { readonly name: string; readonly box: Box };
/** Rooms of several levels laid out beside one another as if on one; `shift` is how far a room was moved from the venue's frame, mm. */
export type Spread = {
  readonly venue: Venue; readonly scene: Scene; readonly rooms: readonly Room[]; readonly storeys: readonly Storey[];
  readonly shift: (room: string) => Point; readonly item: (item: Item) => Item; readonly finding: (finding: Finding) => Finding;
};

/** Floor left between two levels for what swings out of them and for their words, mm of the room. */
const APART = 3_600;

const by = (p: Point, d: Point): Point => [p[0] + d[0], p[1] + d[1]];
const all = (list: Polygon, d: Point): Polygon => list.map((p) => by(p, d));

function moveRoom(r: Room, d: Point): Room {
  const ends = <T extends { readonly from: Point; readonly to: Point }>(list: readonly T[]): readonly T[] => list.map((x) => ({ ...x, from: by(x.from, d), to: by(x.to, d) }));
  return {
    ...r, outline: all(r.outline, d), doors: ends(r.doors), windows: ends(r.windows), walls: ends(r.walls),
    obstacles: r.obstacles.map((o) => ({ ...o, outline: all(o.outline, d) })), keepClear: r.keepClear.map((k) => ({ ...k, outline: all(k.outline, d) })),
    sockets: r.sockets.map((s) => (isPoint(s) ? by(s, d) : { ...s, at: by(s.at, d) })), standing: r.standing.map((s) => ({ ...s, at: by(s.at, d) })),
  };
}

const moveItem = (i: Item, [dx, dy]: Point): Item =>
  dx === 0 && dy === 0 ? i : { ...i, at: [i.at[0] + dx, i.at[1] + dy], seats: i.seats.map((s) => ({ ...s, x: s.x + dx, y: s.y + dy })) };

/** Two levels are the lower and the upper; of more each bears its number. */
const nameOf = (level: number, levels: readonly number[], locale: string): string =>
  planWords(locale).level(levels.length === 2 ? (level === levels[0] ? "lower" : "upper") : level);

/** How far each level is moved: each to the right of the one before, or beneath it, whichever comes nearer to the shape asked for. */
function shifts(boxes: readonly Box[], ratio: number): readonly Point[] {
  const lay = (down: boolean): { readonly moved: readonly Point[]; readonly size: number } => {
    let next = 0, wide = 0, high = 0;
    const [first] = boxes;
    const moved = boxes.map((b, i): Point => {
      const to: Point = i === 0 || !first ? [0, 0] : down ? [first.minX - b.minX, next - b.minY] : [next - b.minX, first.minY - b.minY];
      next = (down ? b.maxY + to[1] : b.maxX + to[0]) + APART;
      wide = Math.max(wide, b.maxX + to[0] - (first?.minX ?? 0));
      high = Math.max(high, b.maxY + to[1] - (first?.minY ?? 0));
      return to;
    });
    return { moved, size: Math.max(wide / ratio, high) };
  };
  const across = lay(false), down = lay(true);
  return across.size <= down.size ? across.moved : down.moved;
}

/** Lays rooms of several levels out beside one another; rooms of one level stay where they are. `ratio` is the paper's width by its height. */
export function spread(venue: Venue, scene: Scene, rooms: readonly Room[], ratio: number): Spread {
  const levels = [...new Set(rooms.map((r) => r.level))].sort((a, b) => a - b);
  const boxes = levels.map((l) => boxOf(rooms.filter((r) => r.level === l).flatMap((r) => r.outline)));
  const to = shifts(boxes, ratio);
  const byRoom = new Map(venue.rooms.map((r): readonly [string, Point] => [r.id, to[levels.indexOf(r.level)] ?? [0, 0]]));
  const shift = (room: string): Point => byRoom.get(room) ?? [0, 0];
  const moved = levels.length > 1;
  const item = (i: Item): Item => moveItem(i, shift(i.room));
  const finding = (f: Finding): Finding => {
    const home = scene.items.find((i) => f.items.includes(i.id))?.room;
    return f.at && home !== undefined ? { ...f, at: by(f.at, shift(home)) } : f;
  };
  if (!moved) return { venue, scene, rooms, storeys: [], shift, item: (i) => i, finding: (f) => f };
  const there = new Map(venue.rooms.map((r) => [r.id, moveRoom(r, shift(r.id))]));
  return {
    venue: { ...venue, rooms: [...there.values()], drapes: venue.drapes.map((d) => ({ ...d, area: all(d.area, shift(d.from)) })) },
    scene: { ...scene, items: scene.items.map(item) }, rooms: rooms.map((r) => there.get(r.id) ?? r),
    storeys: levels.map((l, k) => {
      const b = boxes[k] ?? { minX: 0, minY: 0, maxX: 0, maxY: 0 }, d = to[k] ?? [0, 0];
      return { name: nameOf(l, levels, venue.locale), box: { minX: b.minX + d[0], maxX: b.maxX + d[0], minY: b.minY + d[1], maxY: b.maxY + d[1] } };
    }),
    shift, item, finding,
  };
}
