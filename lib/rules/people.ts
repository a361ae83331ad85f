import type { Brief } from "../brief";
import { intersect, regionArea, type Polygon } from "../geometry";
import type { Scene, SceneId } from "../layout";
import type { Site } from "../venue";
import { ruleValues } from "./values";

export type People = { readonly guests: number; readonly suppliers: number; readonly all: number };

/** Guests and suppliers who are in the rooms at a part of the day. */
export function peopleOf(brief: Brief, scene: SceneId): People {
  const g = brief.guests;
  const day = g.adults + g.children;
  const guests = scene === "ceremony" ? (g.ceremony ?? day) : scene === "dancing" ? (g.evening ?? day) : day;
  return { guests, suppliers: g.suppliers, all: guests + g.suppliers };
}

export type LoadKind = "rows" | "tables" | "standing";
export type RoomLoad = {
  readonly room: string;
  /** The figure that governs, people. */
  readonly limit: number;
  /** True where the authority gave it; else it follows from area. */
  readonly posted: boolean;
  readonly byArea: number;
};
export type SceneLoad = {
  readonly kinds: readonly LoadKind[];
  readonly rooms: readonly RoomLoad[];
  readonly total: number;
  readonly totalByArea: number;
  /** True where every room's figure is posted. */
  readonly posted: boolean;
  /** One person per 0.65 m2 of the scene's floor: no posting goes past it. */
  readonly densest: number;
};

/** Which of the posted figures govern a part of the day. */
export function loadKinds(scene: SceneId, seating: Brief["ceremony"]["seating"] | undefined): readonly LoadKind[] {
  if (scene === "meal") return ["tables"];
  if (scene !== "ceremony") return ["tables", "standing"];
  if (seating === "standing") return ["standing"];
  return seating === "at-tables" ? ["tables"] : ["rows"];
}

/** Floor of a room with the drapes as they are, less what is built on it, m2. */
export function netArea(site: Site, room: string): number {
  const r = site.rooms.get(room);
  if (!r) return 0;
  const built: readonly Polygon[] = r.room.obstacles.map((o) => o.outline);
  return (r.area - (built.length === 0 ? 0 : regionArea(intersect(r.floor, built)))) / 1e6;
}

/**
 * How many people the posted figures let into a scene's rooms; a room without a figure by its area. The larger of the
 * kinds counts. A drape's own figure stands for the room it grows; else the figures of both rooms are added.
 */
export function postedFor(site: Site, scene: Pick<Scene, "id" | "rooms">, brief?: Brief): SceneLoad {
  const values = ruleValues(site.venue);
  const kinds = loadKinds(scene.id, scene.id === "ceremony" ? (brief?.ceremony.seating ?? "rows") : undefined);
  const best = (posted: { readonly rows?: number; readonly tables?: number; readonly standing?: number } | undefined): number | null => {
    const all = kinds.flatMap((k) => { const n = posted?.[k]; return n === undefined ? [] : [n]; });
    return all.length === 0 ? null : Math.max(...all);
  };
  const rooms = [...new Set(scene.rooms)].map((id): RoomLoad => {
    const drape = site.drapes.find((d) => d.grows === id);
    const own = best(site.rooms.get(id)?.room.posted);
    const lent = drape && !scene.rooms.includes(drape.from) ? best(site.rooms.get(drape.from)?.room.posted) : 0;
    const figure = drape ? (best(drape.posted) ?? (own === null || lent === null ? null : own + lent)) : own;
    const area = netArea(site, id);
    const byArea = Math.floor(area / Math.min(...kinds.map((k) => values.factors[k])) + 1e-9);
    return { room: id, limit: figure ?? byArea, posted: figure !== null, byArea };
  });
  const sum = (pick: (r: RoomLoad) => number): number => rooms.reduce((n, r) => n + pick(r), 0);
  return {
    kinds, rooms, total: sum((r) => r.limit), totalByArea: sum((r) => r.byArea), posted: rooms.every((r) => r.posted),
    densest: Math.floor(rooms.reduce((n, r) => n + netArea(site, r.room), 0) / values.densest + 1e-9),
  };
}
