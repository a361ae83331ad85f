/** Stands for the markup of a drawing that the server holds; empty where there is none. */
export type Markup = string;
export type TwoWidths = { readonly wide: Markup; readonly narrow: Markup };

type Held = { readonly waiting: Map<string, string>; count: number };
declare global { var heldMarkup: Held | undefined; }

/** A page that no one reads to its end never asks for what it holds, ms. */
const FORGOTTEN_MS = 60_000;

// The pages' two layers, what is worked out and what is painted, are bundled apart: they meet on the process alone.
const held = (): Held => (globalThis.heldMarkup ??= { waiting: new Map(), count: 0 });

/**
 * Holds a drawing's markup for `Painted`. Handed to a part of the page as it is, it would travel twice: in the page, and again in the data from
 * which the page is woken, where nothing reads it. What is handed over is the ticket returned here.
 */
export function hold(svg: string): Markup {
  if (svg === "") return "";
  const all = held(), ticket = String((all.count += 1));
  all.waiting.set(ticket, svg);
  const forget = setTimeout(() => all.waiting.delete(ticket), FORGOTTEN_MS);
  if (typeof forget === "object") forget.unref();
  return ticket;
}

/** Both widths of a drawing held. */
export const holdBoth = ({ wide, narrow }: { readonly wide: string; readonly narrow: string }): TwoWidths => ({ wide: hold(wide), narrow: hold(narrow) });

/** What is held on a ticket, once; nothing in a browser, where it stands in the page already. */
export function taken(ticket: Markup): string {
  if (typeof window !== "undefined") return "";
  const { waiting } = held(), svg = waiting.get(ticket) ?? "";
  waiting.delete(ticket);
  return svg;
}
