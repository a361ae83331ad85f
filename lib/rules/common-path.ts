import type { Point } from "../geometry";
import type { Item } from "../layout";
import { levelOf } from "../venue";
import { placed, type Context, type Raw, type SceneView } from "./context";
import { onBroad } from "./maps";
import { answersOn, HALF_CELL, isRowChair, isWheelchairSpace, leastWalk, narrower, quickMap, quickWays, straightWalk, type FloorMap } from "./ways";

/** How far floor is looked for that a place at a table, or a chair of a row, walks straight to; what is near enough for sure; farthest that floor is looked for, mm. */
const NEAR = 1500, BESIDE = 700, SLACK = 2000, FAR = 200_000;

/**
 * From a place it is at most a walk of 30 ft to floor where two ways out may be chosen, 75 ft where fewer than 50 people are in the
 * rooms: IBC 2018 1029.8, 1029.13.1.2. Such floor is 914 mm wide and two ways out lead from it (one, where fewer than 50). A place that
 * walks straight there has its way; of the others the least walk is taken, about pieces and walls, so that what is told is so.
 */
export const commonPath = (v: SceneView, c: Context): readonly Raw[] => onBroad(v, c, (map) => commonPathBy(v, c, map));

function commonPathBy(v: SceneView, c: Context, map: FloorMap): readonly Raw[] {
  const few = v.people <= c.values.exitSteps[0];
  const limit = few ? c.values.commonPathFew : c.values.commonPath;
  const choice = choiceOn(map, few);
  const straight = straightWalk(v.site, v.scene, map);
  const doubtful = doubtsOn(v, map, few, limit);
  if (doubtful.length === 0) return [];
  // Whether there is such floor at all the exact map alone knows; without any nothing is said.
  if (choice.length === 0) return map.coarse ? doubtful.map(({ item, at }) => told(v, c, { item, at, places: 1, distance: limit, limit, items: [item.id] })) : [];
  const reachOf = (item: Item): number => (isRowChair(item) || isWheelchairSpace(item) ? c.values.path + 500 : c.values.freeWalk);
  const walksOn = (free: FloorMap, list: readonly Doubt[], { beside = 0, enough = 0 }): ((d: Doubt) => number) => {
    const reaches = [...new Set(list.map((d) => reachOf(d.item)))];
    const by = new Map([...new Set(choice.map((p) => p.level))].map((level) => [level, leastWalk(free, level, choice, { reaches, beside, enough })]));
    return ({ item, at }) => by.get(levelOf(v.site, item.room))?.(at, reachOf(item), (to) => straight(item, at, to)) ?? Infinity;
  };
  // On the floor of the ways out, which is drawn for others too, a walk is no shorter than on all that is free: who has one there has one.
  const soon = walksOn(quickWays(v.site, v.scene, c.values), doubtful, { beside: HALF_CELL, enough: limit - SLACK }), left = doubtful.filter((d) => soon(d) >= limit - SLACK);
  if (left.length === 0) return [];
  const walkOf = walksOn(quickMap(v.site, v.scene, { width: narrower(c.values.path), tableLine: c.values.tableLine }), left, {});
  const far = left.flatMap(({ item, at }) => {
    const walk = walkOf({ item, at });
    // Never shorter than the straight line, which is exact.
    const distance = walk < limit - SLACK ? walk : Math.max(walk, Math.min(Infinity, ...choice.filter((p) => p.level === levelOf(v.site, item.room)).map((p) => p.floor.away(at, FAR))));
    return distance > limit && distance < Infinity ? [{ item, at, distance }] : [];
  });
  const worst = [...far].sort((a, b) => b.distance - a.distance)[0];
  return worst ? [told(v, c, { ...worst, places: far.length, limit, items: [...new Set(far.map((f) => f.item.id))] })] : [];
}

type Doubt = { readonly item: Item; readonly at: Point };
const NONE: readonly Doubt[] = [];
const asked = answersOn<Doubt>();

/** Floor of a map from which a choice of ways out leads. */
const choiceOn = (map: FloorMap, few: boolean): FloorMap["pieces"] => map.pieces.filter((p) => p.exits.length >= (few ? 1 : 2));

/** The places that do not walk straight to such floor. */
function doubtsOn(v: SceneView, map: FloorMap, few: boolean, limit: number): readonly Doubt[] {
  const known = asked(map, `${few ? "few" : "many"} ${limit}`), choice = choiceOn(map, few), straight = straightWalk(v.site, v.scene, map);
  const soon = map.quick ? new Set(doubtsOn(v, map.quick(), few, limit).map((d) => d.item)) : null;
  return v.scene.items.flatMap((item): readonly Doubt[] => {
    if (item.seats.length === 0 || soon?.has(item) === false) return NONE;
    const level = levelOf(v.site, item.room), reach = Math.min(isRowChair(item) ? BESIDE : NEAR, limit);
    return known(item, { level, reach }, () => {
      const here = choice.filter((p) => p.level === level);
      return item.seats.flatMap((s): readonly Doubt[] => {
        const at: Point = [s.x, s.y];
        return here.some((p) => p.floor.some(at, reach, (to) => straight(item, at, to))) ? NONE : [{ item, at }];
      });
    });
  });
}

type Told = { readonly item: Item; readonly at: Point; readonly places: number; readonly distance: number; readonly limit: number; readonly items: readonly string[] };
const told = (v: SceneView, c: Context, t: Told): Raw => ({
  code: "common-path", level: c.values.profile === "model-code" ? "must" : "should", source: "IBC 2018 1029.8, 1029.13.1.2", scene: v.scene.id, items: t.items,
  at: placed(t.at), measured: Math.round(t.distance), limit: Math.round(t.limit), unit: "mm", data: { a: t.item.id, places: t.places, distance: Math.round(t.distance), limit: Math.round(t.limit) },
});
