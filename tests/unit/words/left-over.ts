import type { Venue } from "../../../lib/venue";

const sharp = (text: string): string => text.replace(/[.*+?^${}()|[\]\\]/g, "\\$&");

/** What a venue calls its own: rooms, stock, furniture, drapes, packages, charges, what it keeps clear. */
const ownNames = (venue: Venue): readonly string[] => [
  venue.name, ...venue.rooms.flatMap((r) => [r.name, ...r.standing.map((s) => s.name), ...r.keepClear.map((k) => k.why)]), ...venue.stock.map((s) => s.name),
  ...venue.drapes.map((d) => d.name), ...venue.packages.map((p) => p.name), ...venue.charges.map((c) => c.name), venue.tax.name,
].sort((a, b) => b.length - a.length);

/** A word of English that is left in a text once the venue's own names and published standards are taken out, with the text; undefined where there is none. */
export function englishIn(text: string, venue: Venue): string | undefined {
  // A name may be written over two lines of a drawing.
  if (ownNames(venue).some((name) => name.toLowerCase().includes(text.trim().toLowerCase()))) return undefined;
  const bare = ownNames(venue).reduce((left, name) => left.replaceAll(new RegExp(sharp(name), "gi"), "·"), text)
    .replace(/\b(IBC|ADA|2010 ADA|NFPA|BS|ISO)\b[^.;]*/g, "").replace(/https?:\S+|Marquetry/g, "");
  const word = /\b(the|and|with|of|is|are|in|on|for|table|tables|round|rounds|long|chair|chairs|row|guest|guests|place|places|dance|cake|cards|book|couple|meal|drinks|stands|from|wide|full|set|more|less|wall|walls|panel|panels|piece|pieces|layout|sheet|day|sent|agreed|drawn|scale|lengths|ways|out|each|how|what|high|minutes|step|bring|put|move|none|yes|music|room|rooms|it|sits?|carried|floor|people|should|note)\b/i.exec(bare)?.[0];
  return word === undefined ? undefined : `${word}: ${text}`;
}

/** Spellings and words that are British alone, as far as our catalogues have ever used them. */
export const BRITISH = /\b(favours?|colours?|metres?|centre|centimetres?|millimetres?|appetisers?|organis\w+|recognis\w+|grey|neighbour\w*|programme|catalogue|loudspeakers?|queues?|marquee|lorry|toilets?|whilst|licence|competent person|fire authority|building control)\b/i;
