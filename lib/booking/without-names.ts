import type { Sealed } from "./fingerprint";

type Texts = Pick<Sealed, "brief" | "layout" | "quote" | "findings">;
type Fields = Readonly<Record<string, unknown>>;

/** Fields in which words of the couple's own may come up again, in a layout, a quote or a finding. */
const WORDED = new Set(["label", "text", "title", "note", "why", "what", "name", "reason"]);
const isFields = (value: unknown): value is Fields => typeof value === "object" && value !== null && !Array.isArray(value);

/**
 * A revision without what a person could be known by: the couple's names, their notes, the notes on pieces, and what they bring in their
 * own words ("Item brought 1" stands in its place wherever it comes up). Counts, places and prices stay. Done twice it changes nothing more.
 */
export function withoutNames({ brief, layout, quote, findings }: Texts): Texts {
  const swap = swapOf(brief);
  return { brief: swapAll(bare(brief), swap), layout: swapAll(layout, swap), quote: swapAll(quote, swap), findings: swapAll(findings, swap) };
}

/** All at once, the longest first: what was put in is not swapped again. */
function swapOf(brief: unknown): (text: string) => string {
  const list = isFields(brief) ? brief["brought"] : undefined;
  const as = new Map<string, string>();
  for (const [i, one] of (Array.isArray(list) ? list : []).entries()) {
    const what: unknown = isFields(one) ? one["what"] : undefined;
    if (typeof what === "string" && what !== "" && !as.has(what.toLowerCase())) as.set(what.toLowerCase(), `Item brought ${i + 1}`);
  }
  if (as.size === 0) return (text) => text;
  const words = [...as.keys()].sort((a, b) => b.length - a.length).map((text) => text.replace(/[.*+?^${}()|[\]\\/]/gu, "\\$&")).join("|");
  // As whole words: "arch" is not found in "March".
  const any = new RegExp(`(?<![\\p{L}\\p{N}])(?:${words})(?![\\p{L}\\p{N}])`, "giu");
  return (text) => text.replace(any, (found) => as.get(found.toLowerCase()) ?? found);
}

function bare(brief: unknown): unknown {
  if (!isFields(brief)) return brief;
  const { couple: _names, notes: _notes, ...rest } = brief;
  return rest;
}

function swapAll(value: unknown, swap: (text: string) => string, field = ""): unknown {
  if (typeof value === "string") return WORDED.has(field) ? swap(value) : value;
  if (Array.isArray(value)) return value.map((one: unknown) => swapAll(one, swap, field));
  if (!isFields(value)) return value;
  // A piece's note is the couple's own free text from end to end.
  return Object.fromEntries(Object.entries(value).filter(([name]) => name !== "note").map(([name, one]) => [name, swapAll(one, swap, name)]));
}
