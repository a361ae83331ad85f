import { assertNever } from "../base";
import { people, type Brief } from "../brief";
import type { Layout, Quote, QuoteLine } from "../layout";
import type { Charge, Venue } from "../venue";
import { laidTables, unitsOut, wordsOf } from "./counts";
import { movedStanding } from "./moved";
import { sums } from "./tax";

/** What a standing piece's or a drape's charge, or a word of the brief, makes of one charge. */
type Reasons = {
  /** Names of the moved pieces and drawn drapes that name the charge. */
  readonly pieces: readonly string[];
  readonly drapes: readonly string[];
  /** Some word of its `when` holds. */
  readonly called: boolean;
  readonly allMoved: number;
};

/**
 * The fee summary of a layout, in the order of the venue's charges. Money in minor units. A charge that the package
 * includes stays as a line with nothing each. Pre: brief and layout name only what the venue has.
 */
export function quote(venue: Venue, brief: Brief, layout: Layout): Quote {
  const moved = movedStanding(venue, layout);
  const drawn = venue.drapes.filter((d) => layout.scenes.some((s) => s.drapes.includes(d.id)));
  const words = wordsOf(venue, brief, layout);
  const included = venue.packages.find((p) => p.id === brief.package)?.included ?? [];
  const priced = venue.charges.flatMap((charge) => {
    const count = countOf(charge, { venue, brief, layout }, {
      pieces: moved.filter((p) => p.move === charge.id).map((p) => p.name),
      drapes: drawn.filter((d) => d.charge === charge.id).map((d) => d.name),
      called: (charge.when ?? []).some((w) => words.has(w)), allMoved: moved.length,
    });
    if (count === 0) return [];
    const free = included.includes(charge.id);
    const each = free ? 0 : charge.amount;
    const about = moved.filter((p) => p.move === charge.id).map((p) => p.name);
    const line: QuoteLine = {
      charge: charge.id, text: charge.name, count, each, amount: each * count,
      ...(about.length > 0 ? { of: listed(about) } : {}), ...(free ? { included: true } : {}),
    };
    return [{ line, taxed: charge.taxed }];
  });
  const lines = priced.map((p) => p.line);
  return { currency: venue.currency, lines, ...sums(priced.map((p) => ({ amount: p.line.amount, taxed: p.taxed })), venue.tax) };
}

type Day = { readonly venue: Venue; readonly brief: Brief; readonly layout: Layout };

function countOf(charge: Charge, { venue, brief, layout }: Day, why: Reasons): number {
  const named = why.pieces.length + why.drapes.length;
  if (named === 0 && !why.called) return 0;
  switch (charge.per) {
    case "event": return 1;
    // Where no piece names the charge but a word calls for it, it is for every piece moved.
    case "piece": return named > 0 ? named : why.allMoved;
    case "guest": return people(brief);
    case "table": return laidTables(layout);
    case "unit": return charge.of === undefined ? 0 : unitsOut(venue, layout, charge.of);
    // Hours are added by the coordinator's hand alone.
    case "hour": return 0;
    default: return assertNever(charge.per);
  }
}

/** Names with how many of each: "Stool ×3, Wing chair". */
function listed(names: readonly string[]): string {
  const text = [...new Set(names)].map((n) => { const k = names.filter((x) => x === n).length; return k > 1 ? `${n} ×${k}` : n; }).join(", ");
  return text.length <= 200 ? text : `${text.slice(0, 199)}…`;
}
