import { segmentDistance, type Point } from "../geometry";
import type { Item } from "../layout";
import { levelOf } from "../venue";
import { placed, type Context, type Raw, type SceneView } from "./context";
import { onWays } from "./maps";
import { gatesOut, isRowChair, outward, straightWalk, ZIGZAG, type FloorMap } from "./ways";

type Far = { readonly item: Item; readonly at: Point; readonly distance: number };

/**
 * From a place it is at most a walk of 200 ft to a way out, 250 ft where sprinklers are throughout: IBC 2018 Table 1017.2, group A. By the
 * UK's guides 45 m and from chairs in rows 32 m, where there is one way out alone 18 and 15 m (Warwickshire Fire and Rescue Service). Walked
 * about pieces and walls by the shortest way, never told longer than it is; stairs and lifts end the walk on their level.
 */
export const travel = (v: SceneView, c: Context): readonly Raw[] => onWays(v, c, (map) => {
  const levels = [...new Set(v.scene.items.filter((i) => i.seats.length > 0).map((i) => levelOf(v.site, i.room)))];
  return levels.flatMap((level) => travelOn(v, c, { map, level }));
});

function travelOn(v: SceneView, c: Context, { map, level }: { readonly map: FloorMap; readonly level: number }): readonly Raw[] {
  const out = outward(v.site, map, level);
  if (!out) return [];
  const ways = new Set(map.pieces.filter((p) => p.level === level).flatMap((p) => p.exits)).size;
  const { open, rows } = ways < 2 ? c.values.travel.one : c.values.travel.two;
  // Where no floor of the level lies so far off, no place does.
  if (out.farthest <= Math.min(open, rows)) return [];
  const gates = gatesOut(v.site, level), straight = straightWalk(v.site, v.scene, map);
  const far = v.scene.items.filter((i) => levelOf(v.site, i.room) === level).flatMap((item) => item.seats.flatMap((s): readonly Far[] => {
    const at: Point = [s.x, s.y], walk = out.walk(at, (to) => straight(item, at, to));
    if (walk === null) return [];
    const distance = Math.max(walk / ZIGZAG, Math.min(...gates.map((g) => segmentDistance([at, at], [g.from, g.to]))));
    return distance > (isRowChair(item) ? rows : open) ? [{ item, at, distance }] : [];
  }));
  const worst = [...far].sort((a, b) => b.distance - a.distance)[0];
  if (!worst) return [];
  const limit = Math.round(isRowChair(worst.item) ? rows : open), distance = Math.round(worst.distance);
  return [{
    code: "travel", level: c.values.profile === "model-code" ? "must" : "should", source: c.values.source.travel, scene: v.scene.id, items: [...new Set(far.map((f) => f.item.id))],
    at: placed(worst.at), measured: distance, limit, unit: "mm", data: { a: worst.item.id, places: far.length, distance, limit },
  }];
}
