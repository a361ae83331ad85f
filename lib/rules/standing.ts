import { contains } from "../geometry";
import type { Item } from "../layout";
import type { Site, Standing } from "../venue";
import { placed, type Context, type Raw, type SceneView } from "./context";

/** Standing furniture: each piece once, of its own size; what may not be moved stands where the venue keeps it. */
export function standing(v: SceneView, c: Context): readonly Raw[] {
  const base = { level: "must" as const, source: "the venue's standing furniture", scene: v.scene.id };
  const all = new Map<string, { readonly room: string; readonly s: Standing }>(
    c.venue.rooms.flatMap((r) => r.standing.map((s) => [s.id, { room: r.id, s }] as const)));
  const out: Raw[] = [];
  const seen = new Map<string, string>();
  for (const i of v.scene.items) {
    if (!("standing" in i.from)) continue;
    const id = i.from.standing;
    const known = all.get(id);
    if (!known) { out.push({ ...base, code: "unknown-standing", items: [i.id], at: placed(i.at), data: { a: i.id, standing: id } }); continue; }
    const twice = seen.get(id);
    if (twice !== undefined) out.push({ ...base, code: "standing-twice", items: [twice, i.id], at: placed(i.at), data: { name: known.s.name } });
    seen.set(id, i.id);
    if (JSON.stringify(sizeOf(i.shape)) !== JSON.stringify(sizeOf(known.s.shape))) out.push({ ...base, code: "standing-size", items: [i.id], at: placed(i.at), data: { name: known.s.name } });
    const lentTo = v.site.drapes.find((d) => d.from === known.room && contains(d.area, known.s.at))?.grows;
    const moved = (i.room !== known.room && i.room !== lentTo) || Math.hypot(i.at[0] - known.s.at[0], i.at[1] - known.s.at[1]) > 1 || turned(i.angle, known.s.angle) > 0.5;
    if (moved && known.s.move === null) out.push({ ...base, code: "standing-fixed", items: [i.id], at: placed(i.at), data: { name: known.s.name } });
  }
  for (const [id, { room, s }] of all) if (s.move === null && !seen.has(id) && (v.scene.rooms.includes(room) || v.site.drapes.some((d) => d.from === room && contains(d.area, s.at)))) {
    out.push({ ...base, code: "standing-gone", items: [], at: placed(s.at), data: { name: s.name, room } });
  }
  return out;
}

/**
 * Whether a standing piece is where the venue keeps it. Where two such meet, or one meets what is built in, that is the venue's own
 * plan of the room and nothing that a layout does: it is told as a note.
 */
export function atHome(site: Site, i: Item): boolean {
  if (!("standing" in i.from)) return false;
  const id = i.from.standing, s = site.rooms.get(i.room)?.room.standing.find((one) => one.id === id);
  return s !== undefined && Math.hypot(i.at[0] - s.at[0], i.at[1] - s.at[1]) <= 1 && turned(i.angle, s.angle) <= 0.5;
}

const sizeOf = (s: Standing["shape"]): readonly number[] => ("diameter" in s ? [s.diameter] : [s.width, s.depth]);
const turned = (a: number, b: number): number => { const d = (((a - b) % 360) + 360) % 360; return Math.min(d, 360 - d); };

/** Each piece of a scene has a name of its own. */
export function ids(v: SceneView): readonly Raw[] {
  const seen = new Set<string>();
  return v.scene.items.flatMap((i): readonly Raw[] => {
    if (!seen.has(i.id)) { seen.add(i.id); return []; }
    return [{ code: "same-id", level: "must", source: "form of the layout", scene: v.scene.id, items: [i.id], at: placed(i.at), data: { a: i.id } }];
  });
}
