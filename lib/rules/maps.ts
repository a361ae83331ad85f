import type { Context, Raw, SceneView } from "./context";
import { quickMap, quickRoutes, quickWays, routeMap, walkMap, waysMap, type FloorMap, type WalkMap, type WalkOptions } from "./ways";

/** The maps of one part of the day, each drawn once for all rules that ask. */
type Maps = { readonly [Name in Kind]: { readonly quick: () => FloorMap; readonly exact: () => WalkMap; drawn: WalkMap | null } };
type Kind = "ways" | "aisles" | "broad";
const kept = new WeakMap<SceneView, Maps>();

function mapsOf(v: SceneView, c: Context): Maps {
  const known = kept.get(v);
  if (known) return known;
  const map = (quick: () => FloorMap, exact: () => WalkMap): Maps[Kind] => {
    let soon: FloorMap | null = null;
    const made: Maps[Kind] = { quick: () => (soon ??= quick()), exact: () => (made.drawn ??= exact()), drawn: null };
    return made;
  };
  const aisles = map(() => quickRoutes(v.site, v.scene, c.values), () => routeMap(v.site, v.scene, c.values));
  const walkers: WalkOptions = { width: c.values.route, tableLine: c.values.tableLine, doorWidth: c.values.routeDoor, walker: "anyone" };
  const all = [...v.site.rooms.values()].flatMap((r) => r.gates);
  const alike = all.every((g) => (g.door.steps ?? 0) === 0 && g.door.for.includes("guests"));
  const maps: Maps = {
    ways: map(() => quickWays(v.site, v.scene, c.values), () => waysMap(v.site, v.scene, c.values)), aisles,
    broad: alike ? aisles : map(() => quickMap(v.site, v.scene, walkers), () => walkMap(v.site, v.scene, walkers)),
  };
  kept.set(v, maps);
  return maps;
}

/** The free floor for ways out, exactly. */
export const waysFor = (v: SceneView, c: Context): WalkMap => mapsOf(v, c).ways.exact();
/** The floor wide enough for an accessible route, exactly. */
export const aislesOf = (v: SceneView, c: Context): WalkMap => mapsOf(v, c).aisles.exact();

type Judge = (map: FloorMap) => readonly Raw[];

/**
 * Asks a rule of the quick map first. That map is never freer than the exact one, so a rule that is content with it would be content
 * with the exact one, which is drawn only where it is not. For rules that ask for free floor alone.
 */
function first(maps: Maps[Kind], judge: Judge): readonly Raw[] {
  if (maps.drawn) return judge(maps.drawn);
  const found = judge(maps.quick());
  return found.length === 0 ? found : judge(maps.exact());
}
/** The free floor for ways out. */
export const onWays = (v: SceneView, c: Context, judge: Judge): readonly Raw[] => first(mapsOf(v, c).ways, judge);
/** Floor that is wide enough for an accessible route. */
export const onAisles = (v: SceneView, c: Context, judge: Judge): readonly Raw[] => first(mapsOf(v, c).aisles, judge);
/** Floor as wide as an accessible route for those who walk: by steps and service doors too. The route's own map where the venue has neither. */
export const onBroad = (v: SceneView, c: Context, judge: Judge): readonly Raw[] => first(mapsOf(v, c).broad, judge);
