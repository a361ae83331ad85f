import type { Wish } from "../brief";
import { boundaryDistance, clearance, contains, polygonShape, segmentClearance, type Point } from "../geometry";
import { footprint, type Item } from "../layout";
import { placed, type Context, type Raw, type SceneView } from "./context";
import { sees } from "./sight";

/** How near is near, and how far is away, edge to edge, mm (common practice, no source). */
const NEAR = 3000, AWAY = 5000;

/** The pieces that a word of a wish means. */
function piecesOf(v: SceneView, word: string): readonly Item[] {
  const kinds: Readonly<Record<string, Item["kind"]>> = { "cocktail-tables": "cocktail-table", "second-bar": "bar", "dance-floor": "dance-floor", dj: "dj", band: "band", bar: "bar", buffet: "buffet", lounge: "lounge", "photo-booth": "photo-booth" };
  const kind = kinds[word];
  const role = word === "children-corner" ? "children" : word;
  const hired = (i: Item): boolean => !("standing" in i.from) || i.role !== undefined;
  return v.scene.items.filter((i) => hired(i) && ((kind !== undefined && i.kind === kind) || i.role === role || i.role === word || (i.also ?? []).includes(word)));
}

/** Distance of a piece from the place that a word means, mm; null where there is none here. */
function distanceTo(v: SceneView, piece: Item, word: string): number | null {
  const room = v.site.rooms.get(piece.room);
  if (!room) return null;
  const shape = footprint(piece);
  const least = (all: readonly number[]): number | null => (all.length === 0 ? null : Math.max(0, Math.min(...all)));
  const strips = (list: readonly { readonly from: Point; readonly to: Point }[]): number | null => least(list.map((s) => segmentClearance(shape, [s.from, s.to])));
  switch (word) {
    case "window": return strips(room.room.windows);
    case "door": return strips(room.gates);
    case "feature": return strips(room.room.walls.filter((w) => w.is === "feature"));
    case "wall": return least(room.outline.map((p, i) => segmentClearance(shape, [p, room.outline[(i + 1) % room.outline.length] ?? p])));
    case "terrace": return least([...v.site.rooms.values()].filter((r) => r.room.outdoor && r.room.level === room.room.level).map((r) =>
      contains(r.outline, piece.at) ? 0 : Math.min(clearance(shape, polygonShape(r.outline)), boundaryDistance(r.outline, piece.at))));
    default: return least(piecesOf(v, word).filter((i) => i !== piece && v.site.rooms.get(i.room)?.room.level === room.room.level).map((i) => clearance(shape, footprint(i))));
  }
}

/** Where a piece must be seen from: the middles of what the word means. */
function targetsOf(v: SceneView, piece: Item, word: string): readonly Point[] {
  const room = v.site.rooms.get(piece.room);
  const mid = (s: { readonly from: Point; readonly to: Point }): Point => [(s.from[0] + s.to[0]) / 2, (s.from[1] + s.to[1]) / 2];
  if (!room) return [];
  // A hand's breadth inside the wall, so that the wall itself does not hide what hangs on it.
  const inside = (p: Point): Point => { const d = Math.hypot(piece.at[0] - p[0], piece.at[1] - p[1]) || 1; return [p[0] + ((piece.at[0] - p[0]) * 100) / d, p[1] + ((piece.at[1] - p[1]) * 100) / d]; };
  if (word === "window") return room.room.windows.map((w) => inside(mid(w)));
  if (word === "door") return room.gates.map((g) => inside(g.at));
  if (word === "feature" || word === "wall") return room.room.walls.filter((w) => word === "wall" || w.is === "feature").map((w) => inside(mid(w)));
  return piecesOf(v, word).filter((i) => i !== piece).map((i) => i.at);
}

type Judged = { readonly measured: number | null; readonly met: boolean };
function judged(v: SceneView, piece: Item, wish: Wish): Judged | null {
  if ("in-sight-of" in wish) {
    const targets = targetsOf(v, piece, wish["in-sight-of"]);
    return targets.length === 0 ? null : { measured: null, met: targets.some((t) => sees(v, { at: piece.at, item: piece }, t)) };
  }
  const measured = distanceTo(v, piece, "near" in wish ? wish.near : wish["away-from"]);
  if (measured === null) return null;
  return { measured, met: "near" in wish ? measured <= NEAR + 1 : measured >= AWAY - 1 };
}

const whereOf = (w: Wish): string => ("near" in w ? w.near : "away-from" in w ? w["away-from"] : w["in-sight-of"]);

/**
 * The couple's wishes: near means within 3 m, away at least 5 m, edge to edge (common practice, no source); in sight means that no
 * wall, high obstacle or screen stands between the middles. A wish is met where some part of the day meets it for some such piece.
 */
export function wishes(c: Context): readonly Raw[] {
  return (c.brief?.wishes ?? []).flatMap((wish): readonly Raw[] => {
    const tried = c.scenes.flatMap((v) => piecesOf(v, wish.put).flatMap((item) => { const j = judged(v, item, wish); return j ? [{ v, item, ...j }] : []; }));
    if (tried.length === 0 || tried.some((t) => t.met)) return [];
    const away = "away-from" in wish;
    const [best] = [...tried].sort((a, b) => ((a.measured ?? 0) - (b.measured ?? 0)) * (away ? -1 : 1));
    if (!best) return [];
    const base = { level: "should" as const, source: "the couple's wish", scene: best.v.scene.id, items: [best.item.id], at: placed(best.item.at) };
    const data = { a: best.item.id, where: whereOf(wish) };
    if (best.measured === null) return [{ ...base, code: "wish-sight", data }];
    const measured = Math.round(best.measured), limit = away ? AWAY : NEAR;
    return [{ ...base, code: away ? "wish-away" : "wish-near", measured, limit, unit: "mm", data: { ...data, measured, limit } }];
  });
}
