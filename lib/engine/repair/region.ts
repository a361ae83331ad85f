import {
  add, aroundCircle, bearing, boxOf, boxesNear, convexHull, distance, edges, minus, nearestOnSegment, rectangle, regionContains, scale, sub, turn, union, unit, uniteAll, type Point, type Polygon, type Region,
} from "../../geometry";
import { depthOf, footprintPolygon, isRound, seatPolygon, widthOf, type Item, type Layout, type Scene } from "../../layout";
import { chairOf, isSeatedTable, PLACE, piecesOnFloor, ruleValues, siteFor } from "../../rules";
import { blockedFloor, gatesToKeep, levelOf, type RoomSite, type Site, type Venue } from "../../venue";
import { standsAs } from "./edit";

const SIDES = 32;

const bare = (item: Item): Polygon => (isRound(item.shape) ? aroundCircle(item.at, item.shape.diameter / 2, SIDES) : footprintPolygon(item));

/** The convex floor that a piece and its places take. */
export function bodyOf(item: Item, chair: { readonly width: number; readonly depth: number }): Polygon {
  const own = bare(item);
  return item.kind === "table" && item.seats.length > 0 ? convexHull([...own, ...item.seats.flatMap((s) => seatPolygon(s, chair))]) : own;
}

/** The floor that must be free of tables (or walls) about a table's places: its own, and `deep` mm behind each place, one strip a place. */
export function reachOf(item: Item, deep: number): readonly Polygon[] {
  if (isRound(item.shape)) {
    const r = item.shape.diameter / 2;
    return [bare(item), ...item.seats.map((s) => {
      const out = unit(sub([s.x, s.y], item.at));
      return rectangle(add(item.at, scale(out, r + (deep - 1) / 2)), PLACE - 2, deep - 1, bearing(out) - 90);
    })];
  }
  const w = widthOf(item.shape) / 2, d = depthOf(item.shape) / 2;
  const behind = item.seats.map((s) => {
    const [x, y] = turn(sub([s.x, s.y], item.at), -item.angle);
    // The nearest side decides where behind is.
    const out = Math.abs(x) - w > Math.abs(y) - d ? [Math.sign(x), 0] as const : [0, Math.sign(y)] as const;
    const edge: Point = out[0] !== 0 ? [out[0] * w, Math.max(-d, Math.min(d, y))] : [Math.max(-w, Math.min(w, x)), out[1] * d];
    return rectangle(add(edge, scale(out, (deep - 1) / 2)), PLACE - 2, deep - 1, out[0] !== 0 ? 90 : 0);
  }).map((p) => p.map((q) => add(item.at, turn(q, item.angle))));
  return [bare(item), ...behind];
}

/** All spots of the origin at which a convex body (given about the origin) would meet a convex polygon. */
const meetsConvex = (q: Polygon, body: Polygon): Polygon => convexHull(q.flatMap((a) => body.map((k): Point => [a[0] - k[0], a[1] - k[1]])));
/** The same for any polygon: its edges swept, and its inside. */
const meetsAny = (q: Polygon, body: Polygon): readonly Polygon[] => [q, ...edges(q).map((e) => meetsConvex(e, body))];

const about = (p: Polygon, at: Point): Polygon => p.map((c) => sub(c, at));

/** Where a piece is judged: the parts of the day in which it stands. */
export const scenesWith = (layout: Layout, item: Item): readonly Scene[] => layout.scenes.filter((s) => s.items.some((i) => standsAs(i, item)));

/** What is asked about one piece: its own floor about its origin, and what must be free about it, by the venue's gaps. */
type Probe = {
  /** Names all of this: the same piece turned alike in the same room, under the same gaps. */
  readonly key: string;
  readonly item: Item; readonly room: string; readonly seated: boolean; readonly chair: ReturnType<typeof chairOf>; readonly tableGap: number; readonly wallGap: number;
  readonly body: Polygon; readonly foot: Polygon; readonly toWall: readonly Polygon[]; readonly toTable: readonly Polygon[];
};

function probeOf(venue: Venue, item: Item, room: string): Probe {
  const values = ruleValues(venue), chair = chairOf(venue), seated = isSeatedTable(item), { tableGap, wallGap } = values.most;
  const body = about(bodyOf(item, chair), item.at), foot = about(bare(item), item.at);
  const strips = (deep: number): readonly Polygon[] => (seated ? reachOf(item, deep).map((p) => about(p, item.at)) : [foot]);
  const key = JSON.stringify([room, tableGap, wallGap, chair, item.kind, item.role, item.shape, item.angle, "standing" in item.from, item.seats.map((s) => [s.x - item.at[0], s.y - item.at[1], s.facing, s.place])]);
  return { key, item, room, seated, chair, tableGap, wallGap, body, foot, toWall: [...strips(wallGap), body], toTable: strips(tableGap) };
}

/** Kept by what it is worked out from: pieces and rooms stand as they are while one after another is tried among them. */
const kept = new WeakMap<object, Map<string, Region>>();
/** Probes kept for one piece or room: a venue's rooms last as long as the venue does. */
const MOST = 200;
function keptFor(of: object, key: string, make: () => Region): Region {
  const all = kept.get(of) ?? new Map<string, Region>(), known = all.get(key);
  if (known) return known;
  if (all.size >= MOST) all.clear();
  const region = make();
  kept.set(of, all.set(key, region));
  return region;
}

