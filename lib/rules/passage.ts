import type { Point } from "../geometry";
import { levelOf } from "../venue";
import { placed, type Context, type Raw, type SceneView } from "./context";
import { aislesOf, onAisles, onWays, waysFor } from "./maps";
import { pinchOf, routes, waysOut, type FloorMap, type Pinch, type WalkMap, type WaysOut } from "./ways";

/** From every place a path of 305 mm to two ways out (one where fewer than 50 people are in the rooms), and enough ways out in all. */
export function ways(v: SceneView, c: Context): readonly Raw[] {
  if (onWays(v, c, (map) => waysBy(v, c, map, null)).length === 0) return [];
  const exact = waysFor(v, c);
  return waysBy(v, c, exact, exact);
}

function waysBy(v: SceneView, c: Context, map: FloorMap, exact: WalkMap | null): readonly Raw[] {
  const found = waysOut(v.site, v.scene, v.people, c.values, map);
  const byItem = new Map<string, typeof found.unserved[number][]>();
  for (const u of found.unserved) byItem.set(u.item, [...(byItem.get(u.item) ?? []), u]);
  const blocked = [...byItem].map(([item, list]): Raw => {
    const least = Math.min(...list.map((u) => u.exits.length)), first = list[0];
    const narrow = exact && first && least === 0 ? pinchAt(v, c, exact, first.at, levelOf(v.site, v.scene.items.find((i) => i.id === item)?.room ?? "")) : null;
    return {
      code: "way-out", level: "must", source: "IBC 2018 1029.13.1.1 (path), Table 1006.2.1 (two from 50 people)", scene: v.scene.id, items: [item],
      at: placed(narrow?.at ?? first?.at ?? [0, 0]), measured: least, limit: found.needed, unit: "ways out",
      data: { a: item, places: list.length, found: least, needed: found.needed, width: c.values.path, ...(narrow ? { narrow: Math.max(1, Math.floor(narrow.width)) } : {}) },
    };
  });
  return [...blocked, ...exitCount(v, c, found)];
}

/** Where the floor from a place is too narrow on the way to floor with a way out; null where that is not at one place. */
function pinchAt(v: SceneView, c: Context, exact: WalkMap, at: Point, level: number): Pinch | null {
  const pinch = pinchOf(v.site, v.scene, exact, { target: at, within: c.values.freeWalk, level });
  return pinch && pinch.width < c.values.path ? pinch : null;
}

/** How many ways out a number of people needs: IBC 2018 Tables 1006.2.1 and 1006.3.2. */
export function exitsNeeded(people: number, steps: readonly [number, number, number]): number {
  return 1 + steps.filter((s) => people > s).length;
}

function exitCount(v: SceneView, c: Context, found: WaysOut): readonly Raw[] {
  const needed = exitsNeeded(v.people, c.values.exitSteps);
  const outlines = v.scene.rooms.flatMap((r) => { const room = v.site.rooms.get(r); return room ? [room] : []; });
  const reached = new Set(outlines.flatMap((r) => found.map.reaches(r.outline, 0, r.room.level).flatMap((p) => p.exits)));
  if (reached.size >= needed) return [];
  return [{
    code: "exit-count", level: "must", source: "IBC 2018 Table 1006.2.1, Table 1006.3.2", scene: v.scene.id, items: [], measured: reached.size, limit: needed, unit: "ways out",
    data: { people: v.people, found: reached.size, needed },
  }];
}

/**
 * A route of 914 mm (800 mm at doors) from a way out to wheelchair places, and to bar, buffet and dance floor outside the ceremony.
 * Where the floor is too narrow at one place, the finding stands there and says how wide it is.
 */
export function route(v: SceneView, c: Context): readonly Raw[] {
  const judge = (map: FloorMap, exact: WalkMap | null): readonly Raw[] => routes(v.site, v.scene, c.values, map).unreached.map((u) => {
    const pinch = exact ? pinchOf(v.site, v.scene, exact, { target: u.polygon, within: u.within, level: u.level }) : null;
    const narrow = pinch && pinch.width < c.values.route ? Math.max(1, Math.floor(pinch.width)) : null;
    return {
      code: "route", level: "must" as const, source: "2010 ADA Standards 403.5.1, 404.2.3", scene: v.scene.id, items: [u.item], at: placed(pinch && narrow !== null ? pinch.at : u.at),
      ...(narrow === null ? {} : { measured: narrow }), limit: c.values.route, unit: "mm",
      data: { a: u.item, width: c.values.route, door: c.values.routeDoor, ...(narrow === null ? {} : { narrow }), ...(u.seat === undefined ? {} : { seat: u.seat + 1 }) },
    };
  });
  if (onAisles(v, c, (map) => judge(map, null)).length === 0) return [];
  const exact = aislesOf(v, c);
  return judge(exact, exact);
}
