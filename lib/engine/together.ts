import type { Brief } from "../brief";
import { changed, type Ask, type Change } from "./changes";
import { fewerGuests, mostUnproved } from "./fewer";
import { tell } from "./tell";

/** Runs at the most in search of changes that do together what none does alone, and of the most guests beside them. */
const RUNS = 10, COUNTS = 5;

const fieldsOf = (parts: readonly Change[]): Change["change"] => Object.fromEntries(parts.flatMap((p) => Object.entries(p.change)));
const apart = (parts: readonly Change[], c: Change): boolean => parts.every((p) => p.kind !== c.kind && Object.keys(p.change).every((path) => !(path in c.change)));
const without = (parts: readonly Change[], c: Change): readonly Change[] => parts.filter((p) => p !== c);

/** Several changes as one, told in their order. */
const joined = (parts: readonly Change[]): Change => ({ kind: "together", change: fieldsOf(parts), told: tell("together", undefined, parts.map((p) => p.told)) });

/**
 * Changes that are each too little and together enough, as few as were found; null where none were. Pre: none of the list does alone.
 * First those that the proofs ask for, with as many guests fewer as are still too many; where a search fails after them, one more of the
 * list, and at last all at once, of which the dearest are given back as long as the rest does.
 */
export function together(brief: Brief, list: readonly Change[], ask: Ask & { /** Adults who are seated without any of them. */ readonly above: number }): Change | null {
  const eased = (parts: readonly Change[]): Brief | null => changed(brief, fieldsOf(parts));
  const taken = againstProofs(brief, list, ask), base = eased(taken);
  if (base && ask.proved(base).length > 0) {
    const fewer = taken.length > 0 ? fewerGuests(base, { ...ask, seated: null, counts: COUNTS }) : null;
    return fewer ? joined([...taken, fewer]) : null;
  }
  let runs = 0;
  const works = (parts: readonly Change[]): boolean => {
    const b = eased(parts);
    if (runs >= RUNS || ask.stop?.() === true || !b || ask.proved(b).length > 0) return false;
    runs++;
    return ask.run(b).status === "arranged";
  };
  if (taken.length > 1 && works(taken)) return joined(taken);
  if (taken.length > 0) for (const c of list) if (apart(taken, c) && works(inOrder(list, [...taken, c]))) return joined(inOrder(list, [...taken, c]));
  // Of a kind the first asks least and the last goes farthest.
  for (const order of [list, [...list].reverse()]) {
    const all = order.reduce<readonly Change[]>((parts, c) => (apart(parts, c) ? [...parts, c] : parts), taken);
    if (!works(inOrder(list, all))) continue;
    const few = inOrder(list, all).reduceRight<readonly Change[]>((parts, c) => (parts.length > 2 && works(without(parts, c)) ? without(parts, c) : parts), inOrder(list, all));
    return joined(few);
  }
  return null;
}

const inOrder = (list: readonly Change[], parts: readonly Change[]): readonly Change[] => list.filter((c) => parts.includes(c));

/**
 * The changes that the proofs ask for: each lets more guests in, or takes a proof away, beside those taken before it; what turns out to
 * have been for nothing is given back, the dearest first.
 */
function againstProofs(brief: Brief, list: readonly Change[], { proved }: Ask): readonly Change[] {
  const worth = (parts: readonly Change[]): { readonly most: number; readonly proofs: number } => {
    const b = changed(brief, fieldsOf(parts));
    return b ? { most: mostUnproved(b, proved), proofs: proved(b).length } : { most: -1, proofs: Infinity };
  };
  let taken: readonly Change[] = [], now = worth(taken);
  for (let grown = true; grown && now.proofs > 0;) {
    grown = false;
    for (const c of list) {
      if (now.proofs === 0 || !apart(taken, c)) continue;
      const next = worth([...taken, c]);
      if (next.most < now.most || (next.most === now.most && next.proofs >= now.proofs)) continue;
      [taken, now, grown] = [[...taken, c], next, true];
    }
  }
  const kept = inOrder(list, taken);
  return kept.reduceRight((parts, c) => (worth(without(parts, c)).most >= now.most ? without(parts, c) : parts), kept);
}