/** Where the piece would stand in walls, piers, doors or kept-clear floor, or too near a wall. */
function builtOver(site: Site, own: RoomSite, scene: Scene, p: Probe): Region {
  return keptFor(own, `${scene.rooms.join(" ")} ${p.key}`, () => {
    const taken: Polygon[] = own.floor.flatMap((f) => [f.outer, ...f.holes]).flatMap((ring) => edges(ring).flatMap((e) => p.toWall.map((k) => meetsConvex(e, k))));
    for (const o of own.room.obstacles) taken.push(...p.toWall.flatMap((k) => meetsAny(o.outline, k)));
    const here = [...site.rooms.values()].filter((r) => r.room.level === own.room.level);
    for (const f of here.flatMap((r) => blockedFloor(r.room))) taken.push(...meetsAny(f, p.body));
    if (p.item.kind !== "dance-floor") for (const g of here.filter((r) => scene.rooms.includes(r.room.id)).flatMap((r) => gatesToKeep(site, r.room.id, scene.rooms))) taken.push(meetsConvex(g.clear, p.body));
    return union(taken);
  });
}

/** Where the piece would stand on another, or too near it. */
const takenBy = (other: Item, p: Probe): Region => keptFor(other, p.key, () => {
  const taken: Polygon[] = [meetsConvex(bodyOf(other, p.chair), p.body)], otherFoot = bare(other);
  if (other.room !== p.room) return union(taken);
  if (p.seated && other.kind === "table") taken.push(...p.toTable.map((k) => meetsConvex(otherFoot, k)));
  if (p.seated && "standing" in other.from && other.kind !== "dance-floor") taken.push(...p.toWall.map((k) => meetsConvex(otherFoot, k)));
  if (isSeatedTable(other) && p.item.kind === "table") taken.push(...reachOf(other, p.tableGap).map((k) => meetsConvex(k, p.foot)));
  if (isSeatedTable(other) && "standing" in p.item.from) taken.push(...reachOf(other, p.wallGap).map((k) => meetsConvex(k, p.foot)));
  return union(taken);
});

/**
 * Every spot in a room where the piece, turned as it is, keeps off walls, pieces, doors and gaps in all the given parts of the day.
 * Exact for straight sides; rounds are taken a hair larger. Ways and routes are judged apart.
 */
export function freeRegion(venue: Venue, scenes: readonly Scene[], item: Item, room: string): Region {
  const p = probeOf(venue, item, room), wide = boxOf([...p.body, ...p.toTable.flat()]);
  const reach = Math.max(wide.maxX - wide.minX, wide.maxY - wide.minY);
  let free: Region | null = null;
  for (const scene of scenes) {
    const site = siteFor(venue, scene.drapes), own = site.rooms.get(room);
    if (!own) return [];
    const floorBox = boxOf(own.floor.flatMap((f) => f.outer));
    const others = piecesOnFloor(site, scene).filter((o) => o.id !== item.id && levelOf(site, o.room) === own.room.level && boxesNear(boxOf(footprintPolygon(o)), floorBox, reach));
    const left = minus(own.floor, uniteAll([builtOver(site, own, scene, p), ...others.map((o) => takenBy(o, p))]));
    free = free === null ? left : minus(left, minus(left, free));
  }
  return free ?? [];
}

const AROUND: readonly Point[] = [[0, 0], [1, 0], [0, 1], [1, 1]];
/** The whole-millimetre point of a region nearest to a point, of the four about it; the rounded one where none lies in it. */
function whole(region: Region, p: Point): Point {
  const low: Point = [Math.floor(p[0]), Math.floor(p[1])];
  const four = AROUND.map((a) => add(low, a)).sort((a, b) => distance(a, p) - distance(b, p));
  return four.find((q) => regionContains(region, q)) ?? [Math.round(p[0]), Math.round(p[1])];
}

export type Near = { readonly at: Point; readonly far: number };

/** Spots of a region, nearest to a point first: its own nearest point, then others at least `apart` mm from those before. */
export function nearestSpots(region: Region, from: Point, { apart, most }: { readonly apart: number; readonly most: number }): readonly Near[] {
  const all: Near[] = [];
  const put = (at: Point): void => void all.push({ at, far: distance(at, from) });
  if (regionContains(region, from)) put(from);
  for (const piece of region) {
    for (const ring of [piece.outer, ...piece.holes]) for (const e of edges(ring)) {
      put(nearestOnSegment(from, e));
      put(e[0]);
    }
    // Spots inside, for what the edges of the region do not show: a way out may run along them.
    const { minX, minY, maxX, maxY } = piece.box;
    const step = Math.max(250, Math.sqrt(((maxX - minX) * (maxY - minY)) / 600));
    for (let x = minX + step / 2; x < maxX; x += step) for (let y = minY + step / 2; y < maxY; y += step) if (regionContains([piece], [x, y])) put([x, y]);
  }
  all.sort((a, b) => a.far - b.far || a.at[0] - b.at[0] || a.at[1] - b.at[1]);
  const out: Near[] = [];
  for (const n of all) {
    if (out.length >= most) break;
    if (out.every((o) => distance(o.at, n.at) >= apart)) out.push({ at: whole(region, n.at), far: n.far });
  }
  return out;
}
