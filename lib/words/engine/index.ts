import { areaText, lengthText } from "../lengths";
import type { Say } from "../pages/say";
import { parts, sentences, terms } from "./es";

type Rule = { readonly find: RegExp; readonly names: readonly string[]; readonly say: string };

/** Slots that hold a figure and nothing else. */
const FIGURES: ReadonlySet<string> = new Set(["n", "k", "m", "all", "got", "wanted"]);

/** A sentence with slots as a search for it: what stands in a slot is caught under its name. */
function ruleOf([english, other]: readonly [string, string]): Rule {
  const names: string[] = [];
  const find = english.replace(/[.*+?^$()|[\]\\]/g, "\\$&").replace(/\{(\w+)\}/g, (_, name: string) => { names.push(name); return FIGURES.has(name) ? "(\\d[\\d,.]*)" : "(.+?)"; });
  return { find: new RegExp(`^${find}$`), names, say: other };
}
const SENTENCES = sentences.map(ruleOf), PARTS = parts.map(ruleOf);
const TERMS: ReadonlyMap<string, string> = new Map(Object.entries(terms));

/** Slots that hold names of the venue's own: of them only what joins them is ours. */
const OWN: ReadonlySet<string> = new Set(["room", "rooms", "name", "drape", "pack", "other"]);

const lower = (text: string): string => text.charAt(0).toLowerCase() + text.slice(1);
const upper = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/** A word of ours, whatever its first letter; undefined for the venue's own. */
function term(text: string): string | undefined {
  const exact = TERMS.get(text);
  if (exact !== undefined) return exact;
  const found = TERMS.get(lower(text));
  return found === undefined ? undefined : text === lower(text) ? found : upper(found);
}

function byRule(rules: readonly Rule[], text: string): string | undefined {
  for (const { find, names, say } of rules) {
    const met = find.exec(text);
    if (!met) continue;
    return say.replace(/\{(\w+)\}/g, (_, name: string) => {
      const text = met[names.indexOf(name) + 1] ?? "";
      return OWN.has(name) ? text.replaceAll(/ and (the )?/g, " y ") : spanish(text);
    });
  }
  return undefined;
}

/** Cuts at the first sign that joins two things; each side is said by itself. */
function joined(text: string): string | undefined {
  for (const [sign, with_] of [["; ", "; "], [", ", ", "], [" and the ", " y "], [" and ", " y "]] as const) {
    const at = text.indexOf(sign);
    if (at > 0) return `${spanish(text.slice(0, at))}${with_}${spanish(text.slice(at + sign.length))}`;
  }
  return undefined;
}

const known = new Map<string, string>();
const MOST = 5_000;
/** What the engine wrote, in Spanish: whole sentences first, then words and what joins them. What is the venue's own stays as it is. */
function spanish(text: string): string {
  const before = known.get(text);
  if (before !== undefined) return before;
  const said = term(text) ?? byRule(SENTENCES, text) ?? byRule(PARTS, text) ?? joined(text) ?? text;
  if (known.size < MOST) known.set(text, said);
  return said;
}

type How = { readonly say: Say; readonly lengths: "metric" | "imperial"; readonly locale: string };

/** Lengths and areas that a sentence holds, as its reader measures. */
function measured(text: string, { lengths, locale }: How): string {
  return text
    .replace(/(\d+(?:\.\d+)?) m²/g, (_, n: string) => areaText(Number(n), lengths, locale))
    .replace(/(\d+) sq ft/g, (whole, n: string) => (lengths === "imperial" ? whole : areaText(Number(n) * 0.09290304, lengths, locale)))
    .replace(/(\d+(?:\.\d+)?) m\b(?!²)/g, (whole, n: string) => (lengths === "metric" && locale.startsWith("en") ? whole : lengthText(Number(n) * 1000, lengths, locale)));
}

/**
 * How the engine's own sentences (titles, reasons, labels, what is given up) are said to a reader. The engine writes British English
 * and no data beside it; what it can write is a closed list of sentences, each of which has its like here. A test holds the two together.
 */
export function engineIn(how: How): (text: string) => string {
  const words = how.say.language === "es" ? spanish : (text: string): string => text;
  return (text) => measured(words(text), how);
}
