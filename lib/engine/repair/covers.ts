import { distance } from "../../geometry";
import { widthOf, depthOf, type Item, type Layout } from "../../layout";
import type { Raw } from "../../rules";
import { sceneOf, standsAs } from "./edit";
import type { Bench } from "./judge";

/** Findings that moving one of the pieces they name can end. */
const MOVED_AWAY = new Set([
  "overlap", "outside-room", "on-obstacle", "on-keep-clear", "door-clear", "table-gap", "wall-gap", "end-wall", "end-end", "row-clear", "standing-fixed", "unknown-room", "centre-aisle", "aisle-narrow",
]);
/** Findings about floor between pieces: any piece near may be the one in the way. */
const IN_THE_WAY = new Set(["way-out", "route", "accessway", "row-narrow", "exit-count", "centre-aisle", "aisle-width", "common-path"]);

export const byMoving = (f: Raw): boolean => MOVED_AWAY.has(f.code);
export const byClearing = (f: Raw): boolean => IN_THE_WAY.has(f.code);

/** What it costs to move a piece: small ones before tables, tables before bars and floors. */
function weight(i: Item): number {
  if (i.kind === "chair" || i.kind === "easel" || i.kind === "cocktail-table" || i.role === "wheelchair-space") return 1;
  if (i.kind === "table") return i.role === "top" ? 4 : i.seats.length > 0 ? 2 + i.seats.length / 100 : 1.2;
  if (i.kind === "dance-floor" || i.kind === "band") return 5;
  return "standing" in i.from ? 3 : 2.5;
}

/** A piece may be moved unless it is fixed, or stands where the venue keeps it and may not be moved. */
export function mayMove(b: Bench, i: Item): boolean {
  if (b.fixed.has(i.id)) return false;
  if (!("standing" in i.from)) return true;
  const id = i.from.standing;
  const own = b.venue.rooms.flatMap((r) => r.standing).find((s) => s.id === id);
  return own === undefined || own.move !== null;
}

export const pieceOf = (layout: Layout, f: Raw, id: string): Item | undefined =>
  (f.scene ? sceneOf(layout, f.scene)?.items : undefined)?.find((i) => i.id === id) ?? layout.scenes.flatMap((s) => s.items).find((i) => i.id === id);

/** A finding about the chair of a table: that may stand elsewhere about it. */
const chairAtFault = (f: Raw): boolean => f.data?.["aIs"] === "chair" || f.data?.["bIs"] === "chair";

/** A finding that no move can end: all that it names is fixed, or may not be moved. */
export const pastMending = (b: Bench, layout: Layout, f: Raw): boolean =>
  byMoving(f) && f.items.length > 0 && !chairAtFault(f) && f.items.every((id) => { const i = pieceOf(layout, f, id); return i !== undefined && !mayMove(b, i); }) && f.code !== "standing-fixed";

/** Nodes of the search for covers, and covers handed on. */
const NODES = 3000, COVERS = 6;

/**
 * Sets of pieces so that every finding names at least one of the set: the lightest first. Findings that name no piece that may be
 * moved are left out.
 */
export function coversOf(b: Bench, layout: Layout, findings: readonly Raw[]): readonly (readonly Item[])[] {
  const sets = findings.map((f) => f.items.flatMap((id) => { const i = pieceOf(layout, f, id); return i && mayMove(b, i) ? [i] : []; })).filter((s) => s.length > 0);
  const found: { readonly items: readonly Item[]; readonly cost: number }[] = [];
  let nodes = 0;
  const search = (k: number, chosen: readonly Item[], cost: number): void => {
    if (nodes++ > NODES || (found.length >= COVERS && cost >= (found[COVERS - 1]?.cost ?? 0))) return;
    const next = sets.slice(k).findIndex((s) => !s.some((i) => chosen.some((c) => standsAs(c, i))));
    if (next < 0) {
      found.push({ items: chosen, cost });
      found.sort((x, y) => x.cost - y.cost);
      return;
    }
    const options = [...(sets[k + next] ?? [])].sort((x, y) => named(sets, y) - named(sets, x) || weight(x) - weight(y));
    for (const i of options) search(k + next + 1, [...chosen, i], cost + weight(i));
  };
  search(0, [], 0);
  return found.slice(0, COVERS).map((f) => f.items);
}
const named = (sets: readonly (readonly Item[])[], i: Item): number => sets.filter((s) => s.some((o) => standsAs(o, i))).length;

/** Movable pieces near the place of a finding, nearest edges first. */
export function nearPieces(b: Bench, layout: Layout, f: Raw, most: number): readonly Item[] {
  const at = f.at, scene = f.scene ? sceneOf(layout, f.scene) : undefined;
  if (!scene) return [];
  const edge = (i: Item): number => (at ? distance(i.at, [at[0], at[1]]) - Math.max(widthOf(i.shape), depthOf(i.shape)) / 2 : 0);
  return scene.items.filter((i) => mayMove(b, i) && i.kind !== "dance-floor").sort((x, y) => edge(x) - edge(y) || (x.id < y.id ? -1 : 1)).slice(0, most);
}
