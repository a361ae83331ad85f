import { add, scale } from "../../geometry";
import type { Item, Layout, SceneId } from "../../layout";
import { axisOf } from "../../venue";
import { siteFor, standingItem } from "../../rules";
import { seatRows } from "../rows";
import { seatTables, type SeatingSpace } from "../seating";
import { eases, familiesOf, gapsOf, type Context } from "../stages/context";
import { drapedFloor } from "../stages/draped";
import { footprintPolygon } from "../../layout";
import { addPiece, freshId, mapPiece, sceneOf } from "./edit";
import { mustsOf, type Bench } from "./judge";
import { mayMove } from "./covers";
import { tableScenes } from "./tables";

/** Dining tables that may be laid anew; the couple's table stays where it stands. */
const free = (b: Bench, i: Item): boolean => i.kind === "table" && i.role === "dining" && i.seats.length > 0 && "stock" in i.from && mayMove(b, i);

/**
 * The meal's tables of one room laid anew round what is fixed and whatever else stands there. Several ways, fullest first; none
 * where the room is not used for the meal.
 */
export function reseatMeal(b: Bench, ctx: Context, layout: Layout): readonly Layout[] {
  const meal = sceneOf(layout, "meal");
  const rooms = [...new Set(meal?.items.filter((i) => free(b, i)).map((i) => i.room) ?? [])];
  return rooms.flatMap((room) => reseatRoom(b, ctx, layout, room));
}

function reseatRoom(b: Bench, ctx: Context, layout: Layout, room: string): readonly Layout[] {
  const meal = sceneOf(layout, "meal");
  if (!meal) return [];
  const f = drapedFloor(siteFor(b.venue, meal.drapes), room);
  if (!f) return [];
  const going = meal.items.filter((i) => i.room === room && free(b, i));
  const scenes = tableScenes(layout, room);
  const bare = going.reduce((l, t) => mapPiece(l, t, () => null), layout);
  const stay = sceneOf(bare, "meal")?.items ?? [];
  const here = stay.filter((i) => i.room === room);
  const seated = here.filter((i) => i.kind === "table" && i.seats.length > 0);
  const others = here.filter((i) => !seated.includes(i));
  const taken = new Map<string, number>();
  for (const i of stay) if ("stock" in i.from) taken.set(i.from.stock, (taken.get(i.from.stock) ?? 0) + (i.from.count ?? 1));
  const guests = b.brief.guests.adults + b.brief.guests.children;
  const need = Math.max(0, guests - stay.filter((i) => i.role !== "work").reduce((n, i) => n + i.seats.length, 0));
  const chairsTaken = stay.reduce((n, i) => n + i.seats.filter((s) => s.place === "chair").length, 0);
  const wheels = Math.max(0, b.brief.guests.wheelchairs - stay.reduce((n, i) => n + i.seats.filter((s) => s.place === "wheelchair").length, 0));
  const space: SeatingSpace = {
    room, floor: f.floor, axis: axisOf(f.room.outline), fixed: seated,
    solids: [...f.room.obstacles.map((o) => o.outline), ...others.filter((i) => i.kind !== "dance-floor").map(footprintPolygon)],
    zones: [...f.room.keepClear.map((k) => ({ polygon: k.outline, tableClear: 0 })), ...f.doorFloor.map((polygon) => ({ polygon, tableClear: 0 })),
      ...others.filter((i) => i.kind === "dance-floor").map((i) => ({ polygon: footprintPolygon(i), tableClear: 483 }))],
    exits: f.gates.map((g) => add(g.at, scale(g.inward, 700))),
  };
  const families = familiesOf(b.venue, taken).map((s) => ({ stock: s.id, name: s.name, shape: s.shape, count: s.left, places: s.seats ?? { comfort: 0, most: 0 }, ends: s.ends, joins: s.joins }));
  const out: Layout[] = [];
  for (const ease of eases(b.brief)) {
    const plans = seatTables(space, {
      places: need, families, gaps: gapsOf(ctx.values, ease.gaps), perTable: ease.perTable, tables: b.brief.meal.tables, form: b.brief.meal.form, chair: ctx.chair,
      wheelchairs: wheels, chairsLeft: ctx.chair.stock ? Math.max(0, ctx.chair.count - chairsTaken) : 100_000,
    }, { seed: ctx.seed, effort: 1 });
    for (const plan of plans.filter((p) => p.places >= need).slice(0, 2)) {
      let next: Layout = bare;
      plan.items.forEach((t, k) => {
        const was = going[k];
        const named: Item = { ...t, id: was && !next.scenes.some((s) => s.items.some((i) => i.id === was.id)) ? was.id : freshId(next, `t${k + 1}-new`), label: was?.label ?? `Table ${k + 1}` };
        next = addPiece(next, named, new Set(scenes.map((s): SceneId => s.id)));
      });
      const ids = sceneOf(next, "meal")?.items.filter((i) => i.role === "dining").map((i) => i.id) ?? [];
      out.push({ ...next, scenes: next.scenes.map((s) => ({ ...s, numbers: s.items.some((i) => i.role === "dining") ? ids.filter((id) => s.items.some((i) => i.id === id)) : s.numbers })) });
    }
    if (out.length >= 4) break;
  }
  return out.sort((x, y) => mustsOf(b, x).length - mustsOf(b, y).length);
}

