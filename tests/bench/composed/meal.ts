import type { Brief } from "../../../lib/brief";
import { add, area, boxOf, clearance, distance, intersect, rectangle, regionArea, scale, subtract, turn, union, type Point, type Polygon } from "../../../lib/geometry";
import { depthOf, footprint, footprintPolygon, widthOf, type Item, type Layout, type Scene } from "../../../lib/layout";
import { axisOf, gatesToKeep, siteOf, type Room, type Venue } from "../../../lib/venue";

/*
 * What an eye finds wrong with the meal of a plan, as geometry. All of it is common practice, no source: nothing here breaks a rule, and a
 * crowded room may have to show some of it.
 */

/** On one line, mm. Fewest tables that make a line to the eye; in a room of so few, two do. */
const ON = 60, LINE = 3, FEW = 5;
/** The share of a room's tables that may stand off every line. */
const STRAY = 0.2;
/** Free way between the couple's table and the dance floor, mm: people walk there. */
const LANE = 1_200;
/** How deep the way in before a door is, mm. */
const WAY_IN = 1_800;
/** A bar this near to music, edge to edge, is squeezed against it, mm. */
const SQUEEZED = 1_500;
/** A queue before a bar or a buffet, mm deep, and how far it spreads beside it. */
const QUEUE = 1_800, SPREAD = 300;
/** Free floor on one side that the other lacks, mm. */
const LOPSIDED = 3_000;
/** A joined form may miss the line that it should be true to by this, mm. */
const TRUE = 150;

const SERVED: ReadonlySet<string> = new Set(["bar", "buffet"]), MUSIC: ReadonlySet<string> = new Set(["dj", "band"]);

/** Tables that touch, as one body. */
function bodies(tables: readonly Item[]): readonly (readonly Item[])[] {
  const of = tables.map((_, i) => i), shapes = tables.map(footprint);
  shapes.forEach((a, i) => shapes.forEach((b, j) => {
    if (j <= i || of[i] === of[j] || "diameter" in (tables[i] as Item).shape || "diameter" in (tables[j] as Item).shape || clearance(a, b) > 5) return;
    const [x, y] = [of[i], of[j]];
    of.forEach((g, k) => { if (g === y) of[k] = x as number; });
  }));
  return [...new Set(of)].map((g) => tables.filter((_, i) => of[i] === g));
}

const boxIn = (items: readonly Item[], axis: number) => boxOf(items.flatMap((i) => footprintPolygon(i)).map((p) => turn(p, -axis)));
const middleIn = (items: readonly Item[], axis: number): Point => { const b = boxIn(items, axis); return [(b.minX + b.maxX) / 2, (b.minY + b.maxY) / 2]; };

/**
 * "tables in no line": more than a fifth of a room's bodies (single tables, or joined ones as one) have no two others with their middles
 * on one line with theirs, along the room's axes or at 45 degrees to them, in a room of four bodies and more; unless each has its mirror
 * image about the line on which the couple look, or about a middle line of all.
 */
function inNoLine(tables: readonly Item[], axis: number, top: Item | undefined): boolean {
  const at = bodies(tables).map((b) => middleIn(b, axis));
  if (at.length < 4) return false;
  const wanted = at.length <= FEW ? 1 : LINE - 1;
  const lines: readonly ((p: Point) => number)[] = [([x]) => x, ([, y]) => y, ([x, y]) => (x + y) * Math.SQRT1_2, ([x, y]) => (x - y) * Math.SQRT1_2];
  const stray = at.filter((p) => lines.every((l) => at.filter((q) => q !== p && Math.abs(l(q) - l(p)) <= ON).length < wanted));
  return stray.length > STRAY * at.length && !mirrored(at, axis, top);
}

