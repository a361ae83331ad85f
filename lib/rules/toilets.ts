import { distance, type Point } from "../geometry";
import { levelOf, type Gate } from "../venue";
import { placed, type Context, type Raw, type SceneView } from "./context";
import { onAisles } from "./maps";
import type { FloorMap } from "./ways";

/** How near the middle of the route must come to the door, past its own half width, mm. */
const AT_DOOR = 150;

/**
 * Guests in wheelchairs reach the toilets: a route of the asked width without steps leads to some door to the toilets (2010 ADA
 * Standards 206.2.4, 403.5.1; from memory, unconfirmed). Judged where the brief names such guests and the venue's plan shows such a door.
 */
export function toilets(v: SceneView, c: Context): readonly Raw[] {
  return !c.brief || c.brief.guests.wheelchairs === 0 ? [] : onAisles(v, c, (map) => toiletsBy(v, c, map));
}

function toiletsBy(v: SceneView, c: Context, map: FloorMap): readonly Raw[] {
  const doors = [...v.site.rooms.values()].flatMap((r) => r.gates).filter((g) => g.door.leads === "toilets" && g.door.for.includes("guests"));
  const first = doors[0];
  if (!first) return [];
  const base = { level: "should" as const, source: "2010 ADA Standards 206.2.4, 403.5.1", scene: v.scene.id, items: [] };
  const level = doors.filter((g) => (g.door.steps ?? 0) === 0);
  if (level.length === 0) return [{ ...base, code: "toilets-steps", at: placed(first.at), data: { room: first.room, steps: first.door.steps ?? 0 } }];
  const before = (g: Gate): Point => [g.at[0] + g.inward[0] * (c.values.route / 2), g.at[1] + g.inward[1] * (c.values.route / 2)];
  const reached = level.some((g) => distance(g.from, g.to) >= c.values.routeDoor - 1 &&
    map.reaches(before(g), AT_DOOR, levelOf(v.site, g.room)).some((p) => p.exits.length > 0));
  const nearest = level[0] ?? first;
  return reached ? [] : [{ ...base, code: "toilets-route", at: placed(nearest.at), limit: c.values.route, unit: "mm", data: { room: nearest.room, width: c.values.route, door: c.values.routeDoor } }];
}
