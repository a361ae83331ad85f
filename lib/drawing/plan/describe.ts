import { add, boxOf, clockwise, cross, edges, scale, sub, turn, type Point, type Polygon } from "../../geometry";
import { isRound, type Item, type Scene } from "../../layout";
import { formatLength, formatSize, type LengthStyle } from "../../measure";
import { axisOf, type Room, type Venue } from "../../venue";
import { planVoice, planWords } from "../../words/plan";
import { numbersOf } from "./numbers";

/** What a piece is called in words: its number or its label, its size, its places. */
export function labelOf(item: Item, number: string | undefined, style: LengthStyle, part?: string): string {
  const unit = { ...style, unit: true };
  const words = planWords(style.locale);
  const size = isRound(item.shape) ? words.round(formatLength(item.shape.diameter, unit)) : formatSize(item.shape.width, item.shape.depth, unit);
  const name = number !== undefined && !/\d\s*$/.test(item.label) ? words.table(number) : item.label;
  const wheelchairs = item.seats.filter((s) => s.place === "wheelchair").length;
  const places = item.kind === "chair" || item.seats.length === 0 ? ""
    : `, ${words.places(item.seats.length, wheelchairs)}`;
  return `${name}${part ?? ""}, ${size}${places}`;
}

/** Distance from a point along a direction to the outline, mm. */
function ray(outline: Polygon, from: Point, along: Point): number {
  let best = Infinity;
  for (const [a, b] of edges(outline)) {
    const d = sub(b, a), den = cross(along, d);
    if (Math.abs(den) < 1e-9) continue;
    const t = cross(sub(a, from), d) / den, s = cross(sub(a, from), along) / den;
    if (t >= 0 && s >= -1e-9 && s <= 1 + 1e-9) best = Math.min(best, t);
  }
  return best;
}

export type FromWall = { readonly wall: "left" | "right" | "upper" | "lower"; readonly mm: number; readonly foot: Point };

/** How far a point stands from the nearer of each two facing walls of its room, along the room's own axes. */
export function fromWalls(room: Room, at: Point): readonly FromWall[] {
  const outline = clockwise(room.outline);
  const tilt = axisOf(outline);
  const axis = tilt > 45 ? tilt - 90 : tilt;
  const pairs = [[["left", 180], ["right", 0]], [["upper", 270], ["lower", 90]]] as const;
  return pairs.flatMap((pair) => {
    const both = pair.map(([wall, bearing]): FromWall => {
      const along = turn([1, 0], bearing + axis);
      const mm = ray(outline, at, along);
      return { wall, mm, foot: add(at, scale(along, Number.isFinite(mm) ? mm : 0)) };
    }).filter((w) => Number.isFinite(w.mm));
    const nearer = both.sort((a, b) => a.mm - b.mm)[0];
    return nearer ? [nearer] : [];
  });
}

/** The two sides of a room along its own axes, mm. */
export function roomSize(room: Room): readonly [number, number] {
  const tilt = axisOf(clockwise(room.outline));
  const axis = tilt > 45 ? tilt - 90 : tilt;
  const b = boxOf(room.outline.map((p) => turn(p, -axis)));
  return [b.maxX - b.minX, b.maxY - b.minY];
}

/** Of joined tables, which part of the whole each is: ", part 2 of 3". */
export function partsOf(scene: Scene, locale: string): ReadonlyMap<string, string> {
  const byNumber = new Map<string, Item[]>();
  const numbers = numbersOf(scene);
  for (const i of scene.items) { const n = numbers.get(i.id); if (n !== undefined) byNumber.set(n, [...(byNumber.get(n) ?? []), i]); }
  return new Map([...byNumber.values()].filter((l) => l.length > 1).flatMap((l) => l.map((i, k) => [i.id, `, ${planWords(locale).part(k + 1, l.length)}`] as const)));
}

/** Reading order: rooms as the scene names them; in a room numbered tables first by number, then the rest down the page. */
export function readingOrder(scene: Scene): readonly Item[] {
  const numbers = numbersOf(scene);
  const rank = (i: Item): number => { const n = numbers.get(i.id); return n === undefined ? Infinity : Number(n); };
  const roomRank = (i: Item): number => { const k = scene.rooms.indexOf(i.room); return k < 0 ? scene.rooms.length : k; };
  return [...scene.items].sort((a, b) => roomRank(a) - roomRank(b) || compare(rank(a), rank(b)) || a.at[1] - b.at[1] || a.at[0] - b.at[0] || (a.id < b.id ? -1 : 1));
}
const compare = (a: number, b: number): number => (a === b ? 0 : a < b ? -1 : 1);

/** The plan in words, one line a room and one a piece; chairs that stand in rows are counted, not listed. */
export function inWords(venue: Venue, scene: Scene, style: LengthStyle): readonly string[] {
  const unit = { ...style, unit: true }, say = planVoice(style.locale);
  const numbers = numbersOf(scene);
  const parts = partsOf(scene, style.locale);
  const out: string[] = [];
  let room: Room | undefined;
  let begun = "";
  const chairs = new Map<string, number>();
  for (const item of scene.items) if (item.kind === "chair") chairs.set(item.room, (chairs.get(item.room) ?? 0) + 1);
  for (const item of readingOrder(scene)) {
    if (item.room !== begun) {
      begun = item.room;
      room = venue.rooms.find((r) => r.id === item.room);
      const [w, d] = room ? roomSize(room) : [0, 0];
      out.push(`${room?.name ?? item.room}, ${formatSize(w, d, unit)}.`);
      const n = chairs.get(item.room);
      if (n !== undefined) out.push(`${planWords(style.locale).chairsInRows(n)}.`);
    }
    if (item.kind === "chair") continue;
    const walls = room ? fromWalls(room, item.at) : [];
    const where = walls.map((w) => say(`{length} from the ${w.wall} wall`, { length: formatLength(w.mm, unit) })).join(", ");
    const what = labelOf(item, numbers.get(item.id), style, parts.get(item.id));
    out.push(where === "" ? `${what}.` : say("{what}; its middle {where}.", { what, where }));
  }
  return out;
}
