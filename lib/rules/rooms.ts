import type { Item } from "../layout";
import type { Use } from "../venue";
import { placed, type Context, type Raw, type SceneView } from "./context";

/** What use a room must have for a piece to be put to work there; an empty list: any room. */
function usesFor(v: SceneView, i: Item): readonly Use[] {
  if (i.kind === "buffet" || i.role === "buffet") return ["buffet"];
  if (i.kind === "dance-floor") return ["dancing"];
  if (i.kind === "bar" && !("standing" in i.from)) return ["drinks"];
  if (i.role === "work" || i.seats.length === 0) return [];
  if (v.scene.id === "ceremony") return ["ceremony"];
  if (v.scene.id === "meal") return ["dining"];
  return i.kind === "table" || i.kind === "chair" ? ["dining", "drinks", "lounge", "dancing"] : [];
}

const SCENE_USES: Readonly<Record<string, readonly Use[]>> = {
  ceremony: ["ceremony"], drinks: ["drinks", "lounge"], meal: ["dining"], dancing: ["dancing"],
};

/** Only rooms of the package, each for its uses. */
export function rooms(v: SceneView, c: Context): readonly Raw[] {
  const out: Raw[] = [];
  const base = { level: "must" as const, scene: v.scene.id, items: [] as readonly string[] };
  for (const r of v.scene.rooms) if (!v.site.rooms.has(r)) out.push({ ...base, code: "unknown-room", source: "the venue's rooms", data: { a: "", aIs: "piece", room: r } });
  const pack = c.venue.packages.find((p) => p.id === c.brief?.package);
  if (c.brief && !pack) out.push({ ...base, code: "unknown-package", source: "the brief", data: { package: c.brief.package } });
  if (pack) for (const r of v.rooms) {
    if (pack.rooms.includes(r)) continue;
    // Standing furniture may be where it always is, in a room that is not hired.
    const used = v.scene.items.filter((i) => i.room === r && !("standing" in i.from));
    if (used.length > 0 || v.scene.rooms.includes(r)) out.push({ ...base, code: "room-not-hired", source: "the package", items: used.map((i) => i.id), data: { room: r, package: pack.name } });
  }
  for (const i of v.scene.items) {
    const uses = usesFor(v, i);
    const room = v.site.rooms.get(i.room)?.room;
    if (!room || uses.length === 0 || uses.some((u) => room.uses.includes(u))) continue;
    out.push({ ...base, code: "room-use", source: "the venue's uses of its rooms", items: [i.id], at: placed(i.at), data: { a: i.id, room: i.room, use: uses[0] ?? "" } });
  }
  const wanted = SCENE_USES[v.scene.id] ?? [];
  if (!v.scene.rooms.some((r) => v.site.rooms.get(r)?.room.uses.some((u) => wanted.includes(u)))) {
    out.push({ ...base, code: "scene-room", source: "the venue's uses of its rooms", data: { use: wanted[0] ?? "" } });
  }
  return onePerRoom([...out, ...askedRoom(v, c), ...drapes(v, c)]);
}

/** A room that the brief names is the one used. */
function askedRoom(v: SceneView, c: Context): readonly Raw[] {
  const wanted = v.scene.id === "ceremony" ? c.brief?.ceremony.room : v.scene.id === "meal" ? c.brief?.meal.room : undefined;
  if (!wanted || wanted === "any" || v.scene.rooms.includes(wanted)) return [];
  return [{ code: "room-asked", level: "must", source: "the brief", scene: v.scene.id, items: [], data: { room: wanted } }];
}

function drapes(v: SceneView, c: Context): readonly Raw[] {
  return v.scene.drapes.flatMap((id): readonly Raw[] => {
    const base = { level: "must" as const, scene: v.scene.id, items: [] };
    const drape = c.venue.drapes.find((d) => d.id === id);
    if (!drape) return [{ ...base, code: "unknown-drape", source: "the venue's drapes", data: { drape: id } }];
    return c.brief?.drape === "no" ? [{ ...base, code: "drape-unwanted", source: "the brief", data: { name: drape.name } }] : [];
  });
}

/** Several pieces in a room of the wrong use are one finding. */
function onePerRoom(list: readonly Raw[]): readonly Raw[] {
  const out = new Map<string, Raw>();
  list.forEach((f, i) => {
    const key = f.code === "room-use" ? `${f.code}|${f.data?.["room"] ?? ""}|${f.data?.["use"] ?? ""}` : String(i);
    const known = out.get(key);
    out.set(key, known ? { ...known, items: [...known.items, ...f.items] } : f);
  });
  return [...out.values()];
}
