import { add, bearing, clockwise, inwardNormal, scale, sub, type Point, type Polygon, type Region } from "../../geometry";
import { gateOf, wallOf, type Door, type Gate, type Room } from "../../venue";
import type { Mark, Paper, Step } from "../display";
import { arc, closed, line } from "../paths";
import { toPaper, type Frame, type Hand } from "./hand";
import { depthAt, through } from "./walls";

/** A door as it is drawn: once for the two rooms that share it. */
export type Opening = {
  readonly gate: Gate;
  /** Depth of the wall it goes through, mm. */
  readonly depth: number;
  /** The side that its leaves open to: into the room, away from it, both, neither. */
  readonly swing: Door["swing"];
  /** Floor that its leaves sweep, in the venue's frame. */
  readonly sweeps: readonly Polygon[];
  /** A single leaf hangs on the first jamb, or on the second. */
  readonly onFrom: boolean;
  /** Treads outside it. */
  readonly steps: number;
};

/** All openings of one level. Of two doors that face each other the one with leaves is drawn. */
export function openingsOf(rooms: readonly Room[], walls: Region): readonly Opening[] {
  const gates = rooms.flatMap((r) => r.doors.map((d) => gateOf(r, d)).filter((g) => g !== null));
  const taken = new Set<Gate>();
  const out: Opening[] = [];
  for (const gate of gates) {
    if (taken.has(gate)) continue;
    const outward = scale(gate.inward, -1);
    const depth = depthAt(walls, gate.at, outward);
    const twin = gates.find((g) => g !== gate && g.room === gate.leadsTo && g.leadsTo === gate.room && faces(gate, g));
    if (twin) taken.add(twin);
    const own = twin && gate.door.swing === "none" && twin.door.swing !== "none" ? twin : gate;
    out.push({ gate: own, depth, swing: own.door.swing, sweeps: sweepsOf(own, depth), onFrom: hungOnFrom(own, rooms.find((r) => r.id === own.room)), steps: Math.max(gate.door.steps ?? 0, twin?.door.steps ?? 0) });
  }
  return out;
}

const faces = (a: Gate, b: Gate): boolean =>
  a.inward[0] * b.inward[0] + a.inward[1] * b.inward[1] < -0.9 && Math.hypot(a.at[0] - b.at[0], a.at[1] - b.at[1]) < 900 + a.width / 2;

type Leaf = { readonly hinge: Point; readonly tip: Point; readonly open: Point; readonly side: Point };

/** The leaves of a door on one side of its wall. A single leaf is hung on the jamb that lies nearer to a corner, so that it opens to the wall. */
function leavesOf({ gate, depth, onFrom }: Opening, side: "in" | "out"): readonly Leaf[] {
  const away = side === "in" ? gate.inward : scale(gate.inward, -1);
  const shift: Point = side === "in" ? [0, 0] : scale(away, depth);
  const from = add(gate.from, shift), to = add(gate.to, shift);
  const leaf = (hinge: Point, tip: Point): Leaf => {
    const reach = Math.hypot(tip[0] - hinge[0], tip[1] - hinge[1]);
    return { hinge, tip, open: add(hinge, scale(away, reach)), side: away };
  };
  if (gate.width > 1200) {
    const mid: Point = [(from[0] + to[0]) / 2, (from[1] + to[1]) / 2];
    return [leaf(from, mid), leaf(to, mid)];
  }
  return onFrom ? [leaf(from, to)] : [leaf(to, from)];
}

function hungOnFrom(gate: Gate, room: Room | undefined): boolean {
  const wall = room && wallOf(clockwise(room.outline), gate.from, gate.to);
  if (!wall) return true;
  const near = (p: Point): number => Math.min(...wall.map((c) => Math.hypot(p[0] - c[0], p[1] - c[1])));
  return near(gate.from) <= near(gate.to);
}

function sweepsOf(gate: Gate, depth: number): readonly Polygon[] {
  const out: Polygon[] = [];
  const { swing } = gate.door;
  const deep = gate.leaf;
  const square = (from: Point, to: Point, away: Point): Polygon => [from, to, add(to, scale(away, deep)), add(from, scale(away, deep))];
  if (swing === "in" || swing === "both") out.push(square(gate.from, gate.to, gate.inward));
  if (swing === "out" || swing === "both") {
    const away = scale(gate.inward, -1);
    const shift = scale(away, depth);
    out.push(square(add(gate.from, shift), add(gate.to, shift), away));
  }
  return out;
}

/** Depth of one tread as it is drawn, mm (common practice, no source). */
const TREAD = 280;

