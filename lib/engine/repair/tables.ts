import { add, distance, sub, turn, type Point } from "../../geometry";
import { isRound, type Item, type Layout, type Scene, type SceneId } from "../../layout";
import { chairOf } from "../../rules";
import { axisOf, type Stock } from "../../venue";
import { seatsAround } from "../seating";
import { moveSeats } from "../seating/seats";
import { addPiece, freshId, mapPiece, sceneOf, standsAs } from "./edit";
import { addsNone, type Bench } from "./judge";
import { mayMove } from "./covers";
import { diningOf, limitsOf } from "./places";
import { freeRegion, nearestSpots } from "./region";
import { relocate } from "./relocate";

/** Spots judged for one new table. */
const SPOTS = 10;

/** Tables of the stock that people may sit at, and how many of each no part of the day uses. */
function spare(b: Bench, layout: Layout): readonly { readonly stock: Stock; readonly left: number }[] {
  const used = (id: string): number => Math.max(0, ...layout.scenes.map((s) => s.items.reduce((n, i) => n + ("stock" in i.from && i.from.stock === id ? (i.from.count ?? 1) : 0), 0)));
  const wanted = b.brief.meal.tables;
  return b.venue.stock.filter((s) => s.kind === "table" && s.seats && s.seats.most > 1 && (wanted === "any" || wanted === "mixed" || (wanted === "rounds") === isRound(s.shape)))
    .map((stock) => ({ stock, left: stock.count - used(stock.id) })).filter((s) => s.left > 0);
}

/** The parts of the day in which a room's dining tables stand as they stand at the meal. */
export function tableScenes(layout: Layout, room: string): readonly Scene[] {
  const tables = diningOf(layout).filter((t) => t.room === room);
  return layout.scenes.filter((s) => s.id === "meal" || s.items.some((i) => tables.some((t) => standsAs(i, t))));
}

export function newTable(b: Bench, layout: Layout, stock: Stock, how: { readonly places: number; readonly room: string; readonly at: Point; readonly angle: number; readonly like?: Item }): Item {
  const seats = seatsAround(stock.shape, how.places, { ends: stock.ends, chair: chairOf(b.venue) });
  const numbers = (sceneOf(layout, "meal")?.items ?? []).map((i) => Number(/^Table (\d+)$/.exec(i.label)?.[1] ?? 0));
  const n = Math.max(0, ...numbers) + 1;
  return {
    id: how.like?.id ?? freshId(layout, `t${n}`), kind: "table", role: how.like?.role ?? "dining", label: how.like?.label ?? `Table ${n}`, room: how.room, from: { stock: stock.id }, shape: stock.shape,
    at: how.at, angle: isRound(stock.shape) ? 0 : how.angle, seats: moveSeats(seats, how.at, isRound(stock.shape) ? 0 : how.angle),
  };
}

const numbered = (layout: Layout, id: string): Layout => ({ ...layout, scenes: layout.scenes.map((s) => (s.items.some((i) => i.id === id) && s.numbers.length > 0 && !s.numbers.includes(id) ? { ...s, numbers: [...s.numbers, id] } : s)) });

/** True in line with the tables that stand: the eye takes a new one for one of the row. */
function inLine(tables: readonly Item[], at: Point, axis: number): number {
  const local = turn(at, -axis);
  return tables.reduce((n, t) => { const o = turn(t.at, -axis); return n + (Math.abs(o[0] - local[0]) < 2 ? 1 : 0) + (Math.abs(o[1] - local[1]) < 2 ? 1 : 0); }, 0);
}

