import { footprint, isRound, type Item, type Scene } from "../../layout";
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
const TOUCHING = 0.5;

/** Runs of row chairs that stand side by side, touching (or with no more than so many mm between) and true to one line, from left to right of the sitters' fronts. */
export function runsOf(items: readonly Item[], apart = TOUCHING): readonly (readonly Item[])[] {
  const rows = new Map<string, { readonly item: Item; readonly along: number; readonly width: number }[]>();
  for (const item of items) {
    if (!isRowChair(item) || isRound(item.shape)) continue;
    const local = turn(item.at, -item.angle);
    const key = [item.room, item.angle, item.shape.width, item.shape.depth, Math.round(local[1] * 10)].join("/");
    const row = rows.get(key) ?? [];
    row.push({ item, along: local[0], width: item.shape.width });
    rows.set(key, row);
  }
  return [...rows.values()].flatMap((row) => {
    const runs: Item[][] = [];
    let last = -Infinity;
    for (const c of row.sort((a, b) => a.along - b.along)) {
      if (c.along - last > c.width + apart) runs.push([]);
      runs.at(-1)?.push(c.item);
      last = c.along;
    }
    return runs;
  });
}

/** The same items with each run of chairs that touch, or stand no farther apart than asked, as one long piece: the same floor with a tenth of the corners. */
export function joinedRows(items: readonly Item[], apart = TOUCHING): readonly Item[] {
  const runs = runsOf(items, apart);
  const joined = new Set(runs.flat());
  return [...items.filter((i) => !joined.has(i)), ...runs.flatMap((run): readonly Item[] => {
    const first = run[0], last = run.at(-1);
    if (!first || !last || isRound(first.shape)) return run;
    const { width, depth } = first.shape;
    return [{ ...first, at: middle(first.at, last.at), shape: { width: distance(first.at, last.at) + width, depth }, seats: [] }];
  })];
}
