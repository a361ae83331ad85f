import { assertNever, fail, ok, type Result } from "../base";
import { add, roundPoint, type Point } from "../geometry";
import { guestPlaces, movedTo, standsAs, type Item, type Layout, type Scene, type SceneId } from "../layout";
import type { Venue } from "../venue";
import { additionsOf, itemFor, placesFor, tableLike } from "./additions";
import { carried, middleOfRun, runOf } from "./run";
import { freeSpot } from "./spot";
import type { Edit, EditFault, Standing } from "./types";

export const turned = (angle: number): number => { const a = ((angle % 360) + 360) % 360; return Math.round(a * 1000) / 1000 % 360; };

/** Whether the venue never moves it. */
export const isFixed = (venue: Venue, item: Item): boolean => {
  const { from } = item;
  return "standing" in from && venue.rooms.some((r) => r.standing.some((s) => s.id === from.standing && s.move === null));
};

export const sceneOf = (layout: Layout, id: SceneId): Scene | undefined => layout.scenes.find((s) => s.id === id);
export const pieceOf = (layout: Layout, scene: SceneId, id: string): Item | undefined => sceneOf(layout, scene)?.items.find((i) => i.id === id);

/** A part of the day with other pieces: places counted anew; a number that its piece bore goes to the next of the same name, or goes. */
function withItems(scene: Scene, items: readonly Item[]): Scene {
  const numbers = scene.numbers.flatMap((id) => {
    if (items.some((i) => i.id === id)) return [id];
    const label = scene.items.find((i) => i.id === id)?.label;
    const heir = items.find((i) => i.kind === "table" && i.label === label && scene.items.some((o) => o.id === i.id));
    return heir ? [heir.id] : [];
  });
  return { ...scene, items, seats: guestPlaces(items), numbers };
}

type Change = (scene: Scene) => Scene;
/** Changes parts of the day, of the wet day too; one that gives the same object back was left alone. */
function mapScenes(now: Standing, change: Change): Standing {
  const { layout } = now;
  const wet = layout.wet && { ...layout.wet, scenes: layout.wet.scenes.map(change) };
  return { ...now, layout: { ...layout, scenes: layout.scenes.map(change), ...(wet ? { wet } : {}) } };
}

type Aim = { readonly scene: SceneId; readonly only?: boolean };
function mapPiece(now: Standing, was: Item, { scene: id, only = false }: Aim, change: (i: Item) => Item | null): Standing {
  return mapScenes(now, (scene) => {
    if ((only && scene.id !== id) || !scene.items.some((i) => standsAs(i, was))) return scene;
    return withItems(scene, scene.items.flatMap((i) => { const next = standsAs(i, was) ? change(i) : i; return next ? [next] : []; }));
  });
}

/** The state after a deed, or why it cannot be done. Nothing that stands is renumbered or renamed. */
export function applyEdit(venue: Venue, now: Standing, edit: Edit): Result<Standing, EditFault> {
  switch (edit.do) {
    case "hold": return hold(now, [edit.piece, ...(edit.with ?? [])], edit.on);
    case "add": return added(venue, now, edit);
    default: break;
  }
  const item = pieceOf(now.layout, edit.scene, edit.piece);
  if (!item) return fail({ code: "no-such-piece" });
  if (edit.do === "note") { const text = edit.text.trim(); return ok(mapPiece(now, item, edit, (i) => noted(i, text))); }
  if (edit.do === "lay") return laid(venue, now, item, edit);
  const scene = sceneOf(now.layout, edit.scene);
  const run = scene && "run" in edit && edit.run === true ? runOf(scene, item) : [item];
  for (const one of run) {
    if (isFixed(venue, one)) return fail({ code: "fixed", item: one });
    if (now.held.includes(one.id)) return fail({ code: "held", item: one });
  }
  /** Every piece of the run, one after the other. */
  const each = (change: (i: Item) => Item | null): Standing => run.reduce((state, one) => mapPiece(state, one, edit, change), now);
  switch (edit.do) {
    case "place": {
      if (!venue.rooms.some((r) => r.id === edit.room)) return fail({ code: "no-such-room" });
      const by = turned(edit.angle ?? item.angle) - item.angle;
      return ok(each((i) => ({ ...(i.id === item.id ? movedTo(i, edit.at, item.angle + by) : carried(i, { from: item.at, to: edit.at, by })), room: edit.room })));
    }
    case "turn": {
      const middle = middleOfRun(run), by = turned(edit.angle) - item.angle;
      return ok(run.length === 1 ? each((i) => movedTo(i, i.at, turned(edit.angle))) : each((i) => carried(i, { from: middle, to: middle, by })));
    }
    case "swap": return swapped(venue, now, item, edit);
    case "exchange": return exchanged(venue, now, item, edit);
    case "remove": return ok(each(() => null));
    default: return assertNever(edit);
  }
}