/** The ceremony's rows laid anew round everything else that stands in their room then. */
export function reseatCeremony(b: Bench, ctx: Context, layout: Layout): readonly Layout[] {
  const scene = sceneOf(layout, "ceremony");
  const isRow = (i: Item): boolean => (i.role === "row-seat" || (i.kind === "chair" && i.seats.length > 0) || i.role === "wheelchair-space") && mayMove(b, i);
  const going = scene?.items.filter(isRow) ?? [];
  const room = going[0]?.room;
  if (!scene || !room) return [];
  const f = drapedFloor(siteFor(b.venue, scene.drapes), room);
  if (!f) return [];
  const stays = scene.items.filter((i) => i.room === room && !isRow(i));
  const kept = stays.reduce((n, i) => n + i.seats.length, 0);
  const people = Math.max(1, (b.brief.guests.ceremony ?? ctx.demand.guests) - kept);
  const scenes = layout.scenes.filter((s) => s.items.some((i) => i.id === going[0]?.id));
  const plans = seatRows({
    room, floor: f.floor, solids: [...f.room.obstacles.map((o) => o.outline), ...stays.filter((i) => i.kind !== "dance-floor").map(footprintPolygon)],
    zones: [...f.doorFloor, ...f.room.keepClear.map((k) => k.outline)], axis: axisOf(f.room.outline), gates: f.gates,
    features: f.room.walls.filter((w) => w.is === "feature"), windows: f.room.windows,
  }, {
    people, wheelchairs: Math.min(b.brief.guests.wheelchairs, people), chair: { id: ctx.chair.stock ?? "chair", width: ctx.chair.width, depth: ctx.chair.depth },
    rowPitch: ctx.values.most.rowPitch, aisle: b.brief.ceremony.aisle, frontDepth: ctx.values.frontDepth, curve: b.brief.ceremony.seating === "curve", chairsLeft: ctx.chair.stock ? ctx.chair.count - kept : 100_000,
  });
  return plans.filter((p) => p.places >= people).slice(0, 2).map((p) => {
    const bare = going.reduce((l, i) => mapPiece(l, i, () => null), layout);
    return p.items.reduce((l, i) => addPiece(l, i, new Set(scenes.map((s): SceneId => s.id))), bare);
  });
}

/** Standing pieces as the venue keeps them, for what a scene has lost. */
export const keptPlace = (b: Bench, id: string): Item | null => {
  for (const r of b.venue.rooms) for (const s of r.standing) if (s.id === id) return standingItem(r.id, s);
  return null;
};
