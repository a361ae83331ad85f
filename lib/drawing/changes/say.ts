import { distance } from "../../geometry";
import { isRound, type Item, type ItemShape, type Scene } from "../../layout";
import { formatLength, formatSize, lengthStyle, type LengthStyle } from "../../measure";
import type { Venue } from "../../venue";
import { labelOf } from "../plan/describe";
import { numbersOf } from "../plan/numbers";
import { loneChairs, pairsOf } from "./match";

export type ChangeKind = "added" | "removed" | "moved" | "laid";

/** One change between two revisions: its number on the plan, its words, the pieces as they were and are. */
export type Change = {
  readonly number: number; readonly kind: ChangeKind; readonly text: string;
  /** Pieces before and after; several only for chairs in rows. */
  readonly was: readonly Item[]; readonly now: readonly Item[];
};

/** Moved by less than this, a piece has not moved, mm; turned by less, degrees, it has not turned. */
const STILL = 5;

const compact = (parts: readonly string[]): string => {
  const last = parts.at(-1) ?? "";
  return parts.length < 2 ? last : `${parts.slice(0, -1).join(", ")} and ${last}`;
};
const places = (n: number): string => `${n} ${n === 1 ? "place" : "places"}`;

type Say = { readonly venue: Venue; readonly style: LengthStyle; readonly name: (i: Item, of: "was" | "now") => string };

const sized = (s: ItemShape, style: LengthStyle): string => (isRound(s) ? `round ${formatLength(s.diameter, style)}` : formatSize(s.width, s.depth, style));

/** What happened to a piece, in one sentence; nothing where it stands as it stood. */
function differences(was: Item, now: Item, { venue, style, name }: Say): { readonly text: string; readonly moved: boolean } | null {
  const said: string[] = [];
  const dx = now.at[0] - was.at[0], dy = now.at[1] - was.at[1];
  const turn = Math.abs(((now.angle - was.angle + 540) % 360) - 180);
  const moved = was.room !== now.room || distance(was.at, now.at) >= STILL;
  if (was.room !== now.room) said.push(`goes from the ${venue.rooms.find((r) => r.id === was.room)?.name ?? was.room} to the ${venue.rooms.find((r) => r.id === now.room)?.name ?? now.room}`);
  else if (moved) {
    const steps = [...(Math.abs(dx) >= STILL ? [`${formatLength(Math.abs(dx), style)} further ${dx > 0 ? "right" : "left"}`] : []), ...(Math.abs(dy) >= STILL ? [`${formatLength(Math.abs(dy), style)} further ${dy > 0 ? "down" : "up"}`] : [])];
    said.push(`stands ${compact(steps)} on the plan`);
  }
  const wentRound = isRound(now.shape) ? false : turn >= 1 && Math.abs(turn - 180) >= 1;
  if (wentRound) said.push(`is turned by ${Math.round(turn)}°`);
  if (sized(was.shape, style) !== sized(now.shape, style)) said.push(`is ${sized(now.shape, style)}, no longer ${sized(was.shape, style)}`);
  if (was.seats.length !== now.seats.length) said.push(`has ${places(now.seats.length)}, no longer ${was.seats.length}`);
  const wheels = (i: Item): number => i.seats.filter((s) => s.place === "wheelchair").length;
  if (wheels(was) !== wheels(now)) said.push(wheels(now) === 0 ? "has no wheelchair place any more" : `has ${wheels(now)} wheelchair ${wheels(now) === 1 ? "place" : "places"}`);
  const before = name(was, "was"), after = name(now, "now");
  if (before !== after) said.push(`was called ${before}`);
  return said.length === 0 ? null : { text: `${after} ${compact(said)}.`, moved: moved || wentRound };
}

/** Every change between two revisions of a part of the day, numbered in reading order: pieces, then chairs in rows. */
export function changesOf(venue: Venue, was: Scene | undefined, now: Scene): readonly Change[] {
  const before: Pick<Scene, "items" | "numbers"> = was ?? { items: [], numbers: [] };
  const style = { ...lengthStyle(venue), unit: true };
  const numbers = { was: numbersOf({ ...now, ...before }), now: numbersOf(now) };
  const name = (i: Item, of: "was" | "now"): string => { const n = numbers[of].get(i.id); return n === undefined ? i.label : `Table ${n}`; };
  const roomName = (id: string): string => venue.rooms.find((r) => r.id === id)?.name ?? id;
  const drafts: Omit<Change, "number">[] = [];
  for (const p of pairsOf(before, now)) {
    if (p.was && p.now) {
      const d = differences(p.was, p.now, { venue, style, name });
      if (d) drafts.push({ kind: d.moved ? "moved" : "laid", text: d.text, was: [p.was], now: [p.now] });
    } else if (p.now) drafts.push({ kind: "added", text: `${labelOf(p.now, numbers.now.get(p.now.id), style)}, is new in the ${roomName(p.now.room)}.`, was: [], now: [p.now] });
    else if (p.was) drafts.push({ kind: "removed", text: `${labelOf(p.was, numbers.was.get(p.was.id), style)}, is taken out of the ${roomName(p.was.room)}.`, was: [p.was], now: [] });
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
