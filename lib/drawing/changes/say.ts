import { distance, type Point } from "../../geometry";
import { isRound, type Item, type ItemShape, type Scene } from "../../layout";
import { formatLength, formatSize, lengthStyle, type LengthStyle } from "../../measure";
import type { Venue } from "../../venue";
import { labelOf } from "../plan/describe";
import { numbersOf } from "../plan/numbers";
import { loneChairs, pairsOf, type Pair } from "./match";

export type ChangeKind = "added" | "removed" | "moved" | "laid";

/** One change between two revisions: its number on the plan, its words, the pieces as they were and are. */
export type Change = {
  readonly number: number; readonly kind: ChangeKind; readonly text: string;
  /** Pieces before and after: several where joined tables bear one number, and for chairs in rows. */
  readonly was: readonly Item[]; readonly now: readonly Item[];
};

/** Moved by less than this, a piece has not moved, mm; turned by less, degrees, it has not turned. */
const STILL = 5;

const compact = (parts: readonly string[]): string => {
  const last = parts.at(-1) ?? "";
  return parts.length < 2 ? last : `${parts.slice(0, -1).join(", ")} and ${last}`;
};
const places = (n: number): string => `${n} ${n === 1 ? "place" : "places"}`;

type Say = { readonly venue: Venue; readonly style: LengthStyle };
/** A piece, or the joined tables of one number, on each side. */
type Unit = { readonly was: readonly Item[]; readonly now: readonly Item[]; readonly names: readonly [was: string, now: string] };

const sized = (s: ItemShape, style: LengthStyle): string => (isRound(s) ? `round ${formatLength(s.diameter, style)}` : formatSize(s.width, s.depth, style));
const middleOf = (items: readonly Item[]): Point => [items.reduce((n, i) => n + i.at[0], 0) / items.length, items.reduce((n, i) => n + i.at[1], 0) / items.length];
const seatsIn = (items: readonly Item[]): number => items.reduce((n, i) => n + i.seats.length, 0);
const wheelsIn = (items: readonly Item[]): number => items.reduce((n, i) => n + i.seats.filter((s) => s.place === "wheelchair").length, 0);

function whereTo(was: Item, now: Item, by: Point, { venue, style }: Say): string {
  const name = (id: string): string => venue.rooms.find((r) => r.id === id)?.name ?? id;
  if (was.room !== now.room) return `goes from the ${name(was.room)} to the ${name(now.room)}`;
  const steps = [
    ...(Math.abs(by[0]) >= STILL ? [`${formatLength(Math.abs(Math.round(by[0])), style)} further ${by[0] > 0 ? "right" : "left"}`] : []),
    ...(Math.abs(by[1]) >= STILL ? [`${formatLength(Math.abs(Math.round(by[1])), style)} further ${by[1] > 0 ? "down" : "up"}`] : []),
  ];
  return `stands ${compact(steps)} on the plan`;
}

/** What happened to a piece, in one sentence; nothing where it stands as it stood. */
function differences({ was, now, names }: Unit, say: Say): { readonly text: string; readonly moved: boolean } | null {
  const [w] = was, [n] = now;
  if (!w || !n) return null;
  const said: string[] = [];
  const a = middleOf(was), b = middleOf(now);
  const moved = w.room !== n.room || distance(a, b) >= STILL;
  if (moved) said.push(whereTo(w, n, [b[0] - a[0], b[1] - a[1]], say));
  const turn = Math.abs(((n.angle - w.angle + 540) % 360) - 180);
  const wentRound = !isRound(n.shape) && turn >= 1 && Math.abs(turn - 180) >= 1;
  if (wentRound) said.push(`is turned by ${Math.round(turn)}°`);
  if (was.length !== now.length) said.push(`is ${now.length} ${now.length === 1 ? "table" : "tables"}, no longer ${was.length}`);
  else if (sized(w.shape, say.style) !== sized(n.shape, say.style)) said.push(`is ${sized(n.shape, say.style)}, no longer ${sized(w.shape, say.style)}`);
  if (seatsIn(was) !== seatsIn(now)) said.push(`has ${places(seatsIn(now))}, no longer ${seatsIn(was)}`);
  const wheels = wheelsIn(now);
  if (wheelsIn(was) !== wheels) said.push(wheels === 0 ? "has no wheelchair place any more" : `has ${wheels} wheelchair ${wheels === 1 ? "place" : "places"}`);
  if (names[0] !== names[1]) said.push(`was called ${names[0]}`);
  return said.length === 0 ? null : { text: `${names[1]} ${compact(said)}.`, moved: moved || wentRound };
}

