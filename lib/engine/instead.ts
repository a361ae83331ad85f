import type { Brief } from "../brief";
import type { ArrangeResult, Instead } from "../layout";
import type { Venue } from "../venue";
import { changed, changesOf, type Ask, type Change } from "./changes";
import { fewerGuests } from "./fewer";
import { inBritish } from "./tell";
import { together } from "./together";

/** Changes that are run for the sake of better advice, at the most, and those offered besides fewer guests. */
const RUNS = 8, OFFERED = 3;
/** Runs in search of the most guests that are seated. */
const COUNTS = 6;

/**
 * The smallest changes of the brief that were run and found to work, in the order of effort (`changesOf`): at most three that do by
 * themselves, else some that do together, and last the fewest guests less. None is offered that was not arranged.
 */
export function insteadOf(venue: Venue, brief: Brief, ask: Ask): readonly Instead[] {
  const out: Instead[] = [];
  const list = changesOf(venue, brief);
  let runs = 0;
  // One change of a kind is enough: a dance floor that is smaller by less comes first.
  const kinds = new Set<string>();
  for (const c of list) {
    if (runs >= RUNS || out.length >= OFFERED || ask.stop?.()) break;
    const next = kinds.has(c.kind) ? null : changed(brief, c.change);
    // What a bound refuses need not be run.
    if (!next || ask.proved(next).length > 0) continue;
    runs++;
    const result = ask.run(next);
    if (result.status !== "arranged") continue;
    out.push(offer(venue, where(c, result)));
    kinds.add(c.kind);
  }
  // Where something else does as well, the fewest need not be found out to a guest.
  const fewer = fewerGuests(brief, { ...ask, counts: out.length > 0 ? COUNTS / 2 : COUNTS });
  const joint = out.length === 0 ? together(brief, list, { ...ask, above: Number(fewer?.change["guests.adults"] ?? 0) }) : null;
  return [...out, ...[joint, fewer].filter((c) => c !== null).map((c) => offer(venue, c))];
}

const offer = (venue: Venue, { change, told }: Change): Instead => ({ change, text: inBritish(venue, told), told });

/** Another room is named: the one where the day was found to go. */
function where(c: Change, { layouts: [found] }: ArrangeResult): Change {
  const part = "meal.room" in c.change ? "meal" : "ceremony.room" in c.change ? "ceremony" : null;
  const rooms = part && found?.scenes.find((s) => s.id === part)?.rooms;
  return rooms ? { ...c, told: { ...c.told, data: { ...c.told.data, rooms } } } : c;
}
