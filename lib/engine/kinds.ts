import { boxOf, distance, turn, type Point } from "../geometry";
import { isRound, type Item, type Layout, type Scene } from "../layout";
import { axisOf, type Venue } from "../venue";

/** From this share of its tables on another spot a layout is another, not a shade of the first. */
const SHARE = 0.3;
/** How far a table must stand from where the other layout has one, mm. */
const FAR = 1000;

const mealOf = (l: Layout): Scene | undefined => l.scenes.find((s) => s.id === "meal");
const dining = (l: Layout): readonly Item[] => (mealOf(l)?.items ?? []).filter((i) => i.kind === "table" && i.seats.length > 0 && i.role !== "work");

/** Rounds, long tables or both. */
function family(l: Layout): string {
  const tables = dining(l).filter((i) => i.role === "dining");
  return `${tables.some((t) => isRound(t.shape)) ? "round" : ""} ${tables.some((t) => !isRound(t.shape)) ? "long" : ""}`;
}
const rooms = (l: Layout): string => l.scenes.map((s) => `${s.id}:${[...s.rooms].sort().join("+")}`).join(" ");
/** Where people dance, and whether that floor lies among the tables from the first. */
function floor(l: Layout): string {
  const tables = new Set(dining(l).map((i) => i.room));
  const lies = (id: Scene["id"]): readonly string[] => (l.scenes.find((s) => s.id === id)?.items ?? []).filter((i) => i.kind === "dance-floor").map((i) => i.room).sort();
  return `${lies("dancing").join("+")} ${lies("meal").filter((r) => tables.has(r)).join("+")}`;
}
const drapes = (l: Layout): string => [...new Set(l.scenes.flatMap((s) => s.drapes))].sort().join(" ");
const turned = (l: Layout): string => l.turnovers.map((t) => `${t.from}>${t.to}:${t.room ?? ""}`).sort().join(" ");

/**
 * Whether two layouts differ in kind: in the family of their tables, the rooms of a part of the day, where people dance, the drapes, what is turned over;
 * or in at least three in ten of their tables by over a metre, once a mirroring or half turn of the room is taken out.
 */
export function differInKind(venue: Venue, a: Layout, b: Layout): boolean {
  return family(a) !== family(b) || rooms(a) !== rooms(b) || floor(a) !== floor(b) || drapes(a) !== drapes(b) || turned(a) !== turned(b) || shareMoved(venue, a, b) >= SHARE;
}

/** The share of the meal's tables that stand over a metre from any table of the same shape in the other layout, at the least over the room's symmetries. */
export function shareMoved(venue: Venue, a: Layout, b: Layout): number {
  const [as, bs] = [dining(a), dining(b)];
  const n = Math.max(as.length, bs.length);
  if (n === 0) return 0;
  const id = as[0]?.room ?? bs[0]?.room;
  const room = venue.rooms.find((r) => r.id === id);
  if (!room) return 1;
  const axis = axisOf(room.outline), box = boxOf(room.outline.map((p) => turn(p, -axis)));
  const [cx, cy] = [box.minX + box.maxX, box.minY + box.maxY];
  const images: readonly ((p: Point) => Point)[] = [(p) => p, ([x, y]) => [cx - x, y], ([x, y]) => [x, cy - y], ([x, y]) => [cx - x, cy - y]];
  const spots = (list: readonly Item[]): readonly { readonly key: string; readonly at: Point }[] => list.map((i) => ({ key: JSON.stringify(i.shape), at: turn(i.at, -axis) }));
  const [p, q] = [spots(as), spots(bs)];
  return Math.min(...images.map((image) => {
    const left = [...q];
    let same = 0;
    for (const s of p) {
      const at = image(s.at);
      const k = left.findIndex((o) => o.key === s.key && distance(o.at, at) <= FAR);
      if (k >= 0) { left.splice(k, 1); same++; }
    }
    return (n - same) / n;
  }));
}
