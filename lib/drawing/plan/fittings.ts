import {
  add, bearing, boxOf, clockwise, distance, edges, inwardNormal, nearestOnSegment, scale, sub, unit, type Point, type Polygon,
} from "../../geometry";
import type { Drape, Obstacle, Room } from "../../venue";
import type { Mark, Paper, Step, Stroke } from "../display";
import { arc, closed, line, placedSteps } from "../paths";
import { toPaper, type Frame, type Hand } from "./hand";

const fineOf = (hand: Hand): Stroke => ({ ink: "ink-2", weight: hand.fine });

/** Lines at 45 degrees across a polygon's box, to be clipped by it. */
function hatch(points: readonly Paper[], period: number): readonly Step[] {
  const b = boxOf(points);
  const steps: Step[] = [];
  const span = b.maxY - b.minY;
  for (let x = b.minX - span + period / 2; x < b.maxX; x += period) steps.push(...line([x, b.maxY], [x + span, b.minY]));
  return steps;
}

/** Columns are filled and ringed; stairs have treads; a hearth is hatched; anything else fixed is crossed. */
export function drawObstacle(o: Obstacle, frame: Frame, hand: Hand): readonly Mark[] {
  const points = o.outline.map((p) => toPaper(frame, p));
  const steps = closed(points);
  switch (o.kind) {
    case "column": {
      const b = boxOf(points);
      const mid: Paper = [(b.minX + b.maxX) / 2, (b.minY + b.maxY) / 2];
      const ring = points.map((p): Paper => add(mid, scale(sub(p, mid), 1 + 0.42 / Math.max(0.5, distance(p, mid)))));
      const filled: Mark = { kind: "path", steps, fill: "ink" };
      return hand.detail === "full" ? [filled, { kind: "path", steps: closed(ring), stroke: fineOf(hand) }] : [{ ...filled, stroke: { ink: "ink", weight: hand.fine } }];
    }
    case "stair": return [{ kind: "path", steps, fill: "leaf" }, { kind: "path", steps: treads(points), stroke: fineOf(hand) }, { kind: "path", steps, stroke: { ink: "ink", weight: hand.mid } }];
    case "hearth": return [
      { kind: "path", steps, fill: "hush" }, { kind: "clip", steps, marks: [{ kind: "path", steps: hatch(points, 0.9), stroke: fineOf(hand) }] },
      { kind: "path", steps, stroke: { ink: "ink", weight: hand.mid } },
    ];
    case "fixed": case "other": return [
      { kind: "path", steps, fill: "hush" },
      { kind: "path", steps: points.length === 4 ? [...line(points[0] ?? [0, 0], points[2] ?? [0, 0]), ...line(points[1] ?? [0, 0], points[3] ?? [0, 0])] : [], stroke: fineOf(hand) },
      { kind: "path", steps, stroke: { ink: "ink", weight: hand.mid } },
    ];
  }
}

/** Treads across the longer way of a stair's outline. */
function treads(points: readonly Paper[]): readonly Step[] {
  const [a, b, c, d] = points;
  if (!a || !b || !c || !d || points.length !== 4) return hatch(points, 1.4);
  const lengthways = distance(a, b) >= distance(b, c);
  const [p, q, r, s] = lengthways ? [a, b, c, d] : [b, c, d, a];
  const n = Math.max(2, Math.round(distance(p, q) / 2.6));
  const steps: Step[] = [];
  for (let i = 1; i < n; i++) {
    const t = i / n;
    steps.push(...line([p[0] + (q[0] - p[0]) * t, p[1] + (q[1] - p[1]) * t], [s[0] + (r[0] - s[0]) * t, s[1] + (r[1] - s[1]) * t]));
  }
  return steps;
}

export const drawKeepClear = (outline: Polygon, frame: Frame, hand: Hand): readonly Mark[] => drawHatched(outline.map((p) => toPaper(frame, p)), hand);

/** Floor on which nothing may stand: hatched at 45 degrees, its edge dashed. */
export function drawHatched(points: readonly Paper[], hand: Hand): readonly Mark[] {
  const steps = closed(points);
  return [
    { kind: "clip", steps, marks: [{ kind: "path", steps: hatch(points, 1.5), stroke: { ink: "line", weight: hand.fine } }] },
    { kind: "path", steps, stroke: { ink: "line", weight: hand.fine, dash: [1.2, 0.8] } },
  ];
}

