import type { Finding } from "../layout";
import { roomsFrom, type Site } from "../venue";
import type { Context, Raw, SceneView } from "./context";

/** Rooms that one can walk to from a scene's rooms, by stairs too: ways out may lead through rooms that are not used. */
export const roomsJoined = (site: Site, from: readonly string[]): readonly string[] => [...roomsFrom(site, from, (r) => [
  ...site.passages.filter((p) => p.rooms.includes(r)).flatMap((p) => p.rooms), ...(site.rooms.get(r)?.gates ?? []).map((g) => g.door.leads),
])];

/** What the widths lack: in all, or with the widest way out shut. */
function lacking(widths: readonly number[], v: SceneView, c: Context): { readonly width: number; readonly limit: number; readonly shut: boolean } | null {
  const all = widths.reduce((a, b) => a + b, 0), left = all - Math.max(0, ...widths);
  const need = v.people * c.values.exitWidth;
  if (all < need - 1) return { width: Math.floor(all), limit: Math.ceil(need), shut: false };
  const rest = need * c.values.exitLeft;
  return v.people > c.values.exitSteps[0] && left < rest - 1 ? { width: Math.floor(left), limit: Math.ceil(rest), shut: true } : null;
}

/**
 * Width of the ways out, 0.2 in a person, and what is left of it with any one shut: half (IBC 2018 1005.3.2, 1005.5), or all of it by
 * the UK's guides. A must of the model code where it lacks though every door is counted; a should where doors under 32 in (1010.1.1)
 * make up the width, and in the other profiles.
 */
export function exitWidth(v: SceneView, c: Context): readonly Raw[] {
  const widths = roomsJoined(v.site, v.scene.rooms).flatMap((r) => v.site.rooms.get(r)?.gates ?? [])
    .filter((g) => g.door.exit && !v.site.rooms.has(g.door.leads)).map((g) => g.width);
  if (widths.length === 0) return [];
  const found = (w: readonly number[], level: Finding["level"]): readonly Raw[] => {
    const short = lacking(w, v, c);
    return short ? [{
      code: "exit-width", level, source: "IBC 2018 1005.3.2, 1005.5, 1010.1.1", scene: v.scene.id, items: [], measured: short.width, limit: short.limit, unit: "mm",
      data: { people: v.people, ...short },
    }] : [];
  };
  const must = found(widths, c.values.profile === "model-code" ? "must" : "should");
  return must.length > 0 ? must : found(widths.filter((w) => w >= c.values.exitLeast - 1), "should");
}
