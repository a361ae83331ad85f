import { distance, type Point } from "../../geometry";
import { isRound, type Item, type ItemShape, type Scene } from "../../layout";
import { formatLength, formatSize, lengthStyle, type LengthStyle } from "../../measure";
import type { Venue } from "../../venue";
import { changeVoice, type ChangeVoice } from "../../words/changes";
import { listText } from "../../words/lists";
import { planWords } from "../../words/plan";
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

type Say = { readonly venue: Venue; readonly style: LengthStyle; readonly say: ChangeVoice };
/** A piece, or the joined tables of one number, on each side. */
type Unit = { readonly was: readonly Item[]; readonly now: readonly Item[]; readonly names: readonly [was: string, now: string] };

const sized = (s: ItemShape, style: LengthStyle): string => (isRound(s) ? planWords(style.locale).round(formatLength(s.diameter, style)) : formatSize(s.width, s.depth, style));
const middleOf = (items: readonly Item[]): Point => [items.reduce((n, i) => n + i.at[0], 0) / items.length, items.reduce((n, i) => n + i.at[1], 0) / items.length];
const seatsIn = (items: readonly Item[]): number => items.reduce((n, i) => n + i.seats.length, 0);
const wheelsIn = (items: readonly Item[]): number => items.reduce((n, i) => n + i.seats.filter((s) => s.place === "wheelchair").length, 0);

function whereTo(was: Item, now: Item, by: Point, { venue, style, say }: Say): string {
  const name = (id: string): string => venue.rooms.find((r) => r.id === id)?.name ?? id;
  if (was.room !== now.room) return say("goes from the {from} to the {to}", { from: name(was.room), to: name(now.room) });
  const far = (mm: number): { readonly length: string } => ({ length: formatLength(Math.abs(Math.round(mm)), style) });
  const steps = [
    ...(Math.abs(by[0]) >= STILL ? [say(by[0] > 0 ? "{length} further right" : "{length} further left", far(by[0]))] : []),
    ...(Math.abs(by[1]) >= STILL ? [say(by[1] > 0 ? "{length} further down" : "{length} further up", far(by[1]))] : []),
  ];
  return say("stands {steps} on the plan", { steps: listText(steps, style.locale) });
}

/** What happened to a piece, in one sentence; nothing where it stands as it stood. */
function differences({ was, now, names }: Unit, how: Say): { readonly text: string; readonly moved: boolean } | null {
  const [w] = was, [n] = now, { say, style } = how;
  if (!w || !n) return null;
  const said: string[] = [];
  const a = middleOf(was), b = middleOf(now);
  const moved = w.room !== n.room || distance(a, b) >= STILL;
  if (moved) said.push(whereTo(w, n, [b[0] - a[0], b[1] - a[1]], how));
  const turn = Math.abs(((n.angle - w.angle + 540) % 360) - 180);
  const wentRound = !isRound(n.shape) && turn >= 1 && Math.abs(turn - 180) >= 1;
  if (wentRound) said.push(say("is turned by {angle}", { angle: `${Math.round(turn)}°` }));
  if (was.length !== now.length) said.push(say("is {n} tables, no longer {was}", { n: now.length, was: was.length }));
  else if (sized(w.shape, style) !== sized(n.shape, style)) said.push(say("is {size}, no longer {was}", { size: sized(n.shape, style), was: sized(w.shape, style) }));
  if (seatsIn(was) !== seatsIn(now)) said.push(say("has {n} places, no longer {was}", { n: seatsIn(now), was: seatsIn(was) }));
  const wheels = wheelsIn(now);
  if (wheelsIn(was) !== wheels) said.push(wheels === 0 ? say("has no wheelchair place any more") : say("has {n} wheelchair places", { n: wheels }));
  if (names[0] !== names[1]) said.push(say("was called {name}", { name: names[0] }));
  return said.length === 0 ? null : { text: say("{piece} {differences}.", { piece: names[1], differences: listText(said, style.locale) }), moved: moved || wentRound };
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
  const style = { ...lengthStyle(venue), unit: true }, say = changeVoice(venue.locale);
  const numbers = { was: numbersOf({ ...now, ...before }), now: numbersOf(now) };
  const name = (i: Item, of: "was" | "now"): string => { const n = numbers[of].get(i.id); return n === undefined ? i.label : planWords(venue.locale).table(n); };
  const roomName = (id: string): string => venue.rooms.find((r) => r.id === id)?.name ?? id;
  const drafts: Omit<Change, "number">[] = [];
  const called = (items: readonly Item[], of: "was" | "now"): string => {
    const [first] = items;
    return first ? labelOf({ ...first, seats: items.flatMap((i) => i.seats) }, numbers[of].get(first.id), style) : "";
  };
  for (const u of unitsOf(pairsOf(before, now), name, numbers.now)) {
    const d = differences(u, { venue, style, say });
    if (d) drafts.push({ kind: d.moved ? "moved" : "laid", text: d.text, was: u.was, now: u.now });
    else if (u.was.length === 0) drafts.push({ kind: "added", text: say("{piece}, is new in the {room}.", { piece: called(u.now, "now"), room: roomName(u.now[0]?.room ?? "") }), was: [], now: u.now });
    else if (u.now.length === 0) drafts.push({ kind: "removed", text: say("{piece}, is taken out of the {room}.", { piece: called(u.was, "was"), room: roomName(u.was[0]?.room ?? "") }), was: u.was, now: [] });
  }
  const order: Readonly<Record<ChangeKind, number>> = { moved: 0, laid: 1, added: 2, removed: 3 };
  const at = (d: Omit<Change, "number">): Item | undefined => d.now[0] ?? d.was[0];
  drafts.sort((a, b) => order[a.kind] - order[b.kind] || (at(a)?.at[1] ?? 0) - (at(b)?.at[1] ?? 0) || (at(a)?.at[0] ?? 0) - (at(b)?.at[0] ?? 0));
  return [...drafts, ...chairChanges({ was: before, now }, roomName, say)].map((d, i) => ({ ...d, number: i + 1 }));
}

type Two = { readonly was: Pick<Scene, "items">; readonly now: Pick<Scene, "items"> };
function chairChanges({ was, now }: Two, roomName: (id: string) => string, say: ChangeVoice): readonly Omit<Change, "number">[] {
  const { gone, come } = loneChairs(was, now);
  return [...new Set([...gone, ...come].map((i) => i.room))].map((id): Omit<Change, "number"> => {
    const a = gone.filter((i) => i.room === id), b = come.filter((i) => i.room === id), room = roomName(id);
    if (b.length === 0) return { kind: "removed", text: say("{n} chairs of the rows in the {room} are taken out.", { n: a.length, room }), was: a, now: [] };
    if (a.length === 0) return { kind: "added", text: say("{n} chairs of the rows in the {room} are new.", { n: b.length, room }), was: [], now: b };
    const told = { n: Math.min(a.length, b.length), room, more: b.length - a.length, fewer: a.length - b.length };
    const text = told.more > 0 ? say("{n} chairs of the rows in the {room} stand elsewhere; {more} more.", told)
      : told.fewer > 0 ? say("{n} chairs of the rows in the {room} stand elsewhere; {fewer} fewer.", told) : say("{n} chairs of the rows in the {room} stand elsewhere.", told);
    return { kind: "moved", text, was: a, now: b };
  });
}
