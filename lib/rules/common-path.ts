import { placed, type Context, type Raw, type SceneView } from "./context";
import { onBroad } from "./maps";
import { nearestOnPiece, type FloorMap, type FloorPiece } from "./ways";

/**
 * From a place it is at most 30 ft to floor where two ways out may be chosen, 75 ft where fewer than 50 people are in the rooms: IBC 2018
 * 1029.8, 1029.13.1.2. Judged by the straight distance to floor 914 mm wide from which two ways out lead (one, where fewer than 50),
 * which is never longer than the walk: what is told is so, but a bent walk may be longer than is told.
 */
export const commonPath = (v: SceneView, c: Context): readonly Raw[] => onBroad(v, c, (map) => commonPathBy(v, c, map));

function commonPathBy(v: SceneView, c: Context, map: FloorMap): readonly Raw[] {
  const few = v.people <= c.values.exitSteps[0];
  const limit = few ? c.values.commonPathFew : c.values.commonPath;
  const choice = map.pieces.filter((p) => p.exits.length >= (few ? 1 : 2));
  const far = v.scene.items.flatMap((item) => item.seats.flatMap((s) => {
    const level = v.site.rooms.get(item.room)?.room.level ?? 0;
    const here = choice.filter((p) => p.level === level);
    if (here.some((p) => p.floor.within([s.x, s.y], limit + 1))) return [];
    // Without such floor at all nothing is said; whether there is none the exact floor alone knows.
    if (here.length === 0 && !map.coarse) return [];
    return [{ item, at: placed([s.x, s.y]), distance: Math.min(...here.map((p) => away(p, [s.x, s.y]))) }];
  }));
  const worst = [...far].sort((a, b) => b.distance - a.distance)[0];
  if (!worst) return [];
  return [{
    code: "common-path", level: c.values.profile === "model-code" ? "must" : "should", source: "IBC 2018 1029.8, 1029.13.1.2", scene: v.scene.id, items: [...new Set(far.map((f) => f.item.id))],
    at: worst.at, measured: Math.round(worst.distance), limit: Math.round(limit), unit: "mm",
    data: { a: worst.item.id, places: far.length, distance: Math.round(worst.distance), limit: Math.round(limit) },
  }];
}

function away(p: FloorPiece, at: readonly [number, number]): number {
  const q = nearestOnPiece(p, at, 1_000_000);
  return q ? Math.hypot(q[0] - at[0], q[1] - at[1]) : Infinity;
}