function noted(i: Item, text: string): Item {
  const { note: _, ...rest } = i;
  return text === "" ? rest : { ...rest, note: text };
}

function hold(now: Standing, ids: readonly string[], on: boolean): Result<Standing, EditFault> {
  if (!ids.every((id) => now.layout.scenes.some((s) => s.items.some((i) => i.id === id)))) return fail({ code: "no-such-piece" });
  const rest = now.held.filter((h) => !ids.includes(h));
  return ok({ ...now, held: on ? [...new Set([...rest, ...ids])].sort() : rest });
}

/** Each goes where the other stood, turned as the other was; they keep their own places. */
function swapped(venue: Venue, now: Standing, a: Item, edit: Extract<Edit, { do: "swap" }>): Result<Standing, EditFault> {
  const b = pieceOf(now.layout, edit.scene, edit.with);
  if (!b || b.id === a.id) return fail({ code: "no-such-piece" });
  if (isFixed(venue, b)) return fail({ code: "fixed", item: b });
  if (now.held.includes(b.id)) return fail({ code: "held", item: b });
  const to = (i: Item, other: Item): Item => ({ ...movedTo(i, other.at, other.angle), room: other.room });
  return ok(mapScenes(now, (scene) => {
    const both = scene.items.some((i) => standsAs(i, a)) && scene.items.some((i) => standsAs(i, b));
    if (!both || ((edit.only ?? false) && scene.id !== edit.scene)) return scene;
    return withItems(scene, scene.items.map((i) => (standsAs(i, a) ? to(i, b) : standsAs(i, b) ? to(i, a) : i)));
  }));
}

function exchanged(venue: Venue, now: Standing, item: Item, edit: Extract<Edit, { do: "exchange" }>): Result<Standing, EditFault> {
  const scene = sceneOf(now.layout, edit.scene), stock = venue.stock.find((s) => s.id === edit.stock);
  const offer = scene && additionsOf(venue, { layout: now.layout, scene, brought: [] }).find((o) => o.what.kind === "stock" && o.what.id === edit.stock);
  if (!stock || !offer || !tableLike(item) || stock.kind !== "table") return fail({ code: "none-left" });
  const places = item.seats.length === 0 ? 0 : Math.min(item.seats.length, stock.seats?.most ?? 0);
  return ok(mapPiece(now, item, edit, (i) => {
    const bare: Item = { ...i, from: { stock: stock.id }, shape: stock.shape, seats: [] };
    return { ...bare, seats: placesFor(venue, bare, places, i.seats) };
  }));
}

function laid(venue: Venue, now: Standing, item: Item, edit: Extract<Edit, { do: "lay" }>): Result<Standing, EditFault> {
  const { from } = item;
  const stock = "stock" in from ? venue.stock.find((s) => s.id === from.stock) : undefined;
  const most = (stock?.seats?.most ?? 0) * ("stock" in from ? (from.count ?? 1) : 1);
  if (item.kind !== "table" || edit.places > most) return fail({ code: "places", most });
  return ok(mapPiece(now, item, edit, (i) => (i.seats.length === edit.places ? i : { ...i, seats: placesFor(venue, i, edit.places, i.seats) })));
}

function added(venue: Venue, now: Standing, edit: Extract<Edit, { do: "add" }>): Result<Standing, EditFault> {
  const scene = sceneOf(now.layout, edit.scene), room = venue.rooms.find((r) => r.id === edit.room);
  if (!scene || !room || !scene.rooms.includes(room.id)) return fail({ code: "no-such-room" });
  const bare = itemFor(venue, { layout: now.layout, scene, room: room.id, what: edit.what });
  if (!bare) return fail({ code: "none-left" });
  const spot = edit.at ? { at: edit.at, angle: turned(edit.angle ?? bare.angle) } : freeSpot(venue, scene, { ...bare, angle: turned(edit.angle ?? bare.angle) });
  if (!spot) return fail({ code: "no-floor" });
  const item = movedTo(bare, spot.at, spot.angle);
  const numbered = item.kind === "table" && item.role === "dining";
  return ok(mapScenes(now, (s) => {
    const here = s.rooms.includes(room.id) && (s.id === edit.scene || edit.only === false);
    if (!here) return s;
    const next = withItems(s, [...s.items, item]);
    return numbered ? { ...next, numbers: [...next.numbers, item.id] } : next;
  }));
}

/** Where a piece comes to stand that is moved by so much along the page. */
export const nudged = (item: Item, by: Point): Point => roundPoint(add(item.at, by));