/** One more table, laid for up to `need` and at least two, in floor that is free; null where none fits. */
export function addTable(b: Bench, layout: Layout, need: number): Layout | null {
  const meal = sceneOf(layout, "meal");
  if (!meal) return null;
  const rooms = [...new Set(diningOf(layout).map((t) => t.room))];
  const enough = (s: Stock, per: "comfort" | "most"): number => Math.min(need, s.seats?.[per] ?? 0);
  const kinds = [...spare(b, layout)].sort((x, y) => enough(y.stock, "most") - enough(x.stock, "most") || enough(y.stock, "comfort") - enough(x.stock, "comfort") || y.left - x.left || (x.stock.id < y.stock.id ? -1 : 1));
  for (const { stock } of kinds) for (const room of rooms) {
    const own = b.venue.rooms.find((r) => r.id === room);
    const axis = own ? axisOf(own.outline) : 0;
    const asked = b.brief.meal.perTable;
    const most = Math.min(stock.seats?.most ?? 0, typeof asked === "number" ? asked : Infinity);
    const sizes = [...new Set([Math.max(2, Math.min(need, most)), Math.max(2, Math.min(need, stock.seats?.comfort ?? 2))])];
    const tables = diningOf(layout).filter((t) => t.room === room);
    for (const places of sizes) for (const angle of isRound(stock.shape) ? [0] : [axis, axis + 90]) for (const scenes of sceneChoices(layout, room)) {
      const probe = newTable(b, layout, stock, { places, room, at: [0, 0], angle });
      const region = freeRegion(b.venue, scenes, probe, room);
      if (region.length === 0) continue;
      const corner = (t: Item): readonly Point[] => tables.filter((o) => o !== t).map((o): Point => add(turn([turn(t.at, -axis)[0], turn(o.at, -axis)[1]], axis), [0, 0]));
      const crossings = tables.slice(0, 12).flatMap(corner);
      const aims = [...crossings, ...tables.slice(0, 8).map((t) => t.at)];
      const spots = [...new Map(aims.flatMap((p) => nearestSpots(region, p, { apart: 200, most: 3 })).map((n) => [n.at.join(), n.at])).values()]
        .sort((p, q) => inLine(tables, q, axis) - inLine(tables, p, axis) || near(tables, p) - near(tables, q) || p[0] - q[0] || p[1] - q[1]);
      // Beyond what is in line, any free floor does.
      const rest = nearestSpots(region, tables[0]?.at ?? [0, 0], { apart: 500, most: SPOTS }).map((n) => n.at);
      for (const at of [...spots.slice(0, SPOTS), ...rest]) {
        if (b.budget.left <= 0) return null;
        const table = newTable(b, layout, stock, { places, room, at, angle: ((angle % 360) + 360) % 360 });
        const next = addPiece(layout, table, new Set(scenes.map((s): SceneId => s.id)));
        if (addsNone(b, layout, next, (f) => f.items.includes(table.id))) return numbered(next, table.id);
      }
    }
  }
  return null;
}
const near = (tables: readonly Item[], p: Point): number => Math.min(Infinity, ...tables.map((t) => distance(t.at, p)));

/** A new table stands whenever the room's tables do; where the floor is laid after the meal, at the meal alone. */
function sceneChoices(layout: Layout, room: string): readonly (readonly Scene[])[] {
  const all = tableScenes(layout, room), meal = all.filter((s) => s.id === "meal");
  const struck = all.length > meal.length && diningOf(layout).filter((t) => t.room === room).some((t) => all.some((s) => !s.items.some((i) => standsAs(i, t))));
  return struck ? [all, meal] : [all];
}

/** A table in the place of another that seats more: one goes, one comes. */
export function swapTable(b: Bench, layout: Layout, need: number): Layout | null {
  const kinds = spare(b, layout);
  for (const t of [...diningOf(layout)].filter((i) => mayMove(b, i) && i.role === "dining" && !i.seats.some((s) => s.place === "wheelchair"))) {
    for (const { stock } of kinds) {
      const places = Math.min(stock.seats?.most ?? 0, t.seats.length + need);
      if (places < t.seats.length + need || ("stock" in t.from && t.from.stock === stock.id) || limitsOf(b, t).most >= places) continue;
      const table = newTable(b, layout, stock, { places, room: t.room, at: t.at, angle: t.angle, like: t });
      const next = mapPiece(layout, t, () => table);
      if (addsNone(b, layout, next, (f) => f.items.includes(t.id))) return next;
      const settled = relocate(b, next, table);
      if (settled && addsNone(b, layout, settled, (f) => f.items.includes(t.id))) return settled;
    }
  }
  return null;
}

/** Moves one table aside so that another finds floor: the pieces nearest to free floor first. */
export function makeRoom(b: Bench, layout: Layout, need: number): Layout | null {
  const kinds = spare(b, layout);
  if (kinds.length === 0) return null;
  for (const t of diningOf(layout).filter((i) => mayMove(b, i))) {
    const scenes = tableScenes(layout, t.room);
    const region = freeRegion(b.venue, scenes, t, t.room);
    // Far corners of its own free floor: where it gives up the most of the floor it stands on.
    const spots = nearestSpots(region, t.at, { apart: 500, most: 30 }).filter((n) => n.far > 100).reverse().slice(0, 4);
    for (const s of spots) {
      if (b.budget.left <= 0) return null;
      const by = sub(s.at, t.at);
      const next = mapPiece(layout, t, (i) => ({ ...i, at: s.at, seats: i.seats.map((p) => ({ ...p, x: p.x + by[0], y: p.y + by[1] })) }));
      if (!addsNone(b, layout, next, (f) => f.items.includes(t.id))) continue;
      const done = addTable(b, next, need);
      if (done) return done;
    }
  }
  return null;
}
