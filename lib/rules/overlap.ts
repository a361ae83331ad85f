import { boxesNear, clearance } from "../geometry";
import type { Item } from "../layout";
import { levelOf } from "../venue";
import { middleOf, type Part, type Raw, type SceneView } from "./context";
import { share } from "./meet";
import { atHome } from "./standing";

/** Pairs that may share floor: a chair or a wheelchair under its own table. */
function mayShare(a: Part, b: Part): boolean {
  if (a.item !== b.item) return false;
  return a.is === "piece" || b.is === "piece";
}

/** Pieces and chairs overlap nothing. Contract of the plan; 1 mm on either side is let go. */
export function overlap(v: SceneView): readonly Raw[] {
  const sorted = [...v.groups].sort((a, b) => a.box.minX - b.box.minX);
  const out: Raw[] = [];
  const meet = (a: Part, b: Part): void => {
    // Most that stand near do not touch at all, and need not be drawn in first.
    if (mayShare(a, b) || !share(a.shape, b.shape) || !share(a.slim, b.slim)) return;
    const depth = Math.max(1, Math.round(-clearance(a.shape, b.shape)));
    out.push({
      code: "overlap", level: atHome(v.site, a.item) && atHome(v.site, b.item) ? "note" : "must", source: "geometry of the plan", scene: v.scene.id,
      items: [...new Set([a.item.id, b.item.id])].sort(), at: middleOf(a.is === "piece" && b.is !== "piece" ? b.shape : a.shape),
      measured: depth, limit: 0, unit: "mm", data: { a: a.item.id, b: b.item.id, aIs: a.is, bIs: b.is, depth },
    });
  };
  sorted.forEach((a, i) => {
    a.parts.forEach((p, k) => { for (let j = k + 1; j < a.parts.length; j++) { const q = a.parts[j]; if (q) meet(p, q); } });
    for (let j = i + 1; j < sorted.length; j++) {
      const b = sorted[j];
      if (!b || b.box.minX > a.box.maxX) break;
      if (!boxesNear(a.box, b.box, 0) || !sameLevel(v, a.item, b.item)) continue;
      for (const p of a.parts) if (boxesNear(p.shape.box, b.box, 0)) for (const q of b.parts) meet(p, q);
    }
  });
  return onePerPair(out);
}

const sameLevel = (v: SceneView, a: Item, b: Item): boolean =>
  a.room === b.room || levelOf(v.site, a.room) === levelOf(v.site, b.room);

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
