import type { Wish } from "../../brief";
import { centroid, distance, middle, type Point } from "../../geometry";
import type { Item, Layout } from "../../layout";
import { contextOf, DAY_RULES } from "../../rules";
import { axisOf } from "../../venue";
import { isRound } from "../../layout";
import { mayMove } from "../repair/covers";
import { mapPiece, moved } from "../repair/edit";
import { addsNone, type Bench } from "../repair/judge";
import { freeRegion, nearestSpots, scenesWith } from "../repair/region";

/** Spots judged for one piece and one wish. */
const SPOTS = 14;
/** A point so far off that spots nearest to it lie away from all else, mm. */
const FAR = 1e6;

export const whereOf = (w: Wish): string => ("near" in w ? w.near : "away-from" in w ? w["away-from"] : w["in-sight-of"]);

/** Whether a layout meets a wish, or holds nothing that the wish speaks of, by the very rule that `check` judges it by. */
export function isMet(b: Bench, layout: Layout, wish: Wish): boolean {
  const c = contextOf(b.venue, layout, { ...b.brief, wishes: [wish] });
  return (DAY_RULES["wishes"]?.(c) ?? []).length === 0;
}

const KIND: Readonly<Record<string, Item["kind"]>> = {
  "cocktail-tables": "cocktail-table", "second-bar": "bar", "dance-floor": "dance-floor", dj: "dj", band: "band", bar: "bar", buffet: "buffet", lounge: "lounge", "photo-booth": "photo-booth",
};
/** The pieces that a word means, each once for every spot on which it stands. */
function piecesFor(layout: Layout, word: string): readonly Item[] {
  const role = word === "children-corner" ? "children" : word;
  const all = layout.scenes.flatMap((s) => s.items).filter((i) => (!("standing" in i.from) || i.role !== undefined) && (i.kind === KIND[word] || i.role === role || i.role === word || (i.also ?? []).includes(word)));
  return all.filter((i, k) => all.findIndex((o) => o.id === i.id && o.at[0] === i.at[0] && o.at[1] === i.at[1]) === k);
}

/** Points of a room, or of the day, that a word of a wish means. */
function targets(b: Bench, layout: Layout, word: string, room: string): readonly Point[] {
  const own = b.venue.rooms.find((r) => r.id === room);
  const mids = (list: readonly { readonly from: Point; readonly to: Point }[]): readonly Point[] => list.map((s) => middle(s.from, s.to));
  switch (word) {
    case "window": return mids(own?.windows ?? []);
    case "door": return mids(own?.doors ?? []);
    case "feature": return mids((own?.walls ?? []).filter((w) => w.is === "feature"));
    case "wall": return (own?.outline ?? []).map((p, i, all) => middle(p, all[(i + 1) % all.length] ?? p));
    case "terrace": return b.venue.rooms.filter((r) => r.outdoor).map((r) => centroid(r.outline));
    default: return piecesFor(layout, word).map((i) => i.at);
  }
}

/** Spots for a piece in the order that a wish likes them. */
function spots(b: Bench, layout: Layout, item: Item, wish: Wish, room: string): readonly { readonly at: Point; readonly angle: number }[] {
  const own = b.venue.rooms.find((r) => r.id === room);
  const aims = targets(b, layout, whereOf(wish), room);
  if (!own || aims.length === 0) return [];
  const axis = axisOf(own.outline), away = "away-from" in wish;
  const angles = isRound(item.shape) ? [item.angle] : [...new Set([item.angle, axis, axis + 90, axis + 180, axis + 270].map((a) => ((a % 360) + 360) % 360))];
  const worth = (p: Point): number => (away ? -1 : 1) * Math.min(...aims.map((t) => distance(t, p)));
  return angles.flatMap((angle) => {
    const region = freeRegion(b.venue, scenesWith(layout, item), moved(item, item.at, angle), room);
    const from = away ? [[-FAR, -FAR], [FAR, FAR], [FAR, -FAR], [-FAR, FAR]] as const : aims.slice(0, 6);
    return from.flatMap((p) => nearestSpots(region, p, { apart: 700, most: 8 }).map((n) => ({ at: n.at, angle })));
  }).sort((x, y) => worth(x.at) - worth(y.at) || x.at[0] - y.at[0] || x.at[1] - y.at[1]);
}

/** Moves one piece so that a wish is met and those before it stay met; null where no spot was found. */
function meetOne(b: Bench, layout: Layout, wish: Wish, before: readonly Wish[]): Layout | null {
  const own = piecesFor(layout, wish.put), others = "near" in wish || "away-from" in wish ? piecesFor(layout, whereOf(wish)) : [];
  // The piece the wish puts somewhere moves first; else what it shall be near to, or away from.
  for (const item of [...own, ...others].filter((i) => mayMove(b, i))) {
    const scenes = scenesWith(layout, item);
    const turned: Wish = own.includes(item) ? wish : "near" in wish ? { put: wish.put, near: wish.put } : { put: wish.put, "away-from": wish.put };
    const rooms = [item.room, ...new Set(scenes.flatMap((s) => s.rooms))].filter((r, k, all) => all.indexOf(r) === k && scenes.every((s) => s.rooms.includes(r) || r === item.room));
    for (const room of rooms) for (const s of spots(b, layout, item, turned, room).slice(0, SPOTS)) {
      if (b.budget.left <= 0) return null;
      const next = mapPiece(layout, item, (i) => ({ ...moved(i, s.at, s.angle), room }));
      if (isMet(b, next, wish) && before.every((w) => isMet(b, next, w)) && addsNone(b, layout, next, (f) => f.items.includes(item.id))) return next;
    }
  }
  return null;
}

/** A layout that meets all of a list of wishes, the most important first, by moving the pieces they speak of; null where none was found. */
export function honour(b: Bench, start: Layout, wishes: readonly Wish[]): Layout | null {
  let layout = start;
  for (const [k, wish] of wishes.entries()) {
    if (isMet(b, layout, wish)) continue;
    const next = meetOne(b, layout, wish, wishes.slice(0, k));
    if (!next) return null;
    layout = next;
  }
  return wishes.every((w) => isMet(b, layout, w)) ? layout : null;
}
