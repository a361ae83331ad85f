import { boxOf, edges, sinCos, type Box, type Point } from "../../geometry";
import { footprintPolygon, type Item } from "../../layout";
import { formatLength } from "../../measure";
import type { Room } from "../../venue";
import type { Mark, Paper, Step } from "../display";
import { textWidth } from "../metrics";
import { box, line } from "../paths";
import { spreadApart } from "./apart";
import { seatCorners, seatsOf } from "./chairs";
import { chairOf } from "../../rules";
import type { Strings } from "./dimensions";
import { toPaper, type Frame, type Hand } from "./hand";
import type { Level } from "./level";
import { numbersOf, runsOf } from "./numbers";

/** Figures along two walls that say how far from one corner everything stands; `under` are the lines to lay under the pieces. */
export type Ordinates = Strings & { readonly under: readonly Mark[] };

/** The corner of a room that distances are taken from: its upper left, where two walls along the page's edges meet; else null. */
export function datumOf(room: Room): Point | null {
  const b = boxOf(room.outline);
  const at = (p: Point): boolean => Math.abs(p[0] - b.minX) < 2 && Math.abs(p[1] - b.minY) < 2;
  const walls = edges(room.outline).filter(([p, q]) => at(p) || at(q));
  const straight = walls.length === 2 && walls.every(([p, q]) => Math.abs(p[0] - q[0]) < 2 || Math.abs(p[1] - q[1]) < 2);
  return straight ? room.outline.find(at) ?? null : null;
}

const SAME = 60;
const unique = (list: readonly number[]): readonly number[] =>
  [...list].sort((a, b) => a - b).reduce<number[]>((out, v) => { const last = out.at(-1); if (last === undefined || v - last > SAME) out.push(v); return out; }, []);

const MEASURED: readonly Item["kind"][] = ["table", "dance-floor", "dj", "band", "bar", "buffet", "photo-booth", "backdrop", "arch", "screen"];

/** Rows of chairs: the line of each row, and where its blocks begin and end. */
function rowStops(chairs: readonly Item[]): readonly [readonly number[], readonly number[]] {
  const stops: [number[], number[]] = [[], []];
  for (const turned of [false, true]) {
    const along = turned ? 1 : 0, across = turned ? 0 : 1;
    const mine = chairs.filter((c) => Math.abs(sinCos(c.angle)[turned ? "cos" : "sin"]) < 0.02);
    for (const row of unique(mine.map((c) => c.at[across]))) {
      stops[across].push(row);
      const spans = mine.filter((c) => Math.abs(c.at[across] - row) <= SAME).map((c) => boxOf(footprintPolygon(c)))
        .map((b) => (turned ? [b.minY, b.maxY] as const : [b.minX, b.maxX] as const)).sort((a, b) => a[0] - b[0]);
      spans.forEach(([from, to], i) => {
        const before = spans[i - 1], after = spans[i + 1];
        if (!before || from - before[1] > 300) stops[along].push(from);
        if (!after || after[0] - to > 300) stops[along].push(to);
      });
    }
  }
  return [unique(stops[0]), unique(stops[1])];
}

/** What is measured of a room along x and along y, from the fullest set to the least. */
function stopsOf(level: Level, room: Room): readonly (readonly [readonly number[], readonly number[]])[] {
  const here = level.items.filter((i) => i.room === room.id);
  const rows = rowStops(here.filter((i) => i.kind === "chair"));
  const numbers = numbersOf(level.scene);
  const runs = runsOf(level.scene, numbers).filter((r) => r.items.some((i) => i.room === room.id)).map((r) => r.at);
  const others = here.filter((i) => MEASURED.includes(i.kind) && !numbers.has(i.id)).map((i) => i.at);
  const of = (points: readonly Point[]): readonly [readonly number[], readonly number[]] =>
    [unique([...points.map((p) => p[0]), ...rows[0]]), unique([...points.map((p) => p[1]), ...rows[1]])];
  return [of([...runs, ...others]), of(runs)];
}

const TICK = 1.6, KINK = 4.2;

