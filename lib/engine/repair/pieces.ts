import { DISPLAYS, EXTRAS } from "../../brief";
import { area } from "../../geometry";
import { footprintPolygon, type Item, type Layout, type Scene, type SceneId } from "../../layout";
import { siteFor, standingItem } from "../../rules";
import { placedOf, withPlaced, type RoomFloor } from "../place";
import { itemOf, rankedSpots } from "../stages/anchors";
import type { Context } from "../stages/context";
import type { Spec } from "../stages/demand";
import { drapedFloor } from "../stages/draped";
import { mayMove } from "./covers";
import { addPiece, freshId, mapPiece } from "./edit";
import { addsNone, type Bench } from "./judge";
import { freeRegion, nearestSpots, scenesWith } from "./region";

/** Spots judged for one new piece in one room. */
const SPOTS = 8;

const everyItem = (layout: Layout): readonly Item[] => layout.scenes.flatMap((s) => s.items);
const bears = (i: Item, word: string): boolean => i.role === word || (i.also ?? []).includes(word);

/** Whether what a brief's word asks for stands somewhere in the day. */
export function stands(layout: Layout, word: string): boolean {
  const items = everyItem(layout);
  if (word === "photo-booth" || word === "dj" || word === "band" || word === "buffet" || word === "lounge") return items.some((i) => i.kind === word || bears(i, word));
  if (word === "cocktail-tables") return items.some((i) => i.kind === "cocktail-table");
  if (word === "children-corner") return items.some((i) => bears(i, "children") || bears(i, word));
  if (word === "second-bar") return layout.scenes.some((s) => s.items.filter((i) => i.kind === "bar").length >= 2);
  return items.some((i) => bears(i, word) || i.id === word);
}

/** What the brief asks for and no part of the day has: the words, and the piece each wants. */
export function missingSpecs(ctx: Context, layout: Layout): readonly Spec[] {
  const { demand } = ctx;
  const big = [demand.music, demand.buffet, demand.secondBar].filter((s): s is Spec => s !== null).filter((s) => !stands(layout, s.word));
  const high = everyItem(layout).some((i) => i.kind === "cocktail-table");
  return [...big, ...demand.displays.filter((s) => (s.word === "cocktail-tables" ? !high : s.word.startsWith("brought-") ? !everyItem(layout).some((i) => i.label === s.label) : !stands(layout, s.word)))];
}

const WORDS: readonly string[] = [...DISPLAYS, ...EXTRAS];

/** Takes away what the brief no longer asks for; a piece that carries several displays keeps the others. */
export function dropUnasked(b: Bench, start: Layout): Layout {
  const asked = new Set<string>([...b.brief.displays, ...b.brief.extras]);
  const over = (i: Item): boolean => {
    if ("standing" in i.from && i.role === undefined) return false;
    if (i.kind === "dj" || i.kind === "band") return b.brief.music.by !== i.kind && !(b.brief.music.more ?? []).some((m) => m.by === i.kind);
    if (i.kind === "photo-booth") return !asked.has("photo-booth");
    if (i.kind === "cocktail-table") return !asked.has("cocktail-tables");
    if (i.kind === "buffet") return b.brief.meal.service !== "buffet" && b.brief.meal.service !== "stations";
    if (i.kind === "dance-floor") return b.brief.music.dancing === 0;
    if (i.kind === "lounge") return !("standing" in i.from) && !asked.has("lounge");
    return i.role !== undefined && WORDS.includes(i.role) && !asked.has(i.role);
  };
  let layout = start;
  for (const i of everyItem(start)) {
    if (b.fixed.has(i.id)) continue;
    const rest = (i.also ?? []).filter((w) => !WORDS.includes(w) || asked.has(w));
    if (over(i)) layout = mapPiece(layout, i, (x) => withoutRole(b, x, rest));
    else if (rest.length < (i.also ?? []).length) layout = mapPiece(layout, i, (x) => relabelled({ ...x, also: rest.length > 0 ? rest : undefined }));
  }
  return layout;
}

/** The next display of a shared table takes its name; a standing piece goes back to being what it is; all else goes. */
function withoutRole(b: Bench, i: Item, rest: readonly string[]): Item | null {
  const [next, ...more] = rest;
  if (next !== undefined) return relabelled({ ...i, role: next, also: more.length > 0 ? more : undefined });
  if (!("standing" in i.from)) return null;
  const id = i.from.standing;
  const own = b.venue.rooms.flatMap((r) => r.standing).find((s) => s.id === id);
  return own ? { ...standingItem(i.room, own), at: i.at, angle: i.angle } : null;
}
const word = (w: string): string => w.replaceAll("-", " ");
function relabelled(i: Item): Item {
  const text = [i.role ?? "", ...(i.also ?? [])].map(word).join(", ");
  return { ...i, label: `${text[0]?.toUpperCase() ?? ""}${text.slice(1)}` };
}

