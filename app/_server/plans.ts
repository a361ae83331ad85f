import { planSvg, type Actor, type House } from "@/lib/service";
import type { Layout } from "@/lib/layout";
import { chosenWords } from "./words";
import type { TwoWidths } from "@/components/plan/drawing";

type Which = { readonly reference: string; readonly scene: string; readonly layout?: string; readonly number?: number; readonly set?: boolean; readonly since?: number; readonly late?: boolean; readonly wet?: boolean };

/** Widths that plans are drawn for, CSS pixels: words on a plan keep their size, so a phone gets a drawing of its own. */
const NARROW = 340;

/** One part of the day, drawn for a phone and for `wide` pixels. Nothing where it cannot be drawn. */
export async function drawn(house: House, actor: Actor, which: Which, wide = 640): Promise<TwoWidths> {
  // The desk speaks as its venue does.
  const words = actor.kind === "desk" ? undefined : await chosenWords();
  const [broad, slim] = await Promise.all([planSvg(house, actor, { ...which, words, pixelWidth: wide }), planSvg(house, actor, { ...which, words, pixelWidth: NARROW })]);
  // Both stand in one page: what the marks of the second refer to must not be found in the first, which may not be shown.
  return { wide: broad.ok ? broad.value : "", narrow: slim.ok ? slim.value.replace(/(\bid="|url\(#|href="#)/g, "$1slim-") : "" };
}

type Of = { readonly reference: string; readonly layout: Layout; readonly offered?: boolean; readonly set?: boolean; readonly number?: number; readonly wide?: number; readonly wet?: boolean };

/** The plan of each part of the day, by scene. */
export async function plansOf(house: House, actor: Actor, { reference, layout, offered = false, set, number, wide, wet }: Of): Promise<Readonly<Record<string, TwoWidths>>> {
  const all = await Promise.all(layout.scenes.map(async (scene) =>
    [scene.id, await drawn(house, actor, { reference, scene: scene.id, layout: offered ? layout.id : undefined, set, number, wet }, wide)] as const));
  return Object.fromEntries(all);
}