/** Pairs whose pieces bear one number now are one table. */
function unitsOf(pairs: readonly Pair[], name: (i: Item, of: "was" | "now") => string, runs: ReadonlyMap<string, string>): readonly Unit[] {
  const joined = new Map<string, Pair[]>();
  pairs.forEach((p, i) => {
    const number = p.now && runs.get(p.now.id);
    const key = number === undefined ? `alone ${i}` : number;
    joined.set(key, [...(joined.get(key) ?? []), p]);
  });
  return [...joined.values()].map((list): Unit => {
    const was = list.flatMap((p) => p.was ?? []), now = list.flatMap((p) => p.now ?? []);
    return { was, now, names: [was[0] ? name(was[0], "was") : "", now[0] ? name(now[0], "now") : ""] };
  });
}

/** Every change between two revisions of a part of the day, numbered in reading order: pieces, then chairs in rows. */
export function changesOf(venue: Venue, was: Scene | undefined, now: Scene): readonly Change[] {
  const before: Pick<Scene, "items" | "numbers"> = was ?? { items: [], numbers: [] };
  const style = { ...lengthStyle(venue), unit: true };
  const numbers = { was: numbersOf({ ...now, ...before }), now: numbersOf(now) };
  const name = (i: Item, of: "was" | "now"): string => { const n = numbers[of].get(i.id); return n === undefined ? i.label : `Table ${n}`; };
  const roomName = (id: string): string => venue.rooms.find((r) => r.id === id)?.name ?? id;
  const drafts: Omit<Change, "number">[] = [];
  const called = (items: readonly Item[], of: "was" | "now"): string => {
    const [first] = items;
    return first ? labelOf({ ...first, seats: items.flatMap((i) => i.seats) }, numbers[of].get(first.id), style) : "";
  };
  for (const u of unitsOf(pairsOf(before, now), name, numbers.now)) {
    const d = differences(u, { venue, style });
    if (d) drafts.push({ kind: d.moved ? "moved" : "laid", text: d.text, was: u.was, now: u.now });
    else if (u.was.length === 0) drafts.push({ kind: "added", text: `${called(u.now, "now")}, is new in the ${roomName(u.now[0]?.room ?? "")}.`, was: [], now: u.now });
    else if (u.now.length === 0) drafts.push({ kind: "removed", text: `${called(u.was, "was")}, is taken out of the ${roomName(u.was[0]?.room ?? "")}.`, was: u.was, now: [] });
  }
  const order: Readonly<Record<ChangeKind, number>> = { moved: 0, laid: 1, added: 2, removed: 3 };
  const at = (d: Omit<Change, "number">): Item | undefined => d.now[0] ?? d.was[0];
  drafts.sort((a, b) => order[a.kind] - order[b.kind] || (at(a)?.at[1] ?? 0) - (at(b)?.at[1] ?? 0) || (at(a)?.at[0] ?? 0) - (at(b)?.at[0] ?? 0));
  return [...drafts, ...chairChanges(before, now, roomName)].map((d, i) => ({ ...d, number: i + 1 }));
}

function chairChanges(was: Pick<Scene, "items">, now: Pick<Scene, "items">, roomName: (id: string) => string): readonly Omit<Change, "number">[] {
  const { gone, come } = loneChairs(was, now);
  const chairs = (n: number): string => `${n} ${n === 1 ? "chair" : "chairs"}`;
  return [...new Set([...gone, ...come].map((i) => i.room))].flatMap((room): readonly Omit<Change, "number">[] => {
    const a = gone.filter((i) => i.room === room), b = come.filter((i) => i.room === room);
    const rows = `of the rows in the ${roomName(room)}`;
    if (b.length === 0) return [{ kind: "removed", text: `${chairs(a.length)} ${rows} ${a.length === 1 ? "is" : "are"} taken out.`, was: a, now: [] }];
    if (a.length === 0) return [{ kind: "added", text: `${chairs(b.length)} ${rows} ${b.length === 1 ? "is" : "are"} new.`, was: [], now: b }];
    const rest = b.length === a.length ? "" : b.length > a.length ? `; ${chairs(b.length - a.length)} more` : `; ${chairs(a.length - b.length)} fewer`;
    return [{ kind: "moved", text: `${chairs(Math.min(a.length, b.length))} ${rows} ${Math.min(a.length, b.length) === 1 ? "stands" : "stand"} elsewhere${rest}.`, was: a, now: b }];
  });
}
