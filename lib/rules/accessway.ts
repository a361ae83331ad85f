import { placed, type Context, type Raw, type SceneView } from "./context";
import { accesswayWidth } from "./formulas";
import { onBroad } from "./maps";
import { nearestOnPiece, pieceWithin, waysOut, type WalkMap } from "./ways";

/** Length up to which 305 mm is enough, mm: 12 ft. */
const SHORT = 12 * 304.8;

/**
 * A place farther than 12 ft from an aisle (here: from floor 914 mm wide that leads to a way out) needs a wider path to it:
 * IBC 2018 1029.13.1.1. The straight distance is taken, which is never longer than the walk.
 */
export const accessway = (v: SceneView, c: Context): readonly Raw[] => onBroad(v, c, (map) => accesswayBy(v, c, map));

function accesswayBy(v: SceneView, c: Context, map: WalkMap): readonly Raw[] {
  const aisles = map.pieces.filter((p) => p.exits.length > 0);
  const far = v.scene.items.filter((i) => i.kind === "table").flatMap((item) => item.seats.flatMap((s, seat) => {
    const level = v.site.rooms.get(item.room)?.room.level ?? 0;
    const here = aisles.filter((p) => p.level === level);
    if (here.some((p) => pieceWithin(p, [s.x, s.y], SHORT))) return [];
    // How far it is the exact floor alone knows.
    if (map.options.coarse) return [{ item, seat, at: placed([s.x, s.y]), distance: SHORT }];
    const all = here.flatMap((p) => { const q = nearestOnPiece(p, [s.x, s.y], 100_000); return q ? [Math.hypot(q[0] - s.x, q[1] - s.y)] : []; });
    return all.length === 0 ? [] : [{ item, seat, at: placed([s.x, s.y]), distance: Math.min(...all) }];
  }));
  const some = far[0];
  if (!some) return [];
  if (map.options.coarse) return [finding(v, { data: { a: some.item.id, distance: SHORT, limit: c.values.path, places: far.length }, items: [some.item.id], at: some.at })];
  const width = Math.round(accesswayWidth(Math.max(...far.map((f) => f.distance))));
  const found = waysOut(v.site, v.scene, 1, { ...c.values, path: width });
  const bad = new Set(found.unserved.map((u) => `${u.item}#${u.seat}`));
  const worst = far.filter((f) => bad.has(`${f.item.id}#${f.seat}`)).sort((a, b) => b.distance - a.distance);
  const first = worst[0];
  if (!first) return [];
  return [finding(v, { data: { a: first.item.id, distance: Math.round(first.distance), limit: width, places: worst.length }, items: [...new Set(worst.map((f) => f.item.id))], at: first.at })];
}

type Data = { readonly a: string; readonly distance: number; readonly limit: number; readonly places: number };
const finding = (v: SceneView, { data, items, at }: { readonly data: Data; readonly items: readonly string[]; readonly at: Raw["at"] }): Raw =>
  ({ code: "accessway", level: "must", source: "IBC 2018 1029.13.1.1", scene: v.scene.id, items, at, limit: data.limit, unit: "mm", data });
