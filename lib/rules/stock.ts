import { area } from "../geometry";
import { footprintPolygon, isRound, type Item, type ItemShape } from "../layout";
import { chairsAmong, chairsOwned } from "./chairs";
import { placed, type Context, type Raw, type SceneView } from "./context";

const count = (i: Item): number => ("stock" in i.from ? (i.from.count ?? 1) : 0);

/** No more of anything than the venue owns, over all rooms of a part of the day. */
export function stock(v: SceneView, c: Context): readonly Raw[] {
  const base = { level: "must" as const, source: "the venue's stock", scene: v.scene.id };
  const out: Raw[] = [];
  const used = new Map<string, Item[]>();
  for (const i of v.scene.items) if ("stock" in i.from) {
    const list = used.get(i.from.stock);
    if (list) list.push(i); else used.set(i.from.stock, [i]);
  }
  for (const [id, items] of used) {
    const s = c.venue.stock.find((k) => k.id === id);
    if (!s) { out.push({ ...base, code: "unknown-stock", items: items.map((i) => i.id), data: { stock: id } }); continue; }
    const n = items.reduce((k, i) => k + count(i), 0);
    if (s.kind !== "chair" && n > s.count) {
      out.push({ ...base, code: "stock", items: items.map((i) => i.id), measured: n, limit: s.count, unit: "pieces", data: { name: s.name, used: n, owned: s.count } });
    }
    for (const i of items) if (!sameSize(i, s.shape)) {
      out.push({ ...base, code: "stock-size", items: [i.id], at: placed(i.at), data: { a: i.id, name: s.name } });
    }
  }
  const owned = chairsOwned(c.venue), wanted = chairsAmong(c.venue, v.scene.items);
  if (wanted > owned) {
    out.push({ ...base, code: "stock-chairs", items: [], measured: wanted, limit: owned, unit: "chairs", data: { used: wanted, owned } });
  }
  for (const s of c.venue.stock.filter((k) => k.kind === "chair")) {
    const n = v.scene.items.filter((i) => "stock" in i.from && i.from.stock === s.id).reduce((k, i) => k + count(i), 0);
    if (n > s.count && wanted <= owned) out.push({ ...base, code: "stock", items: [], measured: n, limit: s.count, unit: "pieces", data: { name: s.name, used: n, owned: s.count } });
  }
  return out;
}

const sizeArea = (s: ItemShape): number => (isRound(s) ? (Math.PI * s.diameter * s.diameter) / 4 : s.width * s.depth);

/** One unit has the stock's own size; a piece laid of several has their floor between them. */
function sameSize(i: Item, s: ItemShape): boolean {
  const n = count(i);
  if (n > 1) return Math.abs(area(footprintPolygon(i)) - n * sizeArea(s)) <= Math.max(0.01 * n * sizeArea(s), 4000);
  if (isRound(s) || isRound(i.shape)) return isRound(s) && isRound(i.shape) && Math.abs(s.diameter - i.shape.diameter) <= 1;
  return (near(i.shape.width, s.width) && near(i.shape.depth, s.depth)) || (near(i.shape.width, s.depth) && near(i.shape.depth, s.width));
}

const near = (a: number, b: number): boolean => Math.abs(a - b) <= 1;

/** No table has more places than it seats at most. */
export function tablePlaces(v: SceneView, c: Context): readonly Raw[] {
  return v.scene.items.flatMap((i): readonly Raw[] => {
    const s = "stock" in i.from ? c.venue.stock.find((k) => "stock" in i.from && k.id === i.from.stock) : undefined;
    const most = s?.seats ? s.seats.most * count(i) : Infinity;
    if (i.kind !== "table" || i.seats.length <= most) return [];
    return [{
      code: "table-places", level: "must", source: "the venue's stock", scene: v.scene.id, items: [i.id], at: placed(i.at),
      measured: i.seats.length, limit: most, unit: "places", data: { a: i.id, places: i.seats.length, most },
    }];
  });
}
