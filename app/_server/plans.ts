import { planSvg, type Actor, type House } from "@/lib/service";
import type { Layout } from "@/lib/layout";

type Of = { readonly reference: string; readonly layout: Layout; readonly offered?: boolean; readonly number?: number };

/** The plan of each part of the day, by scene. */
export async function plansOf(house: House, actor: Actor, of: Of): Promise<Readonly<Record<string, string>>> {
  const drawn = await Promise.all(of.layout.scenes.map(async (scene) => {
    const svg = await planSvg(house, actor, { reference: of.reference, scene: scene.id, layout: of.offered ? of.layout.id : undefined, number: of.number });
    return [scene.id, svg.ok ? svg.value : ""] as const;
  }));
  return Object.fromEntries(drawn);
}