function mirrored(at: readonly Point[], axis: number, top: Item | undefined): boolean {
  const box = boxOf(at), seat = top ? turn(top.at, -axis) : null, level = top ? Math.abs(((((top.angle - axis) % 180) + 270) % 180) - 90) < 45 : null;
  const abouts: readonly (readonly [0 | 1, number])[] = seat ? [level ? [0, seat[0]] : [1, seat[1]]] : [[0, (box.minX + box.maxX) / 2], [1, (box.minY + box.maxY) / 2]];
  return abouts.some(([k, m]) => at.every((p) => { const q: Point = k === 0 ? [2 * m - p[0], p[1]] : [p[0], 2 * m - p[1]]; return at.some((o) => distance(o, q) <= ON); }));
}

/** The floor before a piece's front, of a depth in mm. */
const before = (i: Item, deep: number): Polygon => rectangle(add(i.at, turn([0, depthOf(i.shape) / 2 + deep / 2], i.angle)), widthOf(i.shape) + 2 * SPREAD, deep, i.angle);
const overlap = (a: Polygon, b: Polygon): boolean => regionArea(intersect(union([a]), [b])) > 1e4;

/** "dance floor hard by the top table": less than 1200 mm between them, before the couple or beside them. */
const hardBy = (floor: Item, tops: readonly Item[]): boolean => tops.some((t) => t.room === floor.room && clearance(footprint(t), footprint(floor)) < LANE);

/** "dance floor before a door": it lies in the strip, as wide as the door and 1800 mm deep, inside a door that guests come through or flee by. */
function beforeDoor(venue: Venue, scene: Scene, floor: Item): boolean {
  const gates = gatesToKeep(siteOf(venue, scene.drapes), floor.room, scene.rooms).filter((g) => g.door.for.includes("guests"));
  return gates.some((g) => {
    const along = (Math.atan2(g.to[1] - g.from[1], g.to[0] - g.from[0]) * 180) / Math.PI;
    return overlap(rectangle(add(g.at, scale(g.inward, WAY_IN / 2)), g.width, WAY_IN, along), footprintPolygon(floor));
  });
}

/** "bar against music": less than 1500 mm between a bar and a band or DJ. */
const againstMusic = (here: readonly Item[]): boolean =>
  here.some((b) => b.kind === "bar" && here.some((m) => MUSIC.has(m.kind) && clearance(footprint(b), footprint(m)) < SQUEEZED));

/** "queues meet": the strips, 1800 mm deep and 300 mm broader at either end, where people queue before a bar and a buffet lie over one another, or one reaches the other piece. */
function queuesMeet(here: readonly Item[]): boolean {
  const served = here.filter((i) => SERVED.has(i.kind));
  return served.some((a, i) => served.slice(i + 1).some((b) =>
    overlap(before(a, QUEUE), before(b, QUEUE)) || overlap(before(a, QUEUE), footprintPolygon(b)) || overlap(before(b, QUEUE), footprintPolygon(a))));
}

/**
 * How deep the floor beside a block is free on one side, mm: the deepest strip as broad as the block that lies on the room's floor for nine
 * tenths and meets none of the big pieces.
 */
function freeBeside(room: Room, big: readonly Item[], block: ReturnType<typeof boxOf>, side: readonly [0 | 1, -1 | 1]): number {
  const axis = axisOf(room.outline), [k, to] = side, solid = room.obstacles.map((o) => o.outline);
  let deep = 0;
  for (let d = 250; d <= 30_000; d += 250) {
    const from = k === 0 ? (to < 0 ? block.minX - d : block.maxX) : to < 0 ? block.minY - d : block.maxY;
    const strip: Polygon = (k === 0 ? [[from, block.minY], [from + d, block.minY], [from + d, block.maxY], [from, block.maxY]] : [[block.minX, from], [block.maxX, from], [block.maxX, from + d], [block.minX, from + d]] as Point[])
      .map((p) => turn(p as Point, axis));
    if (big.some((i) => overlap(strip, footprintPolygon(i))) || regionArea(subtract(intersect(union([strip]), [room.outline]), solid)) < 0.9 * area(strip)) break;
    deep = d;
  }
  return deep;
}

