import type { Context, SceneView } from "./context";
import { routeMap, waysMap, type WalkMap } from "./ways";

const kept = new WeakMap<SceneView, { ways?: WalkMap; aisles?: WalkMap }>();
const of = (v: SceneView): { ways?: WalkMap; aisles?: WalkMap } => {
  const maps = kept.get(v) ?? {};
  kept.set(v, maps);
  return maps;
};

/** The free floor for ways out of a part of the day, worked out once for all rules that ask. */
export const waysFor = (v: SceneView, c: Context): WalkMap => (of(v).ways ??= waysMap(v.site, v.scene, c.values));
/** The floor wide enough for an accessible route, likewise. */
export const aislesOf = (v: SceneView, c: Context): WalkMap => (of(v).aisles ??= routeMap(v.site, v.scene, c.values));
