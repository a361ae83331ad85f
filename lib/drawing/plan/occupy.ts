import { clockwise, type Point, type Polygon } from "../../geometry";
import { footprintPolygon, type Item } from "../../layout";
import type { Paper } from "../display";
import { seatCorners, seatsOf } from "./chairs";
import { chairOf } from "../../rules";
import type { Strings } from "./dimensions";
import { drapeTrack, socketPoint } from "./fittings";
import type { Ground, Rect } from "./ground";
import { toPaper } from "./hand";
import type { Level } from "./level";
import { stepsPolygon } from "./openings";
import { pieceRect, type Desk } from "./words";

/** The corners of a piece with all its seats, in the venue's frame. */
export const extentOf = (item: Item, chair: { readonly width: number; readonly depth: number }): readonly Point[] =>
  [...footprintPolygon(item), ...seatsOf(item).flatMap((s) => seatCorners(s, chair))];

/** Takes from the ground all that words must keep off. */
export function occupy(level: Level, { frame, ground, hand }: Desk, strings: Strings): void {
  const P = (p: Point): Paper => toPaper(frame, p);
  level.rooms.forEach((r, i) => ground.mark(r.outline.map(P), i));
  // The mass is taken as its outer face less its floors: by its edges and by the strips between them.
  for (const piece of level.walls) {
    takeRegion(ground, piece.outer, piece.holes, P);
  }
  const polygons: Polygon[] = [
    ...level.rooms.flatMap((r) => [...r.obstacles.map((o) => o.outline), ...r.keepClear.map((k) => k.outline)]),
    ...level.openings.flatMap((o) => o.sweeps), ...level.openings.flatMap((o) => stepsPolygon(o) ?? []).length > 0 ? level.openings.map(stepsPolygon).filter((s): s is Polygon => s !== null) : [],
  ];
  for (const p of polygons) ground.take(p.map(P));
  const chair = chairOf(level.venue);
  for (const item of level.items) {
    if (item.kind !== "chair") ground.take(footprintPolygon(item).map(P));
    for (const s of seatsOf(item)) ground.take(seatCorners(s, chair).map(P));
  }
  for (const r of level.rooms) {
    if (r.outdoor) r.outline.forEach((p, i) => ground.takeLine(P(p), P(r.outline[(i + 1) % r.outline.length] ?? p)));
    if (hand.detail !== "full") continue;
    for (const s of r.sockets) { const [x, y] = P(socketPoint(s)); ground.takeRect({ x: x - 1.7, y: y - 1.7, width: 3.4, height: 3.4 }); }
    for (const w of r.walls) if (w.is !== "plain") ground.takeRect(inflate(pieceRect([w.from, w.to], frame), 1.1));
  }
  for (const d of level.venue.drapes) {
    const lender = level.rooms.find((r) => r.id === d.from);
    if (lender && (level.scene.drapes.includes(d.id) || hand.detail === "full")) for (const [a, b] of drapeTrack(d, lender)) ground.takeLine(P(a), P(b));
  }
  for (const r of strings.takes) ground.takeRect(r);
  for (const [a, b] of strings.lines) ground.takeLine(a, b);
}

export const inflate = (r: Rect, by: number): Rect => ({ x: r.x - by, y: r.y - by, width: r.width + 2 * by, height: r.height + 2 * by });

function takeRegion(ground: Ground, outer: Polygon, holes: readonly Polygon[], P: (p: Point) => Paper): void {
  // One ring from the outer face to each hole and back keeps the even-odd scan true to the mass.
  const ring = (p: Polygon): readonly Paper[] => { const q = clockwise(p).map(P); const first = q[0]; return first ? [...q, first] : q; };
  const whole: Paper[] = [...ring(outer)];
  const anchor = whole[0];
  for (const h of holes) { whole.push(...ring(h)); if (anchor) whole.push(anchor); }
  ground.take(whole);
}

