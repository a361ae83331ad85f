import { levelOf } from "../venue";
import { placed, type Context, type Raw, type SceneView } from "./context";
import { onAisles } from "./maps";
import { seatOffset } from "./seats";
import { isSeatedTable, type FloorMap } from "./ways";

/** How near a table's edge the middle of an accessible route comes where a wheelchair may take a chair's place, mm: the wheelchair's 31 in and half the route's 36 in. */
const REACH = 787 + 457;

/**
 * One in twenty places at the tables lies on an accessible route: 2010 ADA Standards 226.1. Written for what is built in, so it is a
 * should. And two or more wheelchair places stand at more than one table where there are tables to choose (226.2), as a note.
 */
export const accessiblePlaces = (v: SceneView, c: Context): readonly Raw[] => onAisles(v, c, (map) => placesBy(v, c, map));

function placesBy(v: SceneView, c: Context, map: FloorMap): readonly Raw[] {
  const tables = v.scene.items.filter((i) => isSeatedTable(i) && i.role !== "work");
  const seats = tables.reduce((n, i) => n + i.seats.length, 0);
  if (!c.brief || v.scene.id !== "meal" || seats === 0) return [];
  const needed = Math.max(1, Math.ceil(seats / 20 - 1e-9));
  const pieces = map.pieces.filter((p) => p.exits.length > 0);
  let found = 0;
  for (const i of tables) {
    const level = levelOf(v.site, i.room);
    const here = pieces.filter((p) => p.level === level);
    for (const s of i.seats) if (found < needed && (s.place === "wheelchair" || here.some((p) => p.floor.within([s.x, s.y], REACH - seatOffset(i, s))))) found++;
    if (found >= needed) break;
  }
  const wheels = tables.filter((i) => i.seats.some((s) => s.place === "wheelchair"));
  const count = wheels.reduce((n, i) => n + i.seats.filter((s) => s.place === "wheelchair").length, 0);
  const base = { scene: v.scene.id, unit: "places" };
  return [
    ...(found < needed ? [{ ...base, code: "accessible-places", level: "should" as const, source: "2010 ADA Standards 226.1", items: [], measured: found, limit: needed, data: { found, needed, seats } }] : []),
    ...(count >= 2 && wheels.length === 1 && tables.length > 1 ? [{
      ...base, code: "wheelchairs-together", level: "note" as const, source: "2010 ADA Standards 226.2", items: wheels.map((i) => i.id), at: placed(wheels[0]?.at ?? [0, 0]), data: { a: wheels[0]?.id ?? "", places: count },
    }] : []),
  ];
}
