import { add, boxesNear, boxOf, distance, edges, scale, segmentClearance, segmentDistance, turn, type Point } from "../geometry";
import { depthOf, isRound, widthOf, type Item, type Scene } from "../layout";
import { levelOf } from "../venue";
import { placed, type Context, type Raw, type SceneView } from "./context";
import { wallsNear } from "./facing";
import { onAisles } from "./maps";
import { near } from "./near";
import { isRowChair, isSeatedTable, isSolid, quickMap, quickRoutes, routes, wideSpots, type FloorMap } from "./ways";

/** A route that turns about a thing narrower than 48 in: 42 in on either side and 48 at the turn, or 60 at the turn. 2010 ADA Standards 403.5.2, mm. */
const THIN = 1219, SIDE = 1067, AT_TURN = 1219, WIDE_TURN = 1525;
/** A route narrower than 60 in has a place to pass of 60 by 60 in at most every 200 ft. 2010 ADA Standards 403.5.3, mm. */
const PASSING = 1525, EVERY = 60_960;

type End = { readonly item: Item; readonly at: Point; readonly out: Point; readonly gap: number; readonly sides: readonly [number, number] };

/** A bar of floor from a point outwards that nobody walks across. */
const bar = (from: Point, out: Point, { long, room }: { readonly long: number; readonly room: string }): Item => ({
  id: "bar", kind: "screen", label: "", room, from: { brought: true }, shape: { width: Math.max(1, Math.ceil(long)), depth: 1 },
  at: add(from, scale(out, long / 2)), angle: (Math.atan2(out[1], out[0]) * 180) / Math.PI, seats: [],
});

/** How much floor lies free from a point outwards, to a wall, a piece or the line of a laid table; no more than is asked about. */
function freeAhead(v: SceneView, c: Context, { item, from, out, most }: { readonly item: Item; readonly from: Point; readonly out: Point; readonly most: number }): number {
  const room = v.site.rooms.get(item.room);
  const to = add(from, scale(out, most)), wide = c.values.tableLine;
  const around = { minX: Math.min(from[0], to[0]) - wide, maxX: Math.max(from[0], to[0]) + wide, minY: Math.min(from[1], to[1]) - wide, maxY: Math.max(from[1], to[1]) + wide };
  const bodies = near(v, around).filter((p) => p.is === "piece" && p.item !== item && isSolid(p.item) && p.item.room === item.room).map((p) => ({ shape: p.shape, line: isSeatedTable(p.item) ? wide : 0 }));
  const built = (room?.room.obstacles ?? []).flatMap((o) => [...edges(o.outline)]).filter((e) => boxesNear(boxOf(e), around, 0));
  const sides = [...built, ...(room ? wallsNear(room, around, 0) : [])];
  let lo = 0, hi = most;
  const meets = (d: number): boolean => {
    const line = [from, add(from, scale(out, d))] as const;
    return bodies.some((b) => segmentClearance(b.shape, line) <= b.line) || sides.some((s) => segmentDistance(line, s) === 0);
  };
  if (!meets(most)) return most;
  while (hi - lo > 1) { const m = (lo + hi) / 2; if (meets(m)) hi = m; else lo = m; }
  return Math.floor(hi);
}

/** The ends of thin things about which a route would be too narrow to turn. */
function tightEnds(v: SceneView, c: Context): readonly End[] {
  return v.scene.items.flatMap((item) => {
    const w = widthOf(item.shape), d = depthOf(item.shape);
    if (!isSolid(item) || isSeatedTable(item) || isRowChair(item) || Math.min(w, d) >= THIN) return [];
    const along = isRound(item.shape) ? [0, 90, 180, 270] : w >= d ? [0, 180] : [90, 270];
    return along.flatMap((a): readonly End[] => {
      const out = turn([1, 0], item.angle + a), side = turn([0, 1], item.angle + a), half = a % 180 === 0 ? w / 2 : d / 2, thick = a % 180 === 0 ? d / 2 : w / 2;
      const at = add(item.at, scale(out, half + 1));
      const gap = freeAhead(v, c, { item, from: at, out, most: WIDE_TURN });
      if (gap >= WIDE_TURN || gap < c.values.route - 1) return [];
      const beside = ([1, -1] as const).map((s) => freeAhead(v, c, { item, from: add(add(item.at, scale(out, Math.max(0, half - 200))), scale(side, s * (thick + 1))), out: scale(side, s), most: SIDE }));
      const sides = [beside[0] ?? 0, beside[1] ?? 0] as const;
      return gap >= AT_TURN - 1 && sides.every((s) => s >= SIDE - 1) ? [] : [{ item, at, out, gap, sides }];
    });
  });
}

