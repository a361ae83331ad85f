import type { Layout } from "../../layout";
import type { Raw } from "../../rules";
import type { Context } from "../stages/context";
import { byClearing, byMoving, coversOf, mayMove, nearPieces, pastMending, pieceOf } from "./covers";
import { mapPiece, recounted, sceneOf } from "./edit";
import { addsNone, keyOf, mustsOf, type Bench } from "./judge";
import { addChairs, addWheels, lay, placesAtMeal } from "./places";
import { addSpec, growFloor, missingSpecs } from "./pieces";
import { relayFixed } from "./relay";
import { relocate } from "./relocate";
import { addRowChairs, addRowWheels } from "./rows";
import { addTable, makeRoom, swapTable } from "./tables";
import { keptPlace } from "./reseat";
import { scenesWith } from "./region";

const ROUNDS = 8;
/** Pieces near a pinch that are tried one by one. */
const NEAR = 8;

/** Guests' places that the meal is short of, by its own tables. */
const shortAtMeal = (b: Bench, l: Layout): number => (sceneOf(l, "meal") ? Math.max(0, b.brief.guests.adults + b.brief.guests.children - placesAtMeal(l)) : 0);
const shortInRows = (b: Bench, l: Layout): number => {
  const scene = sceneOf(l, "ceremony");
  if (!scene || b.brief.ceremony.seating === "standing" || b.brief.ceremony.seating === "at-tables") return 0;
  return Math.max(0, (b.brief.guests.ceremony ?? b.brief.guests.adults + b.brief.guests.children) - scene.seats);
};
const wheelsAt = (l: Layout, id: "meal" | "ceremony"): number => sceneOf(l, id)?.items.reduce((n, i) => n + i.seats.filter((s) => s.place === "wheelchair").length, 0) ?? 0;

/** Places for everyone by chairs first, then by one table more, a larger one in the stead of another, or one moved aside. */
export function seatAll(b: Bench, start: Layout): Layout {
  let layout = addChairs(b, start, shortAtMeal(b, start));
  for (let tables = 0; tables < 4 && b.budget.left > 0; tables++) {
    const short = shortAtMeal(b, layout);
    if (short === 0) return layout;
    // Fewer chairs elsewhere where a new table takes them anyway: the state before chairs were squeezed in is tried first.
    const from = tables === 0 ? start : layout;
    const need = shortAtMeal(b, from);
    const next = addTable(b, from, need) ?? addTable(b, layout, short) ?? swapTable(b, layout, short) ?? makeRoom(b, layout, short);
    if (!next) return layout;
    layout = addChairs(b, next, shortAtMeal(b, next));
  }
  return layout;
}

/** Rows, places and wheelchairs' places as the brief counts them. */
export function fillPlaces(b: Bench, start: Layout): Layout {
  let layout = seatAll(b, start);
  const wheels = b.brief.guests.wheelchairs;
  if (sceneOf(layout, "meal") && wheelsAt(layout, "meal") < wheels) layout = addWheels(b, layout, wheels - wheelsAt(layout, "meal"));
  layout = addRowChairs(b, layout, shortInRows(b, layout));
  const rows = sceneOf(layout, "ceremony") && b.brief.ceremony.seating !== "standing" && b.brief.ceremony.seating !== "at-tables";
  if (rows && wheelsAt(layout, "ceremony") < wheels) layout = addRowWheels(b, layout, wheels - wheelsAt(layout, "ceremony"));
  return layout;
}

/** What the brief asks for and is not there; each in floor that is free. */
export function fillPieces(b: Bench, ctx: Context, start: Layout): Layout {
  let layout = start;
  if (mustsOf(b, layout).some((f) => f.code === "dance-floor")) layout = growFloor(b, ctx, layout) ?? layout;
  for (const spec of missingSpecs(ctx, layout)) layout = addSpec(b, layout, spec) ?? layout;
  return layout;
}

/** Tables of which the venue owns too few go, those with the fewest places first. */
function withinStock(b: Bench, start: Layout): Layout {
  let layout = start;
  for (let n = 0; n < 40; n++) {
    const over = mustsOf(b, layout).find((f) => f.code === "stock");
    if (!over) return layout;
    const items = over.items.flatMap((id) => { const i = pieceOf(layout, over, id); return i && mayMove(b, i) ? [i] : []; }).sort((x, y) => x.seats.length - y.seats.length || (x.id < y.id ? 1 : -1));
    const gone = items[0];
    if (!gone) return layout;
    layout = mapPiece(layout, gone, () => null);
  }
  return layout;
}

