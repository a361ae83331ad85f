import { add, boxesNear, boxOf, clearance, clockwise, middle, polygonShape, scale, segmentClearance, sub, turn, type Box, type Point, type Polygon } from "../geometry";
import { isRound, type Item } from "../layout";
import type { RoomSite } from "../venue";
import { placed, type Context, type Raw, type SceneView } from "./context";
import { seated, wallsNear } from "./facing";
import { clearOf } from "./meet";

/** Ends nearer than this are joined, mm. */
const JOINED = 5;

type End = { readonly table: Item; readonly box: Box; readonly edge: readonly [Point, Point]; readonly out: Point; readonly hasPlaces: boolean };

/** The two short edges of a long table that people sit at. */
export function endsOf(table: Item): readonly End[] {
  if (isRound(table.shape)) return [];
  const { width, depth } = table.shape;
  const alongX = width >= depth;
  const half = (alongX ? width : depth) / 2, across = (alongX ? depth : width) / 2;
  const local = (p: Point): Point => (alongX ? p : [p[1], p[0]]);
  return ([1, -1] as const).map((s): End => {
    const corner = (k: number): Point => add(table.at, turn(local([s * half, k * across]), table.angle));
    const out = turn(local([s, 0]), table.angle);
    const edge = [corner(-1), corner(1)] as const;
    const at = middle(edge[0], edge[1]);
    const hasPlaces = table.seats.some((seat) => {
      const d = sub([seat.x, seat.y], at), along = d[0] * out[0] + d[1] * out[1], side = Math.abs(d[0] * out[1] - d[1] * out[0]);
      return along > 0 && side <= across + 1;
    });
    return { table, box: boxOf(edge), edge, out, hasPlaces };
  });
}

const ENDS = new WeakMap<Item, readonly End[]>();
const endsKnown = (table: Item): readonly End[] => {
  const known = ENDS.get(table) ?? endsOf(table);
  ENDS.set(table, known);
  return known;
};

const stripOf = (e: End, deep: number): Polygon => clockwise([e.edge[0], e.edge[1], add(e.edge[1], scale(e.out, deep)), add(e.edge[0], scale(e.out, deep))]);

/** An end without places: 450 mm from a wall or obstacle, 914 mm from an end that is not joined to it. */
export function ends(v: SceneView, c: Context): readonly Raw[] {
  const { endWall, endEnd } = c.values;
  const all = seated(v).flatMap(endsKnown);
  const out: Raw[] = [];
  const told = new Set<string>();
  for (const e of all.filter((x) => !x.hasPlaces)) {
    const room = v.site.rooms.get(e.table.room);
    if (!room) continue;
    const middleOut = placed(add(middle(e.edge[0], e.edge[1]), scale(e.out, 200)));
    const gap = wallKnown(e, room, endWall);
    if (gap < endWall - 1) out.push(endFinding(v, e, { code: "end-wall", gap, limit: endWall, other: null, at: middleOut }));
    for (const f of all) {
      if (f.table === e.table || f.table.room !== e.table.room || !boxesNear(e.box, f.box, endEnd) || e.out[0] * f.out[0] + e.out[1] * f.out[1] > -0.7) continue;
      const g = gapKnown(e, f, endEnd);
      if (g === Infinity) continue;
      const key = [e.table.id, f.table.id].sort().join("|");
      if (told.has(key)) continue;
      told.add(key);
      out.push(endFinding(v, e, { code: "end-end", gap: g, limit: endEnd, other: f.table.id, at: middleOut }));
    }
  }
  return out;
}

/** How far it is from an end to another that lies before it, nearer than asked and not joined to it; else Infinity. */
function gapBetween(e: End, f: End, endEnd: number): number {
  const g = clearance(polygonShape(stripOf(e, 1)), polygonShape(stripOf(f, 1))) + 2;
  return g < endEnd - 1 && g > JOINED + 2 && clearance(polygonShape(narrow(stripOf(e, endEnd))), polygonShape(stripOf(f, 1))) < 0 ? g : Infinity;
}

type Asked = { readonly asked: number; readonly gap: number };
/** What was measured between two that stand where they are: kept with the first, by the other. */
function measuredOnce<A extends object, B extends object>(measure: (a: A, b: B, asked: number) => number): (a: A, b: B, asked: number) => number {
  const all = new WeakMap<A, WeakMap<B, Asked>>();
  return (a, b, asked) => {
    const of = all.get(a) ?? new WeakMap<B, Asked>(), known = of.get(b);
    if (known?.asked === asked) return known.gap;
    const gap = measure(a, b, asked);
    all.set(a, of.set(b, { asked, gap }));
    return gap;
  };
}
const gapKnown = measuredOnce(gapBetween);

/** How far it is from an end to the wall or obstacle that stands nearer than asked; Infinity where none does. */
function wallBefore(e: End, room: RoomSite, endWall: number): number {
  // The end's own corners lie on its sides: a strip a little narrower keeps a wall beside the table out.
  const strip = polygonShape(narrow(stripOf(e, endWall - 1)));
  const walls = wallsNear(room, strip.box, 0).filter((w) => segmentClearance(strip, w) === 0);
  const built = room.room.obstacles.filter((o) => clearOf(strip, o.outline) < 0);
  if (walls.length === 0 && built.length === 0) return Infinity;
  const line = polygonShape(stripOf(e, 1));
  return Math.min(...walls.map((w) => segmentClearance(line, w)), ...built.map((o) => Math.max(0, clearOf(line, o.outline))));
}

/** Neither walls nor the end move. */
const wallKnown = measuredOnce(wallBefore);

function narrow(p: Polygon): Polygon {
  const c = middle(p[0] ?? [0, 0], p[2] ?? [0, 0]);
  return p.map((q) => add(c, scale(sub(q, c), 0.998)));
}

type EndGap = { readonly code: "end-wall" | "end-end"; readonly gap: number; readonly limit: number; readonly other: string | null; readonly at: Point };
const endFinding = (v: SceneView, e: End, g: EndGap): Raw => ({
  code: g.code, level: "must", source: "common practice, no source", scene: v.scene.id, items: g.other ? [e.table.id, g.other] : [e.table.id], at: placed(g.at),
  measured: Math.round(g.gap), limit: g.limit, unit: "mm", data: { a: e.table.id, gap: Math.round(g.gap), limit: g.limit, ...(g.other ? { b: g.other } : {}) },
});
