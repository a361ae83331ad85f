import { planVoice, planWords, type PlanVoice } from "../../words/plan";
import { add, contains, distance, lerp, middle, scale, sub, turn, unit, type Point } from "../../geometry";
import { isRound, type Item, type Layout, type Scene } from "../../layout";
import { beforeRows, contextOf, exitsOf, isRowChair, isSeatedTable, ruleValues, sees, siteFor, waysMap, type SceneView } from "../../rules";
import type { Room, Venue } from "../../venue";
import type { Mark, Paper, Step } from "../display";
import { circle, closed, line } from "../paths";
import type { Ground } from "./ground";
import { toPaper, type Frame, type Hand } from "./hand";
import { numbersOf } from "./numbers";
import { waysOver, type Way } from "./routes";

/** What a layer shows, in the venue's frame, and what it says in words. */
export type Flows = { readonly ways: readonly Way[]; readonly words: readonly string[] };
export type Sights = { readonly from: Point | null; readonly seen: readonly Point[]; readonly hidden: readonly Point[]; readonly words: readonly string[] };

type Start = { readonly at: Point; readonly level: number; readonly name: string };

function startsOf(venue: Venue, scene: Scene): readonly Start[] {
  const numbers = numbersOf(scene);
  const levelOf = (room: string): number => venue.rooms.find((r) => r.id === room)?.level ?? 0;
  const tables = scene.items.filter(isSeatedTable).map((i): Start => ({ at: i.at, level: levelOf(i.room), name: numbers.has(i.id) ? lower(planWords(venue.locale).table(numbers.get(i.id) ?? "")) : i.label }));
  const rows = rowsOf(scene.items.filter(isRowChair)).flatMap((row): readonly Start[] => {
    const first = row[0], last = row.at(-1);
    return first && last ? [{ at: middle(first.at, last.at), level: levelOf(first.room), name: planVoice(venue.locale)("a row of chairs") }] : [];
  });
  return [...tables, ...rows];
}

/** Chairs side by side that look one way are a row as it is drawn, up to a gap that one could walk through. */
function rowsOf(chairs: readonly Item[]): readonly (readonly Item[])[] {
  const lines = new Map<string, { readonly item: Item; readonly along: number }[]>();
  for (const item of chairs) {
    const [along, across] = turn(item.at, -item.angle);
    const key = `${item.room}/${item.angle}/${Math.round(across / 20)}`;
    lines.set(key, [...(lines.get(key) ?? []), { item, along }]);
  }
  return [...lines.values()].flatMap((list) => {
    const sorted = [...list].sort((a, b) => a.along - b.along);
    const rows: Item[][] = [];
    sorted.forEach(({ item, along }, i) => {
      if (i === 0 || along - (sorted[i - 1]?.along ?? 0) > 1_000) rows.push([]);
      rows.at(-1)?.push(item);
    });
    return rows;
  });
}

/** How far from a table's middle its places' way may begin, and how far outside a door it ends, mm. */
const REACH = 1_300, PAST = 250;

/** From every table and every row the way to the nearest way out, over the floor that a person of the rules' least path finds free. */
export function flowsOf(venue: Venue, scene: Scene): Flows {
  const values = ruleValues(venue);
  const site = siteFor(venue, scene.drapes);
  const map = waysMap(site, scene, values);
  const starts = startsOf(venue, scene);
  const ways: Way[] = [], told: { readonly name: string; readonly mm: number }[] = [];
  for (const level of new Set(starts.map((s) => s.level))) {
    const here = starts.filter((s) => s.level === level);
    const goals = exitsOf(site, "anyone").filter((e) => e.level === level).map(({ gate }) => add(gate.at, scale(gate.inward, -PAST)));
    const found = waysOver(map.pieces.filter((p) => p.level === level).map((p) => p.piece), { starts: here.map((s) => s.at), goals, reach: REACH });
    ways.push(...found.ways);
    here.forEach((s, i) => { const mm = found.lengths[i]; if (mm !== null && mm !== undefined) told.push({ name: s.name, mm }); });
  }
  const far = told.reduce<(typeof told)[number] | null>((a, b) => (a && a.mm >= b.mm ? a : b), null);
  return { ways, words: far ? [planWords(venue.locale).waysDrawn({ from: told.length, of: starts.length, far: far.name, about: roughly(far.mm, venue) })] : [] };
}