/**
 * The route for wheelchairs where it turns back about the end of something thin, and places to pass on it: 2010 ADA Standards 403.5.2 and
 * 403.5.3. A turn is told only where no route does without it: with the floor at that end shut, or with that on either side, something
 * is reached no more. Written for what is built, so it is a should, and judged where the brief names guests in wheelchairs.
 */
export function routeTurns(v: SceneView, c: Context): readonly Raw[] {
  if (!c.brief || c.brief.guests.wheelchairs === 0) return [];
  return onAisles(v, c, (map) => [...turns(v, c, map), ...passing(v, c, map)]);
}

const reachedWith = (v: SceneView, c: Context, more: readonly Item[]): number => {
  const scene: Scene = { ...v.scene, items: [...v.scene.items, ...more] };
  return routes(v.site, v.scene, c.values, quickRoutes(v.site, scene, c.values)).unreached.length;
};

function turns(v: SceneView, c: Context, map: FloorMap): readonly Raw[] {
  const ends = tightEnds(v, c), before = routes(v.site, v.scene, c.values, map).unreached.length;
  const shut = (e: End): Item => bar(e.at, e.out, { long: e.gap, room: e.item.room });
  if (ends.length === 0 || reachedWith(v, c, ends.map(shut)) <= before) return [];
  return ends.flatMap((e): readonly Raw[] => {
    const side = turn(e.out, 90), inner = add(e.at, scale(e.out, -201));
    const bars = [shut(e), ...([1, -1] as const).map((s, k) => bar(inner, scale(side, s), { long: (e.sides[k] ?? 0) + Math.min(widthOf(e.item.shape), depthOf(e.item.shape)) / 2 + 1, room: e.item.room }))];
    if (!bars.every((b) => reachedWith(v, c, [b]) > before)) return [];
    const sides = Math.min(...e.sides), side1 = sides < SIDE - 1;
    return [{
      code: "route-turn", level: "should", source: "2010 ADA Standards 403.5.2", scene: v.scene.id, items: [e.item.id], at: placed(add(e.at, scale(e.out, e.gap / 2))),
      measured: e.gap, limit: side1 ? WIDE_TURN : AT_TURN, unit: "mm", data: { a: e.item.id, gap: e.gap, side: sides, turn: AT_TURN, beside: SIDE, wide: WIDE_TURN },
    }];
  });
}

function passing(v: SceneView, c: Context, map: FloorMap): readonly Raw[] {
  const places = v.scene.items.flatMap((item) => item.seats.flatMap((s) => (s.place === "wheelchair" ? [{ item, at: [s.x, s.y] as Point }] : [])));
  if (places.length === 0 || map.pieces.every((p) => p.exits.length === 0)) return [];
  const walker = { width: PASSING, tableLine: c.values.tableLine, doorWidth: c.values.routeDoor, walker: "wheels" } as const;
  // A spot that is as wide will mostly be found at once; only where none is found is the floor drawn.
  const spots = wideSpots(v.site, v.scene, walker, new Set(places.map(({ item }) => levelOf(v.site, item.room))));
  const doubtful = places.filter(({ item, at }) => { const spot = spots.get(levelOf(v.site, item.room)); return !spot || distance(spot, at) > EVERY; });
  if (doubtful.length === 0) return [];
  const wide = quickMap(v.site, v.scene, walker);
  const far = doubtful.filter(({ item, at }) => !wide.pieces.some((p) => p.level === levelOf(v.site, item.room) && p.floor.within(at, EVERY)));
  const first = far[0];
  return first ? [{
    code: "route-passing", level: "should", source: "2010 ADA Standards 403.5.3", scene: v.scene.id, items: [...new Set(far.map((f) => f.item.id))], at: placed(first.at), limit: PASSING, unit: "mm",
    data: { a: first.item.id, wide: PASSING, every: EVERY },
  }] : [];
}
