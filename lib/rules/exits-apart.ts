import { distance, type Point } from "../geometry";
import type { Gate } from "../venue";
import type { Context, Raw, SceneView } from "./context";

/**
 * Where two ways out are needed they stand apart by half the greatest span of the rooms, by a third where sprinklers are
 * throughout: IBC 2018 1007.1.1 and its exception 2, measured to any point along the doors' width. Doors are the building's and no
 * layout moves them, so it is told as a should.
 */
export function exitsApart(v: SceneView, c: Context): readonly Raw[] {
  if (v.people <= c.values.exitSteps[0]) return [];
  const rooms = v.scene.rooms.flatMap((r) => { const room = v.site.rooms.get(r); return room ? [room] : []; });
  const doors = rooms.flatMap((r) => r.gates).filter((g) => g.door.exit || (g.leadsTo !== null && !v.scene.rooms.includes(g.leadsTo)));
  if (doors.length < 2) return [];
  const span = greatest(rooms.flatMap((r) => r.outline).map((p) => [p]));
  const limit = span * c.values.exitsApart;
  const apart = greatest(doors.map((g: Gate) => [g.from, g.to]));
  if (apart >= limit - 1) return [];
  return [{
    code: "exits-apart", level: "should", source: "IBC 2018 1007.1.1", scene: v.scene.id, items: [], measured: Math.floor(apart), limit: Math.ceil(limit), unit: "mm",
    data: { people: v.people, apart: Math.floor(apart), limit: Math.ceil(limit), span: Math.round(span) },
  }];
}

/** The greatest distance between points of two different groups, mm. */
function greatest(groups: readonly (readonly Point[])[]): number {
  let best = 0;
  groups.forEach((a, i) => groups.slice(i + 1).forEach((b) => { for (const p of a) for (const q of b) best = Math.max(best, distance(p, q)); }));
  return best;
}
