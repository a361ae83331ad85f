import { clearance } from "../geometry";
import { middleOf, type Part, type Raw, type SceneView } from "./context";
import { share } from "./meet";

/** Pairs that may share floor: a chair or a wheelchair under its own table. */
function mayShare(a: Part, b: Part): boolean {
  if (a.item !== b.item) return false;
  return a.is === "piece" || b.is === "piece";
}

/** Pieces and chairs overlap nothing. Contract of the plan; 1 mm on either side is let go. */
export function overlap(v: SceneView): readonly Raw[] {
  const sorted = [...v.parts].sort((a, b) => a.slim.box.minX - b.slim.box.minX);
  const out: Raw[] = [];
  sorted.forEach((a, i) => {
    for (let j = i + 1; j < sorted.length; j++) {
      const b = sorted[j];
      if (!b || b.slim.box.minX > a.slim.box.maxX) break;
      if (mayShare(a, b) || !share(a.slim, b.slim) || !sameLevel(v, a, b)) continue;
      out.push({
        code: "overlap", level: "must", source: "geometry of the plan", scene: v.scene.id,
        items: [...new Set([a.item.id, b.item.id])].sort(), at: middleOf(a.is === "piece" && b.is !== "piece" ? b.shape : a.shape),
        measured: Math.max(1, Math.round(-clearance(a.shape, b.shape))), limit: 0, unit: "mm",
        data: { a: a.item.id, b: b.item.id, aIs: a.is, bIs: b.is, depth: Math.max(1, Math.round(-clearance(a.shape, b.shape))) },
      });
    }
  });
  return onePerPair(out);
}

const sameLevel = (v: SceneView, a: Part, b: Part): boolean =>
  a.item.room === b.item.room || (v.site.rooms.get(a.item.room)?.room.level ?? 0) === (v.site.rooms.get(b.item.room)?.room.level ?? 0);

/** Of several meetings of the same two pieces the deepest is told. */
function onePerPair(list: readonly Raw[]): readonly Raw[] {
  const best = new Map<string, Raw>();
  for (const f of list) {
    const key = f.items.join("|");
    const known = best.get(key);
    if (!known || (f.measured ?? 0) > (known.measured ?? 0)) best.set(key, f);
  }
  return [...best.values()];
}
