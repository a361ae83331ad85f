import { datumOf, fromWalls, numbersOf, runsOf, squared } from "../../drawing";
import type { Item, Scene } from "../../layout";
import { isRound } from "../../layout";
import type { Room } from "../../venue";
import { fresh, lengthOf, type Told } from "./told";

/** A piece with how far it is turned. */
export type SpotRow = { readonly name: string; readonly across: string; readonly down: string };
export type RoomSpots = { readonly room: Room; /** Told from its marked corner; else from the nearer walls. */ readonly marked: boolean; readonly pieces: readonly SpotRow[]; /** Rows of chairs: their ends and their lines. */ readonly rows: readonly SpotRow[] };

/** Turns that a rectangle shows: 0 to 179 degrees; one with a front 0 to 359. */
function turnOf(item: Item): string {
  if (isRound(item.shape)) return "";
  const a = ((Math.round(item.angle) % 360) + 360) % 360;
  const seen = item.seats.length > 0 && item.role !== "top" ? a % 180 : a;
  return seen === 0 ? "" : `${seen}°`;
}

function rowsOfChairs(chairs: readonly Item[], room: Room, told: Told): readonly SpotRow[] {
  const datum = datumOf(room);
  if (!datum || chairs.length === 0) return [];
  const straight = chairs.filter((c) => Math.abs(c.angle % 90) < 0.5);
  const lines = new Map<string, Item[]>();
  for (const c of straight) {
    const turned = Math.abs(c.angle % 180) > 45;
    const key = `${turned ? 1 : 0} ${Math.round((turned ? c.at[0] : c.at[1]) / 60)}`;
    lines.set(key, [...(lines.get(key) ?? []), c]);
  }
  const rows = [...lines.values()].map((row) => ({ count: row.length, turned: Math.abs((row[0]?.angle ?? 0) % 180) > 45, xs: spanOf(row.map((c) => c.at[0] - datum[0])), ys: spanOf(row.map((c) => c.at[1] - datum[1])) }));
  const say = (mm: number): string => lengthOf(mm, told.venue, false);
  const spanned = ([a, b]: Span): string => (b - a < 60 ? say((a + b) / 2) : `${say(a)} to ${say(b)}`);
  return evenly(rows).map(({ first, last, count }) => {
    const from = rows[first], to = rows[last];
    if (!from || !to) return { name: "", across: "", down: "" };
    const one = first === last, along = from.turned ? "xs" : "ys", ends = spanned(from[from.turned ? "ys" : "xs"]);
    const line = one ? spanned(from[along]) : `${say(from[along][0])} to ${say(to[along][0])}`;
    return { name: one ? `${first + 1}: ${count}` : `${first + 1} to ${last + 1}: ${count}`, across: from.turned ? line : ends, down: from.turned ? ends : line };
  });
}

type Span = readonly [from: number, to: number];
const spanOf = (values: readonly number[]): Span => [Math.min(...values), Math.max(...values)];
type ChairRow = { readonly count: number; readonly turned: boolean; readonly xs: Span; readonly ys: Span };

/** Rows that follow one another with as many chairs, the same ends and the same way between them are told together. */
function evenly(rows: readonly ChairRow[]): readonly { readonly first: number; readonly last: number; readonly count: number }[] {
  const near = (a: number, b: number): boolean => Math.abs(a - b) < 5;
  const line = (r: ChairRow): number => (r.turned ? r.xs[0] : r.ys[0]);
  const ends = (r: ChairRow): Span => (r.turned ? r.ys : r.xs);
  const out: { first: number; last: number; count: number }[] = [];
  rows.forEach((r, i) => {
    const group = out.at(-1), first = group && rows[group.first], before = rows[i - 1];
    const like = group && first && before && r.turned === first.turned && r.count === group.count && near(ends(r)[0], ends(first)[0]) && near(ends(r)[1], ends(first)[1]);
    const second = group && rows[group.first + 1];
    if (group && like && first && before && second && (group.last === group.first || near(line(r) - line(before), line(second) - line(first)))) group.last = i;
    else out.push({ first: i, last: i, count: r.count });
  });
  return out;
}

/** Joined tables are one piece, whose middle is that of the whole. */
function joined(pieces: readonly Item[], scene: Scene): readonly Item[] {
  const runs = runsOf({ ...scene, items: pieces }, numbersOf(scene)).filter((r) => r.items.length > 1);
  return pieces.flatMap((item): readonly Item[] => {
    const run = runs.find((r) => r.items.some((i) => i.id === item.id));
    if (!run) return [item];
    return run.items[0]?.id === item.id ? [{ ...item, at: run.at, label: `${item.label} (${run.items.length})` }] : [];
  });
}

/**
 * Where the middle of each piece set for a part of the day stands, room by room, from the room's upper left corner or its nearest walls;
 * all as on the plan, which stands square with the room `main`.
 */
export function spotsOf(scene: Scene, told: Told, main?: string): readonly RoomSpots[] {
  const square = squared(told.venue, scene, main);
  const set = fresh(scene, told).map(square.item);
  const numbers = numbersOf(scene);
  const collator = new Intl.Collator("en", { numeric: true });
  return square.venue.rooms.filter((r) => scene.rooms.includes(r.id)).flatMap((room): readonly RoomSpots[] => {
    const here = set.filter((i) => i.room === room.id);
    const pieces = joined(here.filter((i) => i.kind !== "chair"), scene).toSorted((a, b) => Number(!numbers.has(a.id)) - Number(!numbers.has(b.id)) || collator.compare(a.label, b.label));
    const datum = datumOf(room);
    const rows = pieces.map((item): SpotRow => {
      const turned = turnOf(item);
      const name = `${item.role === "wheelchair-space" ? "Wheelchair" : item.label}${turned === "" ? "" : `, ${turned}`}`;
      if (datum) return { name, across: lengthOf(item.at[0] - datum[0], told.venue, false), down: lengthOf(item.at[1] - datum[1], told.venue, false) };
      const [first, second] = fromWalls(room, item.at);
      const say = (w: typeof first): string => (w ? `${lengthOf(w.mm, told.venue, false)} ${w.wall}` : "");
      return { name, across: say(first), down: say(second) };
    });
    const lines = rowsOfChairs(here.filter((i) => i.kind === "chair"), room, told);
    return rows.length + lines.length === 0 ? [] : [{ room, pieces: rows, rows: lines, marked: datum !== null }];
  });
}