/** Draws them above and to the left of the whole plan, or below and to the right where another room is in the way. */
export function ordinatesOf(level: Level, room: Room, { frame, hand, drawn }: { readonly frame: Frame; readonly hand: Hand; /** False: only the paper that they take is asked for. */ readonly drawn: boolean }): Ordinates {
  const datum = datumOf(room);
  const empty: Ordinates = { marks: [], lines: [], takes: [], under: [] };
  if (!datum) return empty;
  const type = { size: hand.note, face: "sans" } as const;
  const gap = hand.note * 1.22;
  const b = boxOf(room.outline);
  const marks: Mark[] = [], ticks: Step[] = [], under: Step[] = [], takes: Strings["takes"][number][] = [], lines: (readonly [Paper, Paper])[] = [];
  const sets = stopsOf(level, room);
  const boxes = drawn ? boxesOf(level, room) : [];
  const others = level.rooms.filter((r) => r.id !== room.id).map((r) => boxOf(r.outline));
  for (const axis of [0, 1] as const) {
    const [from, to] = axis === 0 ? [b.minX, b.maxX] : [b.minY, b.maxY];
    const put = (mm: number): number => toPaper(frame, axis === 0 ? [mm, 0] : [0, mm])[axis];
    const most = Math.floor((put(to) - put(from)) / gap) + 3;
    const inner = sets.map((s) => s[axis].filter((v) => v > from + SAME && v < to - SAME)).find((s) => s.length + 2 <= most) ?? [];
    const stops = [from, ...inner, to];
    const places = spreadApart(stops.map(put), gap);
    const hidden = others.some((o) => (axis === 0 ? o.maxY <= b.minY + 10 && o.minX < to && o.maxX > from : o.maxX <= b.minX + 10 && o.minY < to && o.maxY > from));
    const sign = hidden ? 1 : -1;
    const edgeMm = axis === 0 ? (hidden ? level.box.maxY : level.box.minY) : hidden ? level.box.maxX : level.box.minX;
    const other = axis === 0 ? 1 : 0;
    const edge = toPaper(frame, axis === 0 ? [0, edgeMm] : [edgeMm, 0])[other] + sign * 1.2;
    const P = (along: number, across: number): Paper => (axis === 0 ? [along, across] : [across, along]);
    const longest = Math.max(...stops.map((v) => textWidth(formatLength(Math.round(v - from), hand.lengths), type)));
    stops.forEach((v, i) => {
      const at = put(v), to = places[i] ?? at;
      const foot = P(at, edge), knee = P(at, edge + sign * TICK), head = P(to, edge + sign * (TICK + KINK));
      ticks.push(...line(foot, knee), ...line(knee, head));
      const text = i === 0 ? "0" : formatLength(Math.round(v - from), hand.lengths);
      const drop = hand.note * 0.36, words = edge + sign * (TICK + KINK + 0.8);
      marks.push(axis === 0
        ? { kind: "text", at: [to + drop, words], text, ...type, anchor: hidden ? "end" : "start", angle: -90, ink: "ink" }
        : { kind: "text", at: [words, to + drop], text, ...type, anchor: hidden ? "start" : "end", ink: "ink" });
      if (!drawn || i === 0 || i === stops.length - 1) return;
      // A line leads from the wall to the first piece that stands there.
      const wall = axis === 0 ? (hidden ? b.maxY : b.minY) : hidden ? b.maxX : b.minX;
      const reach = reachOf(boxes, { axis, v, hidden, wall });
      if (reach !== null) under.push(...line(toPaper(frame, axis === 0 ? [v, wall] : [wall, v]), toPaper(frame, axis === 0 ? [v, reach] : [reach, v])));
    });
    const depth = TICK + KINK + 0.8 + longest;
    const ends = [Math.min(put(from), places[0] ?? 0) - hand.note, Math.max(put(to), places.at(-1) ?? 0) + hand.note] as const;
    const near = sign < 0 ? edge - depth : edge;
    takes.push(axis === 0 ? { x: ends[0], y: near, width: ends[1] - ends[0], height: depth } : { x: near, y: ends[0], width: depth, height: ends[1] - ends[0] });
  }
  under.forEach((s, i) => { const next = under[i + 1]; if (s.op === "M" && next?.op === "L") lines.push([s.to, next.to]); });
  return {
    marks: [{ kind: "path", steps: ticks, stroke: { ink: "ink-2", weight: hand.fine } }, ...marks, ...fromHere(toPaper(frame, datum))],
    takes, lines, under: [{ kind: "path", steps: under, stroke: { ink: "ink-3", weight: hand.fine, dash: [3, 0.8, 0.5, 0.8] } }],
  };
}

/** The boxes of all pieces and chairs in a room. */
function boxesOf(level: Level, room: Room): readonly Box[] {
  const chair = chairOf(level.venue);
  return level.items.filter((i) => i.room === room.id)
    .flatMap((i) => [...(i.kind === "chair" ? [] : [footprintPolygon(i)]), ...seatsOf(i).map((s) => seatCorners(s, chair))]).map((p) => boxOf(p));
}

type Line = { readonly axis: 0 | 1; readonly v: number; readonly hidden: boolean; readonly wall: number };

/** Where the line at an ordinate meets the first piece or chair, mm; null where nothing of the room stands on it. */
function reachOf(boxes: readonly Box[], { axis, v, hidden, wall }: Line): number | null {
  const on = boxes.filter((b) => (axis === 0 ? b.minX - 5 <= v && b.maxX + 5 >= v : b.minY - 5 <= v && b.maxY + 5 >= v));
  const near = on.map((b) => (axis === 0 ? (hidden ? b.maxY : b.minY) : hidden ? b.maxX : b.minX));
  if (near.length === 0) return null;
  const first = hidden ? Math.max(...near) : Math.min(...near);
  return Math.abs(first - wall) < 200 ? null : first;
}

/** The corner that distances are taken from: a disc with two of its quarters filled. */
export function fromHere(at: Paper): readonly Mark[] {
  const r = 2.6, k = r * 0.5523;
  const quarter = (sx: 1 | -1, sy: 1 | -1): readonly Step[] => [
    { op: "M", to: at }, { op: "L", to: [at[0] + sx * r, at[1]] },
    { op: "C", c1: [at[0] + sx * r, at[1] + sy * k], c2: [at[0] + sx * k, at[1] + sy * r], to: [at[0], at[1] + sy * r] }, { op: "Z" },
  ];
  return [
    { kind: "circle", at, radius: r, fill: "leaf", stroke: { ink: "accent", weight: 0.35 } },
    { kind: "path", steps: [...quarter(1, 1), ...quarter(-1, -1)], fill: "accent" },
    { kind: "path", steps: box(at[0] - 0.01, at[1] - r, 0.02, 2 * r), fill: "accent" },
  ];
}
