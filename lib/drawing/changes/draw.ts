import { add, boxOf, distance, offset, scale, sub, union, unit, type Point } from "../../geometry";
import { footprintPolygon, isRound, type Item } from "../../layout";
import type { Mark, Paper, Step } from "../display";
import { capHeight, textWidth, type Type } from "../metrics";
import { closed, line, placedSteps, regionSteps } from "../paths";
import { seatCorners } from "../plan/chairs";
import { toPaper, type Frame, type Hand } from "../plan/hand";
import type { Ground, Rect } from "../plan/ground";
import { beside, firstFree } from "../plan/lettering";
import { blankOf, outlineOf } from "../plan/pieces";
import type { Change } from "./say";

type Desk = { readonly frame: Frame; readonly hand: Hand; readonly ground: Ground };
type Placed = { readonly change: Change; readonly is: readonly Mark[]; readonly by: Rect };

/** The outline of a piece, grown by a little of paper so that it runs outside the piece's own edge. */
function ringOf(item: Item, frame: Frame, by: number): readonly Step[] {
  const b = blankOf(item, frame);
  const grown = "radius" in b ? { radius: b.radius + by } : { width: b.width + 2 * by, depth: b.depth + 2 * by };
  return placedSteps(outlineOf(grown), toPaper(frame, item.at), item.angle);
}

const reachOf = (item: Item, frame: Frame, along: Paper): number => {
  const b = blankOf(item, frame);
  if ("radius" in b) return b.radius;
  const [x, y] = placedSteps([{ op: "M", to: along }], [0, 0], -item.angle).flatMap((s) => (s.op === "Z" ? [] : s.to));
  const kx = Math.abs(x ?? 0), ky = Math.abs(y ?? 0);
  return Math.min(kx > 1e-6 ? b.width / 2 / kx : Infinity, ky > 1e-6 ? b.depth / 2 / ky : Infinity);
};

/** A thin arrow from edge to edge; none where the two spots nearly touch. */
function arrow(was: Item, now: Item, { frame, hand, ground }: Desk): readonly Mark[] {
  const a = toPaper(frame, was.at), b = toPaper(frame, now.at);
  if (distance(a, b) < 0.5) return [];
  const u = unit(sub(b, a));
  const from = add(a, scale(u, reachOf(was, frame, u) + 0.5)), to = add(b, scale(u, -(reachOf(now, frame, u) + 1)));
  const head = 1.5;
  if ((to[0] - from[0]) * u[0] + (to[1] - from[1]) * u[1] < head + 1) return [];
  const neck = add(to, scale(u, -head)), side: Point = [-u[1] * head * 0.42, u[0] * head * 0.42];
  ground.takeLine(from, to);
  return [
    { kind: "path", steps: line(from, neck), stroke: { ink: "accent", weight: hand.fine * 1.5, dash: [2.2, 0.9] } },
    { kind: "path", steps: closed([to, add(neck, side), sub(neck, side)]), fill: "accent" },
  ];
}

/** Two lines from corner to corner: a piece that is there no more. */
function cross(item: Item, frame: Frame): readonly Step[] {
  const b = blankOf(item, frame);
  const [w, d] = "radius" in b ? [b.radius * 0.7, b.radius * 0.7] : [b.width / 2, b.depth / 2];
  return placedSteps([...line([-w, -d], [w, d]), ...line([-w, d], [w, -d])], toPaper(frame, item.at), item.angle);
}

const rectOf = (steps: readonly Step[]): Rect => {
  const b = boxOf(steps.flatMap((s) => (s.op === "Z" ? [] : [s.to])));
  return { x: b.minX, y: b.minY, width: b.maxX - b.minX, height: b.maxY - b.minY };
};

/** The outline of what a change speaks of: joined tables as one, chairs each by itself. */
function around(items: readonly Item[], frame: Frame, by: number): readonly Step[] {
  const [first] = items;
  if (items.length < 2 || first?.kind === "chair") return items.flatMap((i) => ring(i, frame, by));
  return regionSteps(offset(union(items.map(footprintPolygon)), 2 + by / frame.perMm), (p) => toPaper(frame, p));
}

const isRows = (change: Change): boolean => [...change.was, ...change.now].some((i) => i.kind === "chair");
const ring = (i: Item, frame: Frame, by: number): readonly Step[] => (i.kind === "chair" ? chairRing(i, frame) : ringOf(i, frame, by));