/**
 * "tables to one side": across the line on which the couple look (along either axis of the room, where there is no couple's table) the
 * free floor on one side of the block of tables is over 3 m deeper than on the other. Displays at the walls are not counted as pieces.
 */
function toOneSide(room: Room, here: readonly Item[], tables: readonly Item[], top: Item | undefined): boolean {
  if (tables.length < 2) return false;
  const axis = axisOf(room.outline), all = here.filter((i) => i.seats.length > 0 && i.role !== "work"), block = boxIn(all, axis);
  const big = here.filter((i) => !all.includes(i) && (SERVED.has(i.kind) || MUSIC.has(i.kind) || i.kind === "dance-floor" || i.kind === "lounge"));
  const level = top ? Math.abs(((((top.angle - axis) % 180) + 270) % 180) - 90) < 45 : null;
  const sides = (k: 0 | 1): boolean => Math.abs(freeBeside(room, big, block, [k, -1]) - freeBeside(room, big, block, [k, 1])) > LOPSIDED;
  return level === null ? sides(0) || sides(1) : sides(level ? 0 : 1);
}

/** "joined form off the line": tables joined crosswise into one form whose middle misses both the line on which the couple look and the room's own middle by over 150 mm. */
function formOff(room: Room, tables: readonly Item[], top: Item | undefined): boolean {
  const [form, ...more] = bodies(tables), axis = axisOf(room.outline);
  if (!form || more.length > 0 || new Set(form.map((i) => i.angle % 180)).size < 2) return false;
  const m = middleIn(form, axis), box = boxOf(room.outline.map((p) => turn(p, -axis)));
  const seat = top ? turn(top.at, -axis) : null, level = top ? Math.abs(((((top.angle - axis) % 180) + 270) % 180) - 90) < 45 : null;
  const off = [m[0] - (box.minX + box.maxX) / 2, m[1] - (box.minY + box.maxY) / 2].map(Math.abs) as [number, number];
  return seat ? Math.min(off[level ? 0 : 1], Math.abs(m[level ? 0 : 1] - seat[level ? 0 : 1])) > TRUE : Math.min(...off) > TRUE;
}

export const MEAL_FAULTS = [
  "tables in no line", "dance floor hard by the top table", "dance floor before a door", "bar against music", "bar and buffet queues meet", "tables to one side", "joined form off the line",
] as const;
export type MealFault = (typeof MEAL_FAULTS)[number];

/** What an eye finds wrong with a layout's meal, and with the floor on which people dance after it, each name once; the functions above say what they mean. */
export function mealFaults(venue: Venue, _brief: Brief, layout: Layout): readonly MealFault[] {
  const found = new Set<MealFault>();
  for (const scene of layout.scenes.filter((s) => s.id === "meal" || s.id === "dancing")) for (const floor of scene.items.filter((i) => i.kind === "dance-floor")) {
    if (hardBy(floor, scene.items.filter((i) => i.role === "top"))) found.add("dance floor hard by the top table");
    if (beforeDoor(venue, scene, floor)) found.add("dance floor before a door");
  }
  const scene = layout.scenes.find((s) => s.id === "meal");
  if (!scene) return [...found];
  for (const id of scene.rooms) {
    const room = siteOf(venue, scene.drapes).rooms.get(id)?.room;
    if (!room) continue;
    const here = scene.items.filter((i) => i.room === id), tables = here.filter((i) => i.role === "dining" && i.seats.length > 0), tops = here.filter((i) => i.role === "top");
    const top = tops[Math.floor(tops.length / 2)], axis = axisOf(room.outline);
    const say = (fault: MealFault, is: boolean): void => { if (is) found.add(fault); };
    say("tables in no line", inNoLine(tables, axis, top));
    say("bar against music", againstMusic(here));
    say("bar and buffet queues meet", queuesMeet(here));
    say("tables to one side", toOneSide(room, here, tables, top));
    say("joined form off the line", formOff(room, tables, top));
  }
  return [...found];
}
