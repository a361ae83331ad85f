import { depthOf, footprint, isRound, widthOf, type Item, type Scene } from "../../layout";
import { contains, distance, middle, segmentClearance, turn, type Point, type Shape } from "../../geometry";
import type { Site, Standing } from "../../venue";

/** A standing piece where the venue keeps it, as an item. */
export function standingItem(room: string, s: Standing): Item {
  const kind = s.kind === "stage" ? "other" : s.kind;
  return { id: s.id, kind, label: s.name, room, from: { standing: s.id }, shape: s.shape, at: s.at, angle: s.angle, seats: [] };
}

/** Everything on the floors: the scene's items, and in rooms that the scene does not use what stands there always. */
export function piecesOnFloor(site: Site, scene: Pick<Scene, "rooms" | "items">): readonly Item[] {
  const listed = new Set(scene.items.flatMap((i) => ("standing" in i.from ? [i.from.standing] : [])));
  const left: Item[] = [];
  for (const { room } of site.rooms.values()) {
    if (scene.rooms.includes(room.id)) continue;
    // What stood where a drape now hangs belongs to the scene: not listed, it has been carried out.
    const lent = site.drapes.filter((d) => d.from === room.id);
    for (const s of room.standing) if (!listed.has(s.id) && !lent.some((d) => contains(d.area, s.at))) left.push(standingItem(room.id, s));
  }
  return left.length === 0 ? scene.items : [...scene.items, ...left];
}

export const isWheelchairSpace = (i: Item): boolean => i.kind === "other" && i.role === "wheelchair-space";
/** People walk over a dance floor and across a wheelchair's place; an arch is walked round, as its posts and base stand in the way. */
export const isSolid = (i: Item): boolean => i.kind !== "dance-floor" && !isWheelchairSpace(i);
/** A table that people sit at: its line lies 19 in out. */
export const isSeatedTable = (i: Item): boolean => i.kind === "table" && i.seats.length > 0;
/** A chair of a row: it carries its own seat; a chair without one is a piece like others. */
export const isRowChair = (i: Item): boolean => i.kind === "chair" && i.seats.length > 0;

export type Body = { readonly item: Item; readonly shape: Shape };
export const bodiesOf = (items: readonly Item[]): readonly Body[] => items.filter(isSolid).map((item) => ({ item, shape: footprint(item) }));

/** Side of a cell in which bodies are looked up, mm. */
const CELL = 1500;
const cellOf = (mm: number): number => Math.floor(mm / CELL);
/** One number a cell: the plan reaches 1,000 m either way. */
const cellKey = (x: number, y: number): number => x * 4096 + y;

const NOTHING: readonly Body[] = [];

/** Bodies by cells of floor, to be asked whether a straight walk meets one (mm of touching let go). */
export function inTheWay(bodies: readonly Body[]): (walk: readonly [Point, Point], except: Item | null) => boolean {
  const cells = new Map<number, Body[]>();
  for (const b of bodies) {
    const { minX, maxX, minY, maxY } = b.shape.box;
    for (let x = cellOf(minX); x <= cellOf(maxX); x++) for (let y = cellOf(minY); y <= cellOf(maxY); y++) {
      const k = cellKey(x, y), list = cells.get(k);
      if (list) list.push(b); else cells.set(k, [b]);
    }
  }
  return (walk, except) => {
    const minX = Math.min(walk[0][0], walk[1][0]), maxX = Math.max(walk[0][0], walk[1][0]);
    const minY = Math.min(walk[0][1], walk[1][1]), maxY = Math.max(walk[0][1], walk[1][1]);
    for (let x = cellOf(minX); x <= cellOf(maxX); x++) for (let y = cellOf(minY); y <= cellOf(maxY); y++) {
      for (const { item, shape } of cells.get(cellKey(x, y)) ?? NOTHING) {
        if (item !== except && shape.box.minX <= maxX && shape.box.maxX >= minX && shape.box.minY <= maxY && shape.box.maxY >= minY && segmentClearance(shape, walk) <= 0.01) return true;
      }
    }
    return false;
  };
}

/** How far apart chairs of one row may stand and still touch, mm. */
export const TOUCHING = 0.5;

/** Where a chair of a row stands: its row, how far along it, and how wide it is. */
type InRow = { readonly row: string; readonly along: number; readonly width: number };
const places = new WeakMap<Item, InRow | null>();

/** Null for what is no chair of a straight row. Kept with the item. */
function inRow(item: Item): InRow | null {
  const known = places.get(item);
  if (known !== undefined) return known;
  const place = placeInRow(item);
  places.set(item, place);
  return place;
}

function placeInRow({ shape, at, angle, room, ...item }: Item): InRow | null {
  if (item.kind !== "chair" || item.seats.length === 0 || isRound(shape)) return null;
  const local = turn(at, -angle);
  return { row: [room, angle, shape.width, shape.depth, Math.round(local[1] * 10)].join("/"), along: local[0], width: shape.width };
}

/** Runs of row chairs that stand side by side, touching (or with no more than so many mm between) and true to one line, from left to right of the sitters' fronts. */
export function runsOf(items: readonly Item[], apart = TOUCHING): readonly (readonly Item[])[] {
  const rows = new Map<string, { readonly item: Item; readonly place: InRow }[]>();
  for (const item of items) {
    const place = inRow(item);
    if (!place) continue;
    const row = rows.get(place.row);
    if (row) row.push({ item, place }); else rows.set(place.row, [{ item, place }]);
  }
  return [...rows.values()].flatMap((row) => {
    const runs: Item[][] = [];
    let last = -Infinity;
    for (const { item, place } of row.sort((a, b) => a.place.along - b.place.along)) {
      if (place.along - last > place.width + apart) runs.push([]);
      runs.at(-1)?.push(item);
      last = place.along;
    }
    return runs;
  });
}

/** The same items with each run of chairs that touch, or stand no farther apart than asked, as one long piece: the same floor with a tenth of the corners. */
export function joinedRows(items: readonly Item[], apart = TOUCHING): readonly Item[] {
  const runs = runsOf(items, apart);
  const joined = new Set(runs.flat());
  return [...items.filter((i) => !joined.has(i)), ...runs.flatMap(asOne)];
}

type Joined = { readonly run: readonly Item[]; readonly item: Item };
const joined = new WeakMap<Item, Joined[]>(), runs = new WeakMap<Item, readonly Item[]>();
/** Runs kept for the chair that they begin with. */
const KEPT = 3;

/** A run of chairs as one piece: the same object for the same chairs. */
function asOne(run: readonly Item[]): readonly Item[] {
  const first = run[0], last = run.at(-1);
  if (!first || !last) return run;
  const of = joined.get(first) ?? [], known = of.find((j) => j.run.length === run.length && j.run.every((i, k) => i === run[k]));
  joined.set(first, of);
  if (known) return [known.item];
  const item = { ...first, at: middle(first.at, last.at), shape: { width: distance(first.at, last.at) + widthOf(first.shape), depth: depthOf(first.shape) }, seats: [] };
  if (of.length >= KEPT) of.shift();
  of.push({ run, item });
  runs.set(item, run);
  return [item];
}

/** The chairs that a piece was joined from. */
export const chairsOf = (item: Item): readonly Item[] => runs.get(item) ?? [];
