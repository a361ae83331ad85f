import { placed, type Context, type Raw, type SceneView } from "./context";
import { accesswayWidth } from "./formulas";
import { onBroad } from "./maps";
import type { Point } from "../geometry";
import type { Item } from "../layout";
import { levelOf } from "../venue";
import { answersOn, quickWays, waysOut, type FloorMap } from "./ways";

/** Length up to which 305 mm is enough, mm: 12 ft. */
const SHORT = 12 * 304.8;

/**
 * A place farther than 12 ft from an aisle (here: from floor 914 mm wide that leads to a way out) needs a wider path to it:
 * IBC 2018 1029.13.1.1. The straight distance is taken, which is never longer than the walk.
 */
export const accessway = (v: SceneView, c: Context): readonly Raw[] => onBroad(v, c, (map) => accesswayBy(v, c, map));

/** Farthest that a place is looked for from an aisle, mm. */
const FAR = 100_000;

function accesswayBy(v: SceneView, c: Context, map: FloorMap): readonly Raw[] {
  const aisles = map.pieces.filter((p) => p.exits.length > 0);
  const known = asked(map, "");
  const far = v.scene.items.filter((i) => i.kind === "table").flatMap((item) => known(item, null, () => farFrom(v, map, { aisles, item })));
  if (far.length === 0) return [];
  const most = Math.max(...far.map((f) => f.distance));
  const by = { ...c.values, path: Math.round(accesswayWidth(Math.min(FAR, most))) };
  const found = waysOut(v.site, v.scene, 1, by, map.coarse ? quickWays(v.site, v.scene, by) : undefined);
  const bad = new Set(found.unserved.map((u) => `${u.item}#${u.seat}`));
  const worst = far.filter((f) => bad.has(`${f.item.id}#${f.seat}`)).sort((a, b) => b.distance - a.distance);
  const first = worst[0];
  if (!first) return [];
  return [finding(v, { data: { a: first.item.id, distance: Math.round(first.distance), limit: by.path, places: worst.length }, items: [...new Set(worst.map((f) => f.item.id))], at: first.at })];
}

type Far = { readonly item: Item; readonly seat: number; readonly at: Point; readonly distance: number };
const asked = answersOn<Far>();

/** The places of a table that lie farther than 12 ft from every aisle. */
function farFrom(v: SceneView, map: FloorMap, { aisles, item }: { readonly aisles: FloorMap["pieces"]; readonly item: Item }): readonly Far[] {
  const level = levelOf(v.site, item.room), here = aisles.filter((p) => p.level === level);
  return item.seats.flatMap((s, seat) => {
    const at: Point = [s.x, s.y];
    if (here.some((p) => p.floor.within(at, SHORT))) return [];
    const distance = Math.min(Infinity, ...here.map((p) => p.floor.away(at, FAR)));
    // Without such floor at all nothing is said; whether there is none the exact floor alone knows.
    return distance < Infinity || map.coarse ? [{ item, seat, at: placed(at), distance }] : [];
  });
}

type Data = { readonly a: string; readonly distance: number; readonly limit: number; readonly places: number };
const finding = (v: SceneView, { data, items, at }: { readonly data: Data; readonly items: readonly string[]; readonly at: Raw["at"] }): Raw =>
  ({ code: "accessway", level: "must", source: "IBC 2018 1029.13.1.1", scene: v.scene.id, items, at, limit: data.limit, unit: "mm", data });
