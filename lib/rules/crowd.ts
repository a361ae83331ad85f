import type { Context, Raw, SceneView } from "./context";

/** People past which stewards are asked for, and how many people each. */
const CROWD = 500, EACH = 250;

/** Crowd managers: past 500 people at least two, one to 250: IFC 2018 403.12.3 (as Minnesota's fire code of 2020 prints it). */
export function crowd(v: SceneView, c: Context): readonly Raw[] {
  if (c.values.profile !== "model-code" || v.people <= CROWD) return [];
  const needed = Math.max(2, Math.ceil(v.people / EACH));
  return [{
    code: "crowd-managers", level: "note", source: "IFC 2018 403.12.3", scene: v.scene.id, items: [], measured: v.people, limit: CROWD, unit: "people", data: { people: v.people, needed },
  }];
}
