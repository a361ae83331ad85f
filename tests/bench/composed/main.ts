import { arrange } from "../../../lib/engine";
import type { Brief } from "../../../lib/brief";
import type { Layout } from "../../../lib/layout";
import type { Venue } from "../../../lib/venue";
import { pairFrom } from "../../soak/soak";
import { ceremonyFaults } from "./ceremony";
import { mealFaults } from "./meal";

/** Random days of the soak from this seed on, and how many. */
const FROM = 9_700_000, DAYS = 240;

type Faults = (venue: Venue, brief: Brief, layout: Layout) => readonly string[];
/** What is looked at, by its name. */
const LOOKS: Readonly<Record<string, Faults>> = { ceremony: ceremonyFaults, meal: mealFaults };

export type Composed = { readonly days: number; readonly arranged: number; readonly faults: readonly { readonly look: string; readonly fault: string; readonly seeds: readonly number[] }[] };

/** Arranges the kept random days in one layout each and counts in how many of them each thing an eye would find wrong stands. Deterministic. */
export function composed(): Composed {
  const found = new Map<string, { readonly look: string; readonly fault: string; readonly seeds: number[] }>();
  let arranged = 0;
  for (let seed = FROM; seed < FROM + DAYS; seed++) {
    const { venue, brief } = pairFrom(seed);
    const layout = arrange(venue, brief, { layouts: 1, instead: false, wet: false }).layouts[0];
    if (!layout) continue;
    arranged++;
    for (const [look, faults] of Object.entries(LOOKS)) for (const fault of faults(venue, brief, layout)) {
      const entry = found.get(`${look} ${fault}`) ?? { look, fault, seeds: [] };
      entry.seeds.push(seed);
      found.set(`${look} ${fault}`, entry);
    }
  }
  return { days: DAYS, arranged, faults: [...found.values()].sort((a, b) => b.seeds.length - a.seeds.length) };
}