/** Where it stood: dashed, crossed out where nothing of it is left. Clear floor is kept about the dashes. */
function wasOf(change: Change, { frame, hand, ground }: Desk): readonly Mark[] {
  if (change.kind !== "moved" && change.kind !== "removed") return [];
  const steps = around(change.was, frame, 0);
  let pen: Paper | null = null;
  for (const s of steps) { if (s.op === "Z") continue; if (pen && s.op !== "M") ground.takeLine(pen, s.to); pen = s.to; }
  const crossed: readonly Mark[] = change.kind === "removed" ? [{ kind: "path", steps: change.was.flatMap((i) => cross(i, frame)), stroke: { ink: "ink-2", weight: hand.fine * 1.5 } }] : [];
  return [
    { kind: "path", steps, stroke: { ink: "floor", weight: hand.mid * 3 } },
    { kind: "path", steps, stroke: { ink: "ink-2", weight: hand.mid, dash: [1.5, 0.9] } }, ...crossed,
  ];
}

/** Where it stands: a firm outline, doubled where the piece is new. */
function isOf(change: Change, desk: Desk): readonly Mark[] {
  const { frame, hand } = desk;
  const rows = isRows(change);
  const [first] = change.was, [last] = change.now;
  if (!last) return [];
  const steps = around(change.now, frame, hand.heavy * 0.5);
  return [
    { kind: "path", steps, stroke: { ink: "accent", weight: rows ? hand.mid : hand.heavy * 1.2 } },
    ...(change.kind === "added" && !rows ? [{ kind: "path", steps: around(change.now, frame, hand.heavy * 2.4), stroke: { ink: "accent", weight: hand.fine } }] satisfies Mark[] : []),
    ...(change.kind === "moved" && !rows && first ? arrow(first, last, desk) : []),
  ];
}

const chairRing = (i: Item, frame: Frame): readonly Step[] => {
  const size = isRound(i.shape) ? { width: i.shape.diameter, depth: i.shape.diameter } : i.shape;
  return closed(seatCorners({ x: i.at[0], y: i.at[1], facing: i.angle + 90, place: "chair" }, size).map((p) => toPaper(frame, p)));
};

/** The number of a change, on a firm square: plain where a piece stands elsewhere, with + where it is new, with a minus where it is gone. */
function badge({ change, is, by }: Placed, { hand, ground }: Desk): Mark {
  const type: Type = { size: hand.note, face: "sans", weight: "bold" };
  const text = `${change.kind === "added" ? "+" : change.kind === "removed" ? "\u2212" : ""}${change.number}`;
  const tall = hand.note * capHeight(type) + 1.3, wide = Math.max(tall, textWidth(text, type) + 1.3);
  const free = firstFree(ground, beside(by, { width: wide, height: tall }, 9));
  const at: Rect = free?.at ?? { x: by.x + by.width - wide / 2, y: by.y - tall / 2, width: wide, height: tall };
  if (!free) ground.takeRect(at);
  const plate = closed([[at.x, at.y], [at.x + at.width, at.y], [at.x + at.width, at.y + at.height], [at.x, at.y + at.height]]);
  return {
    kind: "group", id: `change-${change.number}`, role: "note", label: `Change ${change.number}: ${change.text}`, marks: [
      ...is, { kind: "path", steps: plate, fill: "accent", stroke: { ink: "floor", weight: hand.fine } },
      { kind: "text", at: [at.x + at.width / 2, at.y + at.height / 2 + (hand.note * capHeight(type)) / 2], text, ...type, anchor: "middle", ink: "on-accent" },
    ],
  };
}

/** What was, to lie under a plan's words, and what is, to lie over it. Changes that have no piece on this drawing are told in words alone. */
export function drawChanges(changes: readonly Change[], rooms: ReadonlySet<string>, desk: Desk): { readonly was: readonly Mark[]; readonly is: readonly Mark[] } {
  const here = changes.map((c): Change => ({ ...c, was: c.was.filter((i) => rooms.has(i.room)), now: c.now.filter((i) => rooms.has(i.room)) }));
  const was = here.flatMap((c) => wasOf(c, desk));
  const placed = here.flatMap((change): readonly Placed[] => {
    const main = change.now[0] ?? change.was[0];
    return main ? [{ change, is: isOf(change, desk), by: rectOf(ring(main, desk.frame, desk.hand.heavy)) }] : [];
  });
  return { was, is: placed.map((p) => badge(p, desk)) };
}
