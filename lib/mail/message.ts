/** A mail before it is addressed: one structure, from which text and html are both made, so that they say the same. */
export type Block =
  | { readonly kind: "text"; readonly text: string }
  | { readonly kind: "quote"; readonly text: string }
  | { readonly kind: "link"; readonly text: string; readonly href: string }
  | { readonly kind: "facts"; readonly facts: readonly (readonly [name: string, value: string])[] };

export type Message = { readonly kind: string; readonly subject: string; readonly lang: string; readonly blocks: readonly Block[] };

export const text = (words: string): Block => ({ kind: "text", text: words });
export const quote = (words: string): Block => ({ kind: "quote", text: words });
export const link = (words: string, href: string): Block => ({ kind: "link", text: words, href });
export const facts = (...pairs: readonly (readonly [string, string])[]): Block => ({ kind: "facts", facts: pairs });
