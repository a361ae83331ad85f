import type { Site } from "../venue";
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

/** Rooms that one can walk to from a scene's rooms: ways out may lead through rooms that are not used. */
function roomsJoined(site: Site, from: readonly string[]): readonly string[] {
  const seen = new Set(from);
  const queue = [...from];
  for (let r = queue.pop(); r !== undefined; r = queue.pop()) {
    for (const p of site.passages) if (p.rooms.includes(r)) for (const o of p.rooms) if (!seen.has(o)) { seen.add(o); queue.push(o); }
  }
  return [...seen];
}

/** Width of the ways out, 0.2 in a person; any one shut must leave half: IBC 2018 1005.3.2, 1005.5. */
export function exitWidth(v: SceneView, c: Context): readonly Raw[] {
  const gates = roomsJoined(v.site, v.scene.rooms).flatMap((r) => v.site.rooms.get(r)?.gates ?? []).filter((g) => g.door.exit && !v.site.rooms.has(g.door.leads));
  const widths = gates.map((g) => g.width).filter((w) => w >= c.values.exitLeast - 1);
  const all = widths.reduce((a, b) => a + b, 0);
  const need = v.people * c.values.exitWidth;
  const left = all - Math.max(0, ...widths);
  if (widths.length === 0) return [];
  const base = { code: "exit-width", level: "should" as const, source: "IBC 2018 1005.3.2, 1005.5, 1010.1.1", scene: v.scene.id, items: [], unit: "mm" };
  if (all < need - 1) return [{ ...base, measured: Math.floor(all), limit: Math.ceil(need), data: { people: v.people, width: Math.floor(all), limit: Math.ceil(need), shut: false } }];
  if (v.people > c.values.exitSteps[0] && left < need / 2 - 1) return [{ ...base, measured: Math.floor(left), limit: Math.ceil(need / 2), data: { people: v.people, width: Math.floor(left), limit: Math.ceil(need / 2), shut: true } }];
  return [];
}
