/** A text as it is looked for: small letters, without accents and other marks, wide and narrow forms alike (Unicode NFKD). */
export const folded = (text: string): string => text.normalize("NFKD").replace(/\p{Mark}/gu, "").toLowerCase().trim();

/** The same with nothing but its words: what stands between letters and figures is one space. */
export const foldedWords = (text: string): string => folded(text).replace(/[^\p{L}\p{N}]+/gu, " ").trim();