/** Standing pieces that may not be moved go back to their places; a table's places are set anew where they stand wrongly, a fixed one's too. */
function inPlace(b: Bench, start: Layout): Layout {
  let layout = relayFixed(b, recounted(start));
  for (const f of mustsOf(b, layout)) {
    const item = f.items[0] === undefined ? undefined : pieceOf(layout, f, f.items[0]);
    if (!item) continue;
    if (f.code === "standing-fixed" && "standing" in item.from && !b.fixed.has(item.id)) {
      const home = keptPlace(b, item.from.standing);
      if (home) layout = mapPiece(layout, item, (i) => ({ ...i, room: home.room, at: home.at, angle: home.angle }));
    }
    if ((f.code === "seat-offset" || f.code === "seat-facing") && item.kind === "table") layout = lay(b, layout, { ...item }, item.seats.length) ?? layout;
    if (f.code === "table-places") layout = lay(b, layout, item, f.limit ?? item.seats.length) ?? layout;
  }
  return layout;
}

/** Moves the lightest set of pieces that the findings name; the first set that can all be placed. */
function moveApart(b: Bench, layout: Layout, findings: readonly Raw[]): Layout | null {
  const gone = new Set(findings.map(keyOf));
  let best: { readonly layout: Layout; readonly left: number } | null = null;
  for (const cover of coversOf(b, layout, findings)) {
    let next: Layout | null = layout;
    for (const piece of cover) {
      if (!next) break;
      const spot: Layout | null = relocate(b, next, piece, { otherRooms: piece.seats.length === 0 });
      next = spot;
    }
    if (!next) continue;
    const left = mustsOf(b, next).filter((f) => gone.has(keyOf(f))).length;
    if (left === 0) return next;
    if (!best || left < best.left) best = { layout: next, left };
  }
  return best && best.left < findings.length ? best.layout : null;
}

/** Moves one piece near a pinch so that the way is open again; where none can, a table with places to spare goes. */
function openWay(b: Bench, layout: Layout, f: Raw): Layout | null {
  const before = mustsOf(b, layout).length;
  for (const piece of nearPieces(b, layout, f, NEAR)) {
    if (b.budget.left <= 0) return null;
    const next = relocate(b, layout, piece, { gone: new Set([keyOf(f)]) });
    if (next && mustsOf(b, next).length < before) return next;
  }
  const named = f.items.flatMap((id) => { const i = pieceOf(layout, f, id); return i && mayMove(b, i) ? [i] : []; });
  for (const piece of named) {
    const next = relocate(b, layout, piece, {});
    if (next && mustsOf(b, next).length < before) return next;
  }
  return null;
}

/** Pieces that can be put nowhere, taken away where nobody loses a place asked for: they may find another spot later. */
function takeOut(b: Bench, layout: Layout, findings: readonly Raw[]): Layout | null {
  for (const cover of coversOf(b, layout, findings)) {
    const next = cover.reduce((l, i) => ("standing" in i.from || i.kind === "table" || i.kind === "chair" || i.kind === "easel" || i.kind === "cocktail-table" || i.kind === "other" ? mapPiece(l, i, () => null) : l), layout);
    if (next !== layout && addsNone(b, layout, next, (f) => f.code === "standing-gone")) return next;
    const only = cover[0];
    if (only && scenesWith(layout, only).length > 0 && next !== layout) return next;
  }
  return null;
}

/** Puts a layout right with as little moved as can be. What is left of its musts is for the caller to see. */
export function mend(b: Bench, ctx: Context, start: Layout): Layout {
  let layout = fillPieces(b, ctx, withinStock(b, inPlace(b, start)));
  for (let round = 0; round < ROUNDS && b.budget.left > 0; round++) {
    const musts = mustsOf(b, layout);
    if (musts.length === 0) return layout;
    const apart = musts.filter((f) => byMoving(f) && !pastMending(b, layout, f));
    let next: Layout | null = apart.length > 0 ? moveApart(b, layout, apart) : null;
    const pinch = next ? undefined : musts.find(byClearing);
    if (!next && pinch) next = openWay(b, layout, pinch);
    if (!next && musts.some((f) => f.code === "places-short" || f.code === "wheelchairs-short")) { const filled = fillPlaces(b, layout); next = filled === layout ? null : filled; }
    if (!next && apart.length > 0 && round < 3) { const out = takeOut(b, layout, apart); next = out ? fillPieces(b, ctx, fillPlaces(b, out)) : null; }
    if (!next) return layout;
    layout = next;
  }
  return layout;
}