const lower = (text: string): string => text.charAt(0).toLowerCase() + text.slice(1);

/** A length that is known roughly: whole metres or feet. */
const roughly = (mm: number, { lengths, locale }: Venue): string =>
  `${new Intl.NumberFormat(locale, { maximumFractionDigits: 0 }).format(mm / (lengths === "metric" ? 1000 : 304.8))}\u00a0${lengths === "metric" ? "m" : "ft"}`;

/** What the seats of a part of the day look to: the couple's table at the meal, the arch or the front of the rows at the ceremony. */
function focusOf(scene: Scene, say: PlanVoice): { readonly at: Point; readonly item: Item; readonly name: string } | null {
  const top = scene.items.find((i) => i.role === "top");
  if (scene.id !== "ceremony" && top) return { at: top.at, item: top, name: say("the couple's table") };
  const arch = scene.items.find((i) => i.kind === "arch" || i.kind === "backdrop");
  if (scene.id === "ceremony" && arch) return { at: arch.at, item: arch, name: say("the {piece}", { piece: arch.label.toLowerCase() }) };
  const chair = scene.items.find(isRowChair);
  const front = chair && beforeRows(scene.items, 900);
  return front && chair ? { at: front, item: chair, name: say("the front of the rows") } : null;
}

const viewOf = (venue: Venue, scene: Scene): SceneView | undefined => {
  const layout: Layout = { id: "drawn", title: "", why: [], scenes: [scene], turnovers: [], findings: [] };
  return contextOf(venue, layout).scenes[0];
};

/** Who sees what the scene looks to: lines from there to each table, or to the outermost chairs and those that something hides. */
export function sightsOf(venue: Venue, scene: Scene): Sights {
  const say = planVoice(venue.locale);
  const focus = focusOf(scene, say), view = viewOf(venue, scene);
  if (!focus || !view) return { from: null, seen: [], hidden: [], words: [] };
  const rows = scene.items.filter((i) => isRowChair(i) && i !== focus.item);
  const numbers = numbersOf(scene);
  const targets = rows.length > 0 ? rows : scene.items.filter((i) => isSeatedTable(i) && i !== focus.item && i.room === focus.item.room);
  const hidden = targets.filter((t) => !sees(view, { at: focus.at, item: focus.item }, t.at));
  const open = targets.filter((t) => !hidden.includes(t));
  const seen = rows.length > 0 ? edgesOfFan(focus.at, open.map((t) => t.at)) : open.map((t) => shortOf(focus.at, t));
  const named = hidden.map((t) => numbers.get(t.id)).filter((n): n is string => n !== undefined);
  return {
    from: focus.at, seen, hidden: hidden.map((t) => (rows.length > 0 ? t.at : shortOf(focus.at, t))),
    words: targets.length === 0 ? [] : [
      say(rows.length > 0 ? "A straight line runs from {from} to {n} of {all} chairs." : "A straight line runs from {from} to {n} of {all} tables.", { from: focus.name, n: open.length, all: targets.length }),
      ...(named.length > 0 ? [say("Something stands before tables {tables}.", { n: named.length, tables: named.join(", ") })] : []),
    ],
  };
}

/** Where a line to a table's middle comes to its places: half a table and a chair before it. */
function shortOf(from: Point, { at, shape }: Item): Point {
  const half = (isRound(shape) ? shape.diameter : Math.min(shape.width, shape.depth)) / 2 + 250;
  const far = distance(from, at);
  return far <= half ? at : add(at, scale(unit(sub(from, at)), half));
}

/** The two outermost directions of what is seen from a point. */
function edgesOfFan(from: Point, points: readonly Point[]): readonly Point[] {
  const [first] = points;
  if (!first) return [];
  const mid: Point = [points.reduce((n, p) => n + p[0], 0) / points.length, points.reduce((n, p) => n + p[1], 0) / points.length];
  const axis = unit(sub(mid, from));
  const off = (p: Point): number => { const d = unit(sub(p, from)); return axis[0] * d[1] - axis[1] * d[0]; };
  return [points.reduce((a, b) => (off(b) < off(a) ? b : a)), points.reduce((a, b) => (off(b) > off(a) ? b : a))];
}

