import { planSvgs, type Actor, type House } from "@/lib/service";
import type { Layout } from "@/lib/layout";
import { chosenWords } from "./words";
import { holdBoth, type TwoWidths } from "@/components/plan/markup";

type Which = { readonly reference: string; readonly scene: string; readonly layout?: string; readonly number?: number; readonly set?: boolean; readonly since?: number; readonly late?: boolean; readonly wet?: boolean };

/** Widths that plans are drawn for, CSS pixels: words on a plan keep their size, so a phone gets a drawing of its own. */
const NARROW = 340;

/** One part of the day, drawn for a phone and for `wide` pixels. Nothing where it cannot be drawn. */
export async function drawn(house: House, actor: Actor, { scene, wet, ...which }: Which, wide = 640): Promise<TwoWidths> {
  return (await pictures(house, actor, { ...which, scenes: [scene], wide, wet }))[scene] ?? { wide: "", narrow: "" };
}

type Of = { readonly reference: string; readonly layout: Layout; readonly offered?: boolean; readonly set?: boolean; readonly number?: number; readonly wide?: number; readonly wet?: boolean };

/** The plan of each part of the day, by scene. */
export const plansOf = (house: House, actor: Actor, { layout, offered = false, ...of }: Of): Promise<Readonly<Record<string, TwoWidths>>> =>
  pictures(house, actor, { ...of, layout: offered ? layout.id : undefined, scenes: layout.scenes.map((scene) => scene.id) });

type Pictures = Omit<Which, "scene"> & { readonly scenes: readonly string[]; readonly wide?: number };

async function pictures(house: House, actor: Actor, { scenes, wide = 640, wet, ...which }: Pictures): Promise<Readonly<Record<string, TwoWidths>>> {
  // The desk speaks as its venue does.
  const words = actor.kind === "desk" ? undefined : await chosenWords();
  const all = await planSvgs(house, actor, { ...which, looks: scenes.flatMap((scene) => [wide, NARROW].map((pixelWidth) => ({ scene, words, wet, pixelWidth }))) });
  const svg = (i: number): string => { const one = all.ok ? all.value[i] : undefined; return one?.ok ? one.value : ""; };
  // Both widths stand in one page: what the marks of the second refer to must not be found in the first, which may not be shown.
  return Object.fromEntries(scenes.map((scene, i) => [scene, holdBoth({ wide: svg(2 * i), narrow: svg(2 * i + 1).replace(/(\bid="|url\(#|href="#)/g, "$1slim-") })]));
}
