import { cookies } from "next/headers";
import { cache } from "react";
import { isLanguage, isLengthSystem, mannerOf, sayIn, type Chosen, type Manner, type Say } from "@/lib/words/pages";

/** The cookies that keep what a visitor chose to read; there are none until something is chosen. */
export const WORDS = { language: "words", lengths: "lengths" } as const;

/** How a visitor is spoken to. */
export type Speech = Manner & { readonly say: Say };

/** What this visitor chose to read. */
export const chosenWords = cache(async (): Promise<Chosen> => {
  const jar = await cookies();
  const language = jar.get(WORDS.language)?.value, lengths = jar.get(WORDS.lengths)?.value;
  return { language: isLanguage(language) ? language : undefined, lengths: isLengthSystem(lengths) ? lengths : undefined };
});

/** The venue's own way of speaking, unless this visitor chose another language or other lengths, or else what is `kept` with the booking. */
export async function speechFor(venue: Pick<Manner, "locale" | "lengths">, kept: Chosen = {}): Promise<Speech> {
  const chosen = await chosenWords();
  const manner = mannerOf(venue, { language: chosen.language ?? kept.language, lengths: chosen.lengths ?? kept.lengths });
  return { ...manner, say: sayIn(manner.language) };
}
