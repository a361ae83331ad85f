import { seatsAround, moveSeats, shareSides } from "../engine/seating/seats";
import { distance, sub, turn, type Point } from "../geometry";
import { isRound, type Item, type ItemKind, type ItemShape, type Layout, type Scene, type Seat } from "../layout";
import { chairsAmong, chairsOwned } from "../rules/chairs";
import { chairOf } from "../rules/context";
import { standingItem } from "../rules/ways/solids";
import type { Stock, Venue } from "../venue";
import type { Addition } from "./types";

/** Something that can be added to a part of the day: what, how many are left, what it is called. Standing furniture goes back to where it stands. */
export type Offer = { readonly what: Addition; readonly name: string; readonly shape: ItemShape; /** How many are left; absent where that is no question. */ readonly left?: number; readonly places?: number };
/** A thing that the couple bring, as their answers name it. */
export type Brought = { readonly what: string; readonly width: number; readonly depth: number };
type In = { readonly layout: Layout; readonly scene: Scene; readonly brought: readonly Brought[] };

export const tableLike = (i: Pick<Item, "kind">): boolean => i.kind === "table";
const units = (i: Item, stock: string): number => ("stock" in i.from && i.from.stock === stock ? (i.from.count ?? 1) : 0);
const KIND: Readonly<Record<Stock["kind"], ItemKind | null>> = {
  table: "table", chair: "chair", bar: "bar", "cocktail-table": "cocktail-table", lounge: "lounge", screen: "screen", arch: "arch", stage: "other", other: "other",
  // A floor is laid of many panels; one by itself is none.
  "dance-panel": null,
};

/** Chairs not in use in a part of the day. */
const chairsLeft = (venue: Venue, scene: Scene): number => chairsOwned(venue) - chairsAmong(venue, scene.items);

function stockLeft(venue: Venue, scene: Scene, s: Stock): number {
  const left = s.count - scene.items.reduce((n, i) => n + units(i, s.id), 0);
  return s.kind === "chair" ? Math.min(left, chairsLeft(venue, scene)) : left;
}

/** What is left of the stock, what standing furniture is put away, and what the couple bring that stands nowhere yet. */
export function additionsOf(venue: Venue, { layout, scene, brought }: In): readonly Offer[] {
  const stock = venue.stock.flatMap((s): readonly Offer[] => {
    const left = stockLeft(venue, scene, s);
    if (left <= 0 || KIND[s.kind] === null) return [];
    return [{ what: { kind: "stock", id: s.id }, name: s.name, shape: s.shape, left, ...(s.seats ? { places: Math.min(s.seats.comfort, Math.max(0, chairsLeft(venue, scene))) } : {}) }];
  });
  const there = new Set(scene.items.flatMap((i) => ("standing" in i.from ? [i.from.standing] : [])));
  const away = venue.rooms.filter((r) => scene.rooms.includes(r.id)).flatMap((r) => r.standing.filter((s) => !there.has(s.id)))
    .map((s): Offer => ({ what: { kind: "standing", id: s.id }, name: s.name, shape: s.shape }));
  const stands = new Set(layout.scenes.flatMap((s) => s.items.filter((i) => "brought" in i.from).map((i) => i.label)));
  const own = brought.filter((b) => !stands.has(b.what)).map((b): Offer => ({ what: { kind: "brought", ...b }, name: b.what, shape: { width: b.width, depth: b.depth } }));
  return [...stock, ...own, ...away];
}

/** A name that no piece of the day bears yet. */
function freshId(layout: Layout, stem: string): string {
  const taken = new Set([...layout.scenes, ...(layout.wet?.scenes ?? [])].flatMap((s) => s.items.map((i) => i.id)));
  for (let n = 1; ; n++) { const id = n === 1 ? stem : `${stem}-${n}`; if (!taken.has(id)) return id; }
}

