import type { Layout, Told } from "../layout";
import type { Venue } from "../venue";
import { toldText, type ToldCode } from "../words/engine";

/** A thing told by its code and data: what the engine knows, before it is words in any language. */
export const tell = (code: ToldCode, data?: Told["data"], parts?: readonly Told[]): Told => ({ code, ...(data ? { data } : {}), ...(parts ? { parts } : {}) });

/** The British sentence, which results carry beside what is told. */
export function inBritish(venue: Venue, told: Told): string {
  const text = toldText(told, { venue, language: "en-GB" });
  if (text === undefined) throw new Error(`no sentence for ${JSON.stringify(told)}`);
  return text;
}

type More = { readonly title?: Told; /** Reasons before and after those that are there. */ readonly first?: readonly Told[]; readonly why?: readonly Told[]; readonly givesUp?: readonly Told[] };

/** A layout of which more is told, in words and before they were words. */
export function telling<L extends Layout>(venue: Venue, layout: L, { title, first = [], why = [], givesUp = [] }: More): L {
  const say = (told: Told): string => inBritish(venue, told);
  const was = layout.told ?? { why: [], givesUp: [] };
  return {
    ...layout, ...(title ? { title: say(title) } : {}), why: [...first.map(say), ...layout.why, ...why.map(say)],
    ...(layout.givesUp || givesUp.length > 0 ? { givesUp: [...(layout.givesUp ?? []), ...givesUp.map(say)] } : {}),
    told: { ...was, ...(title ? { title } : {}), why: [...first, ...was.why, ...why], givesUp: [...was.givesUp, ...givesUp] },
  };
}
