import { boxOf } from "../geometry";
import { gatesToKeep, levelOf, type Gate } from "../venue";
import { middleOf, type Part, type Raw, type SceneView } from "./context";
import { clearOf, shareWith, sticksOut, wellInside } from "./meet";
import { near } from "./near";
import { atHome } from "./standing";

const naming = (p: Part): Record<string, string | number> => ({ a: p.item.id, aIs: p.is, ...(p.seat === undefined ? {} : { seat: p.seat + 1 }) });

const lends = (v: SceneView, room: string): boolean => v.site.drapes.some((d) => d.from === room);

/** Everything stands on the floor of its room, as the drapes leave it. */
export function inRoom(v: SceneView): readonly Raw[] {
  // A table whose chairs all stand well inside need not be asked chair by chair.
  const doubtful = v.groups.flatMap((g) => { const room = v.site.rooms.get(g.item.room); return room?.floor.some((f) => wellInside(g.box, f)) ? [] : g.parts; });
  return perItem(doubtful.flatMap((p): readonly Raw[] => {
    const room = v.site.rooms.get(p.item.room);
    const by = room ? sticksOut(p.shape, () => p.slim, room.floor) : Infinity;
    if (by === 0) return [];
    return [{
      code: room ? "outside-room" : "unknown-room", level: room && atHome(v.site, p.item) && !lends(v, p.item.room) ? "note" : "must", source: "geometry of the plan", scene: v.scene.id, items: [p.item.id],
      at: middleOf(p.shape), ...(room ? { measured: Math.ceil(by), limit: 0, unit: "mm" } : {}),
      data: { ...naming(p), room: p.item.room, ...(room ? { by: Math.ceil(by) } : {}) },
    }];
  }));
}

/** Nothing stands on what is built into the room, nor on floor that the venue keeps clear. */
export function builtIn(v: SceneView): readonly Raw[] {
  const all = [...v.site.rooms.values()].flatMap(({ room }) => [
    ...room.obstacles.map((o) => ({ room, id: o.id, what: String(o.kind), outline: o.outline, code: "on-obstacle" })),
    ...room.keepClear.map((k) => ({ room, id: k.id, what: k.why, outline: k.outline, code: "on-keep-clear" })),
  ]);
  return perItem(all.flatMap((o) => near(v, boxOf(o.outline)).flatMap((p): readonly Raw[] => {
    if (levelOf(v.site, p.item.room) !== o.room.level || !shareWith(p.slim, o.outline)) return [];
    const depth = Math.max(1, Math.round(-clearOf(p.shape, o.outline)));
    return [{
      code: o.code, level: o.code === "on-obstacle" && atHome(v.site, p.item) ? "note" : "must", source: "the venue's plan of the room", scene: v.scene.id, items: [p.item.id],
      at: middleOf(p.shape), measured: depth, limit: 0, unit: "mm", data: { ...naming(p), obstacle: o.id, what: o.what, by: depth },
    }];
  })));
}

/**
 * The floor inside a door: its clear width, as deep as its leaf and at least 900 mm inside exits and doors that swing in,
 * 900 mm inside the others. Chairs count; a dance floor may reach in; an opening between two rooms in use needs none.
 */
export function doorClear(v: SceneView): readonly Raw[] {
  const lending = v.site.drapes.map((d) => d.from);
  const gates: readonly Gate[] = [...new Set([...v.rooms, ...lending])].flatMap((r) => gatesToKeep(v.site, r, v.scene.rooms));
  return perItem(gates.flatMap((g) => near(v, boxOf(g.clear)).flatMap((p): readonly Raw[] => {
    if (p.item.kind === "dance-floor" || levelOf(v.site, p.item.room) !== levelOf(v.site, g.room) || !shareWith(p.slim, g.clear)) return [];
    const depth = Math.max(1, Math.round(-clearOf(p.shape, g.clear)));
    return [{
      code: "door-clear", level: "must",
      source: g.door.exit ? "IBC 2018 1005.7.1, 1010.1; depth by the house" : "2010 ADA Standards 404.2.4; depth by the house",
      scene: v.scene.id, items: [p.item.id], at: middleOf(p.shape), measured: depth, limit: 0, unit: "mm",
      data: { ...naming(p), door: g.door.id, room: g.room, exit: g.door.exit, by: depth },
    }];
  })));
}

/** One finding for a piece and the same cause: the deepest. */
function perItem(list: readonly Raw[]): readonly Raw[] {
  const best = new Map<string, Raw>();
  for (const f of list) {
    const key = `${f.items.join("|")}|${f.data?.["door"] ?? ""}|${f.data?.["room"] ?? ""}|${f.data?.["obstacle"] ?? ""}`;
    const known = best.get(key);
    if (!known || (f.measured ?? 0) > (known.measured ?? 0)) best.set(key, f);
  }
  return [...best.values()];
}