const numberIn = (label: string): number => Number(/(\d+)\s*$/.exec(label)?.[1] ?? 0);
/** The number after the highest that any table of the day bears. */
const nextNumber = (layout: Layout): number => 1 + Math.max(0, ...[...layout.scenes, ...(layout.wet?.scenes ?? [])].flatMap((s) => s.items.filter(tableLike).map((i) => numberIn(i.label))));

type Want = { readonly layout: Layout; readonly scene: Scene; readonly room: string; readonly what: Addition };

/** The piece that an addition brings, at the origin (standing furniture where the venue keeps it); null where none is left. */
export function itemFor(venue: Venue, { layout, scene, room, what }: Want): Item | null {
  if (what.kind === "brought") return { id: freshId(layout, "brought"), kind: "other", label: what.what, room, from: { brought: true }, shape: { width: what.width, depth: what.depth }, at: [0, 0], angle: 0, seats: [] };
  if (what.kind === "standing") {
    const home = venue.rooms.find((r) => r.standing.some((s) => s.id === what.id)), piece = home?.standing.find((s) => s.id === what.id);
    const there = scene.items.some((i) => "standing" in i.from && i.from.standing === what.id);
    return home && piece && !there ? standingItem(home.id, piece) : null;
  }
  const stock = venue.stock.find((s) => s.id === what.id), kind = stock && KIND[stock.kind];
  if (!stock || !kind || stockLeft(venue, scene, stock) <= 0) return null;
  const dining = kind === "table" && stock.seats !== undefined, n = nextNumber(layout);
  const bare: Item = {
    id: freshId(layout, dining ? `t${n}` : stock.id), kind, label: dining ? `Table ${n}` : stock.name, room, from: { stock: stock.id }, shape: stock.shape, at: [0, 0], angle: 0, seats: [],
    ...(dining ? { role: "dining" } : {}),
  };
  if (kind === "chair") return { ...bare, seats: [{ x: 0, y: 0, facing: 90, place: "chair" }] };
  return dining ? { ...bare, seats: placesFor(venue, bare, Math.max(0, Math.min(stock.seats?.comfort ?? 0, chairsLeft(venue, scene))), []) } : bare;
}

/** Which sides of a straight table have places now: upper, right, lower, left as it stands unturned. */
function sidesUsed(item: Item, seats: readonly Seat[]): readonly boolean[] {
  if (isRound(item.shape)) return [true, true, true, true];
  const { width, depth } = item.shape, used = [false, false, false, false];
  for (const s of seats) {
    const [x, y] = turn(sub([s.x, s.y], item.at), -item.angle);
    used[Math.abs(y) / depth >= Math.abs(x) / width ? (y < 0 ? 0 : 2) : x > 0 ? 1 : 3] = true;
  }
  return used;
}

/**
 * So many places about a table as it stands: on the sides that had any, on all that may have if none had or they do not hold them.
 * Wheelchair places stay where they are, and count.
 */
export function placesFor(venue: Venue, item: Item, places: number, was: readonly Seat[]): Seat[] {
  const chair = chairOf(venue), { from, shape } = item;
  const ends = "stock" in from && venue.stock.some((s) => s.id === from.stock && s.ends);
  const wheels = was.filter((s) => s.place === "wheelchair").slice(0, places);
  const all = [true, ends, true, ends], used = sidesUsed(item, was);
  const open = used.some(Boolean) && !isRound(shape) && shareSides(shape, places, used, chair.width).reduce((n, k) => n + k, 0) === places ? used : all;
  const around = isRound(shape) ? seatsAround(shape, places, { ends, chair }) : seatsAround(shape, places, { ends, chair, sides: shareSides(shape, places, open, chair.width) });
  const fresh = moveSeats(around, item.at, item.angle);
  for (const w of wheels) {
    const spot: Point = [w.x, w.y];
    const near = fresh.map((s, i) => ({ i, d: s.place === "chair" ? distance([s.x, s.y], spot) : Infinity })).sort((a, b) => a.d - b.d)[0];
    if (near) fresh.splice(near.i, 1, w);
  }
  return fresh;
}
