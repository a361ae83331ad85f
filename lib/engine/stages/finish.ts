import type { Item, Layout, Scene, Turnover } from "../../layout";
import { numberTables } from "../number";
import { turnovers } from "../turnover";
import type { Context } from "./context";
import { withAccess } from "./access";
import type { Day } from "./day";
import { placeDisplays, type GaveWay } from "./displays";
import { givesUpOf, titleOf, whyOf } from "./explain";
import { entryOf } from "./relations";
import { scenesOf } from "./scenes";
import { scoreOf } from "./score";
import { layStruckFloor } from "./struck";
import { placeWorkTable } from "./work-table";

export type Finished = { readonly layout: Layout; readonly day: Day; readonly gaveWay: readonly GaveWay[] };

/** From a day whose tables and rows stand to a whole layout: struck floor, displays, numbers, turnovers, words. */
export function finish(ctx: Context, start: Day): Finished {
  const struck = layStruckFloor(ctx, start) ?? start;
  const open = withAccess(ctx, struck);
  const shown = placeDisplays(ctx, open);
  const day = numbered(placeWorkTable(ctx, shown.day));
  const scenes = scenesOf(ctx, day).map((s): Scene => ({ ...s, numbers: s.items.filter((i) => i.role === "dining").map((i) => i.id) }));
  const turned = turnoversOf(ctx, scenes);
  return {
    day, gaveWay: shown.gaveWay,
    layout: {
      id: "a", title: titleOf(day), why: [...whyOf(ctx, day, scenes, turned)], givesUp: [...givesUpOf(ctx, day, shown.gaveWay)],
      scenes, turnovers: turned, findings: [], score: scoreOf(ctx, day, scenes, turned, []),
    },
  };
}

/** Tables numbered room by room, in the order a guest meets them. */
function numbered(day: Day): Day {
  const rooms = new Map(day.rooms);
  let from = 1;
  for (const id of day.plan.meal) {
    const room = rooms.get(id);
    if (!room) continue;
    const dining = room.tables.filter((t) => t.role === "dining");
    const { items } = numberTables(dining, entryOf(room.f), { start: from, axis: room.f.axis, top: room.tables.find((t) => t.role === "top") });
    from += new Set(items.map((i) => i.label)).size;
    rooms.set(id, { ...room, tables: [...room.tables.filter((t) => t.role !== "dining"), ...items] });
  }
  return { ...day, rooms };
}

/** One turnover for each pair of parts of the day between which a room's contents differ. */
function turnoversOf(ctx: Context, scenes: readonly Scene[]): readonly Turnover[] {
  const out: Turnover[] = [];
  for (let j = 1; j < scenes.length; j++) for (let i = j - 1; i >= 0; i--) {
    const a = scenes[i], b = scenes[j];
    if (!a || !b) continue;
    const between = scenes.slice(i + 1, j);
    const rooms = b.rooms.filter((r) => a.rooms.includes(r) && !between.some((s) => s.rooms.includes(r)));
    const changed = rooms.filter((r) => fingerprintOf(a, r) !== fingerprintOf(b, r));
    for (const room of changed) {
      const part = (s: Scene): Scene => ({ ...s, rooms: [room], items: s.items.filter((x) => x.room === room) });
      out.push(...turnovers(ctx.venue, part(a), part(b), { guests: ctx.demand.guests }));
    }
  }
  return out;
}
const fingerprintOf = (s: Scene, room: string): string =>
  JSON.stringify(s.items.filter((i) => i.room === room).map((i: Item) => [i.id, i.at, i.angle]).sort());
