import type { Context, Raw, SceneView } from "./context";
import { isRowChair } from "./ways";

/**
 * Loose chairs in rows past a number are fastened together in groups: past 200, in threes or more (IBC 2018 1029.15, exception 1);
 * past 50, in lengths of 4 to 14 (fire authority's guide, Warwickshire). No plan can show it, so it is a note to the crew.
 */
export function fastened(v: SceneView, c: Context): readonly Raw[] {
  const { from, least, most, source } = c.values.fastened;
  const chairs = v.scene.items.filter(isRowChair).length;
  if (chairs <= from) return [];
  return [{
    code: "rows-fastened", level: "note", source, scene: v.scene.id, items: [], measured: chairs, limit: from, unit: "chairs",
    data: { chairs, from, least, ...(most === null ? {} : { most }) },
  }];
}
