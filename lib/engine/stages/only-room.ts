import { loadKinds, peopleOf } from "../../rules";
import type { Room, Use } from "../../venue";
import { widestBound } from "../bounds/limits";
import { packageRooms } from "./assign";
import type { Context } from "./context";

/** The one room that alone may hold the ceremony and alone the whole meal, by the figures that govern it; null where there are others. */
export function onlyRoom({ venue, pack, brief }: Context): string | null {
  const holding = (use: Use, scene: "ceremony" | "meal", wanted: string): readonly Room[] => packageRooms(venue, pack).filter((r) => r.uses.includes(use) && (wanted === "any" || wanted === r.id)
    && widestBound(venue, r, brief.drape, loadKinds(scene, brief.ceremony.seating)).limit >= peopleOf(brief, scene).guests);
  const ceremony = holding("ceremony", "ceremony", brief.ceremony.room), meal = holding("dining", "meal", brief.meal.room);
  const [one] = ceremony;
  return one && ceremony.length === 1 && meal.length === 1 && meal[0]?.id === one.id ? one.id : null;
}