/** A room with everything that stands in it in some parts of the day, as one floor. */
function floorWith(b: Bench, scenes: readonly Scene[], room: string): RoomFloor | null {
  const first = scenes[0];
  const bare = first ? drapedFloor(siteFor(b.venue, first.drapes), room) : null;
  if (!bare) return null;
  const seen = new Set<string>();
  const placed = scenes.flatMap((s) => s.items).filter((i) => {
    const key = JSON.stringify([i.id, i.at, i.angle]);
    if (i.room !== room || seen.has(key)) return false;
    seen.add(key);
    return true;
  }).map((i) => placedOf(i));
  return withPlaced(bare, ...placed);
}

/** Stands one piece more where it suits, touching nothing else; null where no floor of the day takes it. */
export function addSpec(b: Bench, layout: Layout, spec: Spec): Layout | null {
  const shared = ["cards", "guest-book", "welcome", "photographs", "favours"];
  const rooms = [...new Set(layout.scenes.flatMap((s) => s.rooms))].map((id) => b.venue.rooms.find((r) => r.id === id)).filter((r) => r !== undefined)
    .sort((x, y) => rank(spec, x.uses) - rank(spec, y.uses) || area(x.outline) - area(y.outline));
  for (const offer of offers(b, layout, spec)) for (const room of rooms) {
    const all = layout.scenes.filter((s) => s.rooms.includes(room.id));
    // In a room that is turned over the piece may come with the tables.
    for (const scenes of [all, all.filter((s) => s.id !== "ceremony")]) {
      if (scenes.length === 0 || (scenes.length === all.length && scenes !== all)) continue;
      if (scenes.length < all.length && !layout.turnovers.some((t) => t.room === room.id && t.from === "ceremony")) continue;
      const f = floorWith(b, scenes, room.id);
      if (!f) continue;
      for (const s of rankedSpots(f, { spec: offer, free: offer.kind === "cocktail-table" }).slice(0, SPOTS)) {
        if (b.budget.left <= 0) return null;
        const item = { ...itemOf(offer, room.id, s), id: freshId(layout, offer.id) };
        const next = addPiece(layout, item, new Set(scenes.map((x): SceneId => x.id)));
        if (addsNone(b, layout, next, (x) => x.items.includes(item.id))) return next;
      }
    }
  }
  // A small display may share a table that stands.
  const host = shared.includes(spec.word) ? everyItem(layout).find((i) => i.kind === "table" && i.role !== undefined && shared.includes(i.role) && !b.fixed.has(i.id) && (i.also?.length ?? 0) < 3) : undefined;
  return host ? mapPiece(layout, host, (i) => relabelled({ ...i, also: [...(i.also ?? []), spec.word, ...(spec.also ?? [])] })) : null;
}
const rank = (spec: Spec, uses: readonly string[]): number => { const k = spec.uses.findIndex((u) => uses.includes(u)); return k < 0 ? 9 : k; };

function offers(b: Bench, layout: Layout, spec: Spec): readonly Spec[] {
  if (!("stock" in spec.from) || spec.others.length === 0) return [spec];
  const used = (id: string): number => Math.max(0, ...layout.scenes.map((s) => s.items.reduce((n, i) => n + ("stock" in i.from && i.from.stock === id ? (i.from.count ?? 1) : 0), 0)));
  const units = spec.from.count ?? 1;
  const own = spec.others.filter((s) => used(s.id) + units <= s.count && (units === 1 || ("stock" in spec.from && s.id === spec.from.stock)));
  return own.map((s): Spec => (units > 1 ? spec : { ...spec, from: { stock: s.id }, shape: s.shape })).slice(0, 3);
}

/** Lays a larger dance floor where the one that stands is too small: over the same middle, else the nearest spot. */
export function growFloor(b: Bench, ctx: Context, layout: Layout): Layout | null {
  const want = ctx.demand.floor;
  const floor = everyItem(layout).find((i) => i.kind === "dance-floor");
  if (!want || "diameter" in want.shape) return null;
  if (!floor) return addSpec(b, layout, want);
  if (!mayMove(b, floor)) return null;
  const { width, depth } = want.shape;
  for (const shape of [{ width, depth }, { width: depth, depth: width }]) {
    const bigger: Item = { ...floor, shape, from: want.from };
    if (area(footprintPolygon(bigger)) <= area(footprintPolygon(floor))) return null;
    const region = freeRegion(b.venue, scenesWith(layout, floor), bigger, floor.room);
    for (const s of nearestSpots(region, floor.at, { apart: 150, most: 24 })) {
      const next = mapPiece(layout, floor, (i) => ({ ...i, shape, from: want.from, at: s.at }));
      if (addsNone(b, layout, next, (f) => f.items.includes(floor.id))) return next;
    }
  }
  return null;
}