/** A stretch of wall with a character: a laddered line for a feature, a double one with glints for a mirror. Plain walls bear no mark. */
export function drawWall(room: Room, w: Room["walls"][number], frame: Frame, hand: Hand): readonly Mark[] {
  if (w.is === "plain" || hand.detail !== "full") return [];
  const edge = edges(clockwise(room.outline)).find(([a, b]) => distance(nearestOnSegment(w.from, [a, b]), w.from) < 3 && distance(nearestOnSegment(w.to, [a, b]), w.to) < 3);
  if (!edge) return [];
  const inward = inwardNormal(edge);
  const a = toPaper(frame, w.from), b = toPaper(frame, w.to);
  const u = unit(sub(b, a)), long = distance(a, b);
  const off = (p: Paper, k: number): Paper => add(p, scale(inward, k));
  const steps: Step[] = [...line(off(a, 0.95), off(b, 0.95))];
  const n = Math.max(1, Math.round(long / 2));
  for (let i = 0; i <= n; i++) {
    const p = add(a, scale(u, (long * i) / n));
    if (w.is === "feature") steps.push(...line(p, off(p, 0.95)));
    else if (i < n) steps.push(...line(add(p, scale(u, 0.5)), add(off(p, 0.95), scale(u, 1.1))));
  }
  if (w.is === "mirror") steps.push(...line(off(a, 0.4), off(b, 0.4)));
  return [{ kind: "path", steps, stroke: fineOf(hand) }];
}

export const socketPoint = (s: Room["sockets"][number]): Point => (isPoint(s) ? s : s.at);
export const isPoint = (s: Room["sockets"][number]): s is Point => Array.isArray(s);

/** A socket on its wall: half a disc with its prong into the room. */
export function drawSocket(room: Room, at: Point, frame: Frame, hand: Hand): readonly Mark[] {
  if (hand.detail !== "full") return [];
  const edge = edges(clockwise(room.outline)).map((e) => ({ e, d: distance(nearestOnSegment(at, e), at) })).sort((x, y) => x.d - y.d)[0];
  const angle = edge ? bearing(inwardNormal(edge.e)) : 0;
  return socketSign(toPaper(frame, at), angle, hand);
}

export function socketSign(at: Paper, angle: number, hand: Hand): readonly Mark[] {
  const half: readonly Step[] = [...arc([0, 0], 0.85, -90, 90), ...arc([0, 0], 0.85, 0, 90).slice(1), { op: "Z" }];
  return [
    { kind: "path", steps: placedSteps(half, at, angle), fill: "leaf", stroke: { ink: "ink", weight: hand.fine } },
    { kind: "path", steps: placedSteps([...line([0.85, 0], [1.6, 0]), ...line([1.6, -0.6], [1.6, 0.6])], at, angle), stroke: fineOf(hand) },
  ];
}

/** The edge of a drape's strip that does not lie on a wall of the room that lends it: where the cloth hangs. */
export function drapeTrack(drape: Drape, lender: Room): readonly (readonly [Point, Point])[] {
  const walls = edges(clockwise(lender.outline));
  return edges(drape.area).filter(([a, b]) => !walls.some((w) => [a, b].every((p) => distance(nearestOnSegment(p, w), p) < 20)));
}

export function drawDrape(drape: Drape, lender: Room, frame: Frame, hand: Hand, drawn: boolean): readonly Mark[] {
  const steps = drapeTrack(drape, lender).flatMap(([a, b]) => line(toPaper(frame, a), toPaper(frame, b)));
  return [{ kind: "path", steps, stroke: drawn ? { ink: "ink", weight: hand.leaf } : { ink: "ink-2", weight: hand.fine, dash: [3, 0.7, 0.6, 0.7] } }];
}

/** An outdoor room: boarded ground inside a double line, no wall about it. */
export function drawTerrace(room: Room, frame: Frame, hand: Hand): readonly Mark[] {
  const points = room.outline.map((p) => toPaper(frame, p));
  const steps = closed(points);
  const b = boxOf(points);
  const boards: Step[] = [];
  const pitch = hand.detail === "full" ? 2.5 : 2;
  for (let y = b.minY + pitch; y < b.maxY - 0.2; y += pitch) boards.push(...line([b.minX, y], [b.maxX, y]));
  return [
    { kind: "path", steps, fill: "paper" },
    { kind: "clip", steps, marks: [{ kind: "path", steps: boards, stroke: { ink: "hush", weight: hand.fine } }] },
    { kind: "path", steps, stroke: { ink: "ink", weight: hand.mid } },
    { kind: "path", steps: inset(points, 1.1), stroke: fineOf(hand) },
  ];
}

const inset = (points: readonly Paper[], by: number): readonly Step[] => {
  const p = clockwise(points);
  const es = edges(p);
  return closed(es.map((e, i) => {
    const before = es[(i - 1 + es.length) % es.length] ?? e;
    const n1 = inwardNormal(before), n2 = inwardNormal(e);
    const k = 1 + n1[0] * n2[0] + n1[1] * n2[1];
    return add(e[0], scale(add(n1, n2), by / Math.max(0.2, k)));
  }));
};