/** The floor that steps take outside a door, mm. */
export const stepsPolygon = (o: Opening): Polygon | null => {
  if (o.steps === 0) return null;
  const away = scale(o.gate.inward, -1);
  const face = scale(away, o.depth);
  return through(add(o.gate.from, face), add(o.gate.to, face), away, Math.min(o.steps, 6) * TREAD);
};

/** Cuts an opening through the wall and draws what hangs in it. */
export function drawOpening(o: Opening, frame: Frame, hand: Hand): readonly Mark[] {
  const P = (p: Point): Paper => toPaper(frame, p);
  const { gate, depth } = o;
  const outward = scale(gate.inward, -1);
  const cut = (o.depth > 0 ? through(gate.from, gate.to, outward, depth) : through(add(gate.from, scale(gate.inward, 60)), add(gate.to, scale(gate.inward, 60)), outward, 120));
  const marks: Mark[] = [{ kind: "path", steps: closed(cut.map(P)), fill: "floor" }];
  const faceA = line(P(gate.from), P(gate.to));
  const faceB = line(P(add(gate.from, scale(outward, depth))), P(add(gate.to, scale(outward, depth))));
  if (o.swing === "none") {
    const open = gate.leadsTo === null ? [...faceA] : depth > 0 ? [...faceA, ...faceB] : [...faceA];
    marks.push({ kind: "path", steps: open, stroke: { ink: "ink-2", weight: hand.fine, dash: [1.2, 0.8] } });
  }
  const treads = stepsPolygon(o);
  if (treads) marks.push(...drawTreads(o, frame, hand));
  const sides: ("in" | "out")[] = o.swing === "both" ? ["in", "out"] : o.swing === "none" ? [] : [o.swing];
  const leaves: Step[] = [], arcs: Step[] = [];
  for (const side of sides) for (const leaf of leavesOf(o, side)) {
    leaves.push(...line(P(leaf.hinge), P(leaf.open)));
    const radius = Math.hypot(leaf.tip[0] - leaf.hinge[0], leaf.tip[1] - leaf.hinge[1]) * frame.perMm;
    const from = bearing(sub(leaf.open, leaf.hinge)), to = bearing(sub(leaf.tip, leaf.hinge));
    const sweep = ((to - from + 540) % 360) - 180;
    arcs.push(...arc(P(leaf.hinge), radius, from, sweep));
  }
  if (arcs.length > 0) marks.push({ kind: "path", steps: arcs, stroke: { ink: "ink-2", weight: hand.fine } });
  if (leaves.length > 0) marks.push({ kind: "path", steps: leaves, stroke: { ink: "ink", weight: hand.leaf } });
  return marks;
}

function drawTreads(o: Opening, frame: Frame, hand: Hand): readonly Mark[] {
  const away = scale(o.gate.inward, -1);
  const steps: Step[] = [];
  const n = Math.min(o.steps, 6);
  const at = (p: Point, k: number): Paper => toPaper(frame, add(p, scale(away, o.depth + k * TREAD)));
  for (let k = 0; k <= n; k++) steps.push(...line(at(o.gate.from, k), at(o.gate.to, k)));
  steps.push(...line(at(o.gate.from, 0), at(o.gate.from, n)), ...line(at(o.gate.to, 0), at(o.gate.to, n)));
  return [{ kind: "path", steps, stroke: { ink: "ink-2", weight: hand.fine } }];
}

/** A window: the opening, both faces of the wall and the two lines of its panes. */
export function drawWindow(room: Room, w: Room["windows"][number], walls: Region, frame: Frame, hand: Hand): readonly Mark[] {
  const outline = clockwise(room.outline);
  const wall = wallOf(outline, w.from, w.to);
  if (!wall) return [];
  const outward = scale(inwardNormal(wall), -1);
  const mid: Point = [(w.from[0] + w.to[0]) / 2, (w.from[1] + w.to[1]) / 2];
  const depth = depthAt(walls, mid, outward);
  if (depth === 0) return [];
  const P = (p: Point): Paper => toPaper(frame, p);
  const at = (k: number): readonly Step[] => line(P(add(w.from, scale(outward, depth * k))), P(add(w.to, scale(outward, depth * k))));
  const gap = hand.detail === "full" ? 0.09 : 0.14;
  return [
    { kind: "path", steps: closed(through(w.from, w.to, outward, depth).map(P)), fill: "floor" },
    { kind: "path", steps: [...at(0), ...at(1), ...at(0.5 - gap), ...at(0.5 + gap)], stroke: { ink: "ink-2", weight: hand.fine } },
  ];
}