type Desk = { readonly frame: Frame; readonly hand: Hand; readonly ground: Ground };

const takeAll = (ground: Ground, points: readonly Paper[]): void => points.forEach((p, i) => { const q = points[i + 1]; if (q) ground.takeLine(p, q); });

/** Between two rooms a way passes through their walls; further than this outside what is drawn it has left the drawing, mm. */
const THROUGH = 900, STEP = 100;

/** A way as far as it runs through the rooms that are drawn: into others it leads by its arrow alone. */
function within(way: Way, rooms: readonly Room[]): Way {
  const inside = (p: Point): boolean => rooms.some((r) => contains(r.outline, p));
  const kept: Point[] = [];
  let out = 0;
  for (const [i, to] of way.points.entries()) {
    const from = way.points[i - 1];
    if (!from) { kept.push(to); continue; }
    const n = Math.max(1, Math.ceil(distance(from, to) / STEP));
    for (let k = 1; k <= n; k += 1) {
      const p = lerp(from, to, k / n);
      out = inside(p) ? 0 : out + distance(from, to) / n;
      if (out <= THROUGH) continue;
      // Back to a little past the door that it left by.
      const last = lerp(from, to, Math.max(0, k / n - (out - PAST) / Math.max(1, distance(from, to))));
      return { points: [...kept, last], arrives: true };
    }
    kept.push(to);
  }
  return way;
}

export function drawFlows(flows: Flows, { frame, hand, ground }: Desk, rooms: readonly Room[]): readonly Mark[] {
  const lines: Step[] = [], heads: Step[] = [];
  for (const way of flows.ways.map((w) => within(w, rooms))) {
    const points = way.points.map((p) => toPaper(frame, p));
    takeAll(ground, points);
    lines.push(...line(...points));
    const tip = points.at(-1), before = points.at(-2);
    if (!way.arrives || !tip || !before) continue;
    const u = unit(sub(tip, before)), side: Point = [-u[1], u[0]], h = 1.7;
    const foot = sub(tip, scale(u, h));
    heads.push(...closed([tip, add(foot, scale(side, h * 0.45)), sub(foot, scale(side, h * 0.45))]));
  }
  if (lines.length === 0) return [];
  return [{ kind: "path", steps: lines, stroke: { ink: "ink-2", weight: hand.mid, dash: [1.3, 0.9], cap: "round" } }, ...(heads.length > 0 ? [{ kind: "path", steps: heads, fill: "ink" } satisfies Mark] : [])];
}

/** Lines of sight: long dashes with dots; one that is broken ends in a bar across it. */
export function drawSights({ from, seen, hidden }: Sights, { frame, hand, ground }: Desk): readonly Mark[] {
  if (!from) return [];
  const eye = toPaper(frame, from);
  const rays = (list: readonly Point[]): readonly (readonly [Paper, Paper])[] => list.map((p) => [eye, toPaper(frame, p)]);
  for (const [a, b] of [...rays(seen), ...rays(hidden)]) ground.takeLine(a, b);
  const bars = rays(hidden).flatMap(([a, b]) => {
    if (distance(a, b) < 1) return [];
    const u = unit(sub(b, a)), side: Point = [-u[1] * 1.1, u[0] * 1.1];
    return line(add(b, side), sub(b, side));
  });
  const strokes: readonly Mark[] = [
    { kind: "path", steps: rays(seen).flatMap((r) => line(...r)), stroke: { ink: "ink-3", weight: hand.fine, dash: [3.2, 0.8, 0.5, 0.8] } },
    { kind: "path", steps: rays(hidden).flatMap((r) => line(...r)), stroke: { ink: "ink-3", weight: hand.fine, dash: [0.5, 0.9] } },
    { kind: "path", steps: bars, stroke: { ink: "ink", weight: hand.leaf } },
  ];
  return [...strokes.filter((m) => m.kind !== "path" || m.steps.length > 0), { kind: "path", steps: circle(eye, 0.9), fill: "leaf", stroke: { ink: "ink", weight: hand.fine } }, { kind: "path", steps: circle(eye, 0.35), fill: "ink" }];
}
