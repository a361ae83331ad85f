import type { Scene, Turnover } from "../../layout";
import { fetchedChairs } from "../../rules";
import type { Venue } from "../../venue";
import { withFetched } from "./fetching";
import { turnovers } from "./turnovers";

/**
 * The turnovers of a day: each room against the next scene that uses it, in the order of the scenes, and chairs carried between rooms where there
 * are too few for both.
 * `people` tells how many leave before each turnover starts; the scene's places where it is left out.
 */
export function turnoversOfDay(venue: Venue, scenes: readonly Scene[], people?: (scene: Scene) => number): readonly Turnover[] {
  const out: Turnover[] = [];
  scenes.forEach((scene, i) => {
    const later = scenes.slice(i + 1);
    const next = new Map<Scene, string[]>();
    for (const room of scene.rooms) {
      const s = later.find((l) => l.rooms.includes(room));
      if (s) next.set(s, [...(next.get(s) ?? []), room]);
    }
    for (const [s, rooms] of next) {
      const only = { ...scene, rooms: rooms.filter((r) => scene.rooms.includes(r)) };
      out.push(...turnovers(venue, only, s, people ? { guests: people(scene) } : {}));
    }
  });
  return fetchedChairs(venue, scenes).reduce<readonly Turnover[]>((day, f) => withFetched(venue, f, { day, guests: people?.(f.from) ?? f.from.seats }), out);
}
