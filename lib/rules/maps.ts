import type { Context, Raw, SceneView } from "./context";
import { routeMap, walkMap, waysMap, type WalkMap } from "./ways";

type Maps = { broad?: WalkMap; coarseBroad?: WalkMap; ways?: WalkMap; aisles?: WalkMap; coarseWays?: WalkMap; coarseAisles?: WalkMap };
const kept = new WeakMap<SceneView, Maps>();
const of = (v: SceneView): Maps => {
  const maps = kept.get(v) ?? {};
  kept.set(v, maps);
  return maps;
};

/** The free floor for ways out of a part of the day, worked out once for all rules that ask. */
export const waysFor = (v: SceneView, c: Context): WalkMap => (of(v).ways ??= waysMap(v.site, v.scene, c.values));
/** The floor wide enough for an accessible route, likewise. */
export const aislesOf = (v: SceneView, c: Context): WalkMap => (of(v).aisles ??= routeMap(v.site, v.scene, c.values));

type Judge = (map: WalkMap) => readonly Raw[];

/**
 * Asks a rule of the coarse map first. That map is never freer than the exact one, so a rule that is content with it would be content
 * with the exact one, which is drawn only where it is not. For rules that ask for free floor alone.
 */
export function onWays(v: SceneView, c: Context, judge: Judge): readonly Raw[] {
  const exact = of(v).ways;
  const first = judge(exact ?? (of(v).coarseWays ??= waysMap(v.site, v.scene, c.values, true)));
  return exact || first.length === 0 ? first : judge(waysFor(v, c));
}
/** The same of the floor that is wide enough for an accessible route. */
export function onAisles(v: SceneView, c: Context, judge: Judge): readonly Raw[] {
  const exact = of(v).aisles;
  const first = judge(exact ?? (of(v).coarseAisles ??= routeMap(v.site, v.scene, c.values, true)));
  return exact || first.length === 0 ? first : judge(aislesOf(v, c));
}

/** Floor as wide as an accessible route for those who walk: by steps and service doors too. The route's own map where the venue has neither. */
export function onBroad(v: SceneView, c: Context, judge: Judge): readonly Raw[] {
  const all = [...v.site.rooms.values()].flatMap((r) => r.gates);
  if (all.every((g) => (g.door.steps ?? 0) === 0 && g.door.for.includes("guests"))) return onAisles(v, c, judge);
  const draw = (coarse: boolean): WalkMap => walkMap(v.site, v.scene, { width: c.values.route, tableLine: c.values.tableLine, doorWidth: c.values.routeDoor, walker: "anyone", coarse });
  const exact = of(v).broad;
  const first = judge(exact ?? (of(v).coarseBroad ??= draw(true)));
  return exact || first.length === 0 ? first : judge(of(v).broad ??= draw(false));
}
