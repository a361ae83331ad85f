import { guestSeats, placed, type Context, type Raw, type SceneView } from "./context";

/** Places for every guest at the meal and the ceremony, and a wheelchair's place for each who needs one. */
export function places(v: SceneView, c: Context): readonly Raw[] {
  const base = { scene: v.scene.id, items: [] as readonly string[], unit: "places" };
  const seats = guestSeats(v.scene.items);
  const out: Raw[] = [];
  if (seats !== v.scene.seats) out.push({
    ...base, code: "seats-count", level: "must", source: "form of the layout", measured: v.scene.seats, limit: seats, data: { said: v.scene.seats, seats },
  });
  if (!c.brief) return out;
  const sits = v.scene.id === "meal" || (v.scene.id === "ceremony" && c.brief.ceremony.seating !== "standing");
  if (!sits) return out;
  if (seats < v.guests) out.push({
    ...base, code: "places-short", level: "must", source: "the brief", measured: seats, limit: v.guests, data: { seats, guests: v.guests, short: v.guests - seats, part: v.scene.id },
  });
  const wheels = v.scene.items.reduce((n, i) => n + i.seats.filter((s) => s.place === "wheelchair").length, 0);
  const wanted = Math.min(c.brief.guests.wheelchairs, v.guests);
  if (wheels < wanted) out.push({
    ...base, code: "wheelchairs-short", level: "must", source: "the brief", measured: wheels, limit: wanted, data: { places: wheels, guests: wanted, part: v.scene.id },
  });
  const all = v.scene.items.reduce((n, i) => n + (i.kind === "table" || i.kind === "chair" ? i.seats.length : 0), 0);
  if (v.scene.id === "meal" && seats >= v.guests && all < v.people) out.push({
    ...base, code: "suppliers-short", level: "should", source: "the brief", measured: all - v.guests, limit: c.brief.guests.suppliers, data: { places: all - v.guests, suppliers: c.brief.guests.suppliers },
  });
  return out;
}

/** No table is laid for one guest alone. */
export function alone(v: SceneView): readonly Raw[] {
  if (v.scene.id !== "meal") return [];
  return v.scene.items.filter((i) => i.kind === "table" && i.role !== "work" && i.seats.length === 1).map((i) => ({
    code: "alone", level: "should" as const, source: "common practice, no source", scene: v.scene.id, items: [i.id], at: placed(i.at),
    measured: 1, limit: 2, unit: "places", data: { a: i.id },
  }));
}

/** A number of places a table that the brief names is kept to; comfort is passed only where asked. */
export function perTable(v: SceneView, c: Context): readonly Raw[] {
  if (!c.brief || v.scene.id !== "meal") return [];
  const asked = c.brief.meal.perTable;
  const over = v.scene.items.flatMap((i) => {
    if (i.kind !== "table" || !("stock" in i.from) || asked === "most") return [];
    const id = i.from.stock;
    const comfort = c.venue.stock.find((s) => s.id === id)?.seats?.comfort;
    const limit = typeof asked === "number" ? asked : comfort === undefined ? Infinity : comfort * (i.from.count ?? 1);
    return i.seats.length > limit ? [{ item: i, limit }] : [];
  });
  // One finding for all of them: a sentence a table would bury the rest.
  const worst = [...over].sort((a, b) => b.item.seats.length - b.limit - (a.item.seats.length - a.limit))[0];
  if (!worst) return [];
  const { item, limit } = worst;
  return [{
    code: "table-comfort-places", level: "should", source: "the brief", scene: v.scene.id, items: over.map((o) => o.item.id), at: placed(item.at),
    measured: item.seats.length, limit, unit: "places", data: { a: item.id, places: item.seats.length, limit, tables: over.length },
  }];
}
