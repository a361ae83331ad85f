import { guestSeats, type Context, type Raw, type SceneView } from "./context";
import { postedFor } from "./people";

/** People against the posted figures, the area of the floor, and the densest that any posting may be. */
export function load(v: SceneView, c: Context): readonly Raw[] {
  const figures = postedFor(v.site, v.scene, c.brief);
  const kind = figures.kinds.join("/");
  const base = { scene: v.scene.id, items: [] as readonly string[], unit: "people" };
  const out: Raw[] = [];
  if (v.people > figures.densest) out.push({
    ...base, code: "densest", level: "must", source: "IBC 2018 1004.5.1 (7 net ft2 a person)", measured: v.people, limit: figures.densest, data: { people: v.people, limit: figures.densest },
  });
  if (v.people > figures.total) out.push({
    ...base, code: figures.posted ? "posted" : "area", level: "must", source: figures.posted ? "the authority's posted figure" : c.values.source.factors,
    measured: v.people, limit: figures.total, data: { people: v.people, limit: figures.total, kind, must: true },
  });
  else if (v.people > figures.totalByArea) out.push({
    ...base, code: "area", level: "should", source: c.values.source.factors, measured: v.people, limit: figures.totalByArea, data: { people: v.people, limit: figures.totalByArea, kind, must: false },
  });
  for (const r of figures.rooms) {
    const seats = guestSeats(v.scene.items.filter((i) => i.room === r.room));
    if (seats <= r.limit || figures.rooms.length < 2) continue;
    out.push({
      ...base, code: "posted-room", level: "must", source: r.posted ? "the authority's posted figure" : c.values.source.factors,
      measured: seats, limit: r.limit, unit: "places", data: { room: r.room, seats, limit: r.limit, kind, posted: r.posted },
    });
  }
  const only = figures.rooms.length === 1 ? figures.rooms[0] : undefined;
  const seats = guestSeats(v.scene.items);
  if (only && seats > only.limit && v.people <= figures.total) out.push({
    ...base, code: "posted-room", level: "must", source: only.posted ? "the authority's posted figure" : c.values.source.factors,
    measured: seats, limit: only.limit, unit: "places", data: { room: only.room, seats, limit: only.limit, kind, posted: only.posted },
  });
  return out;
}
