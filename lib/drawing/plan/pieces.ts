import { bearing, sub } from "../../geometry";
import { isRound, type Item } from "../../layout";
import type { Venue } from "../../venue";
import type { Mark, Step, Veneer } from "../display";
import { box, circle, line, placedSteps } from "../paths";
import { drawSeats, seatsOf } from "./chairs";
import { chairOf } from "../../rules";
import { grain, parquet, type Blank } from "./grain";
import { toPaper, type Frame, type Hand } from "./hand";
import { veneerOf } from "./veneer";

/** The outline of a piece about its own centre, mm of paper. */
export function blankOf(item: Item, frame: Frame): Blank {
  const s = item.shape;
  return isRound(s) ? { radius: (s.diameter / 2) * frame.perMm } : { width: s.width * frame.perMm, depth: s.depth * frame.perMm };
}

export const outlineOf = (blank: Blank): readonly Step[] =>
  "radius" in blank ? circle([0, 0], blank.radius) : box(-blank.width / 2, -blank.depth / 2, blank.width, blank.depth);

/** How many panels a laid floor has across and down: those of the stock where they fill it, else squares of about 0.9 m. */
export function panelsOf(item: Item, venue: Venue): { readonly across: number; readonly down: number } {
  if (isRound(item.shape)) return { across: 1, down: 1 };
  const id = "stock" in item.from ? item.from.stock : null;
  const stock = venue.stock.find((s) => s.id === id);
  const [pw, pd] = stock && "width" in stock.shape ? [stock.shape.width, stock.shape.depth] : [900, 900];
  return { across: Math.max(1, Math.round(item.shape.width / pw)), down: Math.max(1, Math.round(item.shape.depth / pd)) };
}

function body(item: Item, veneer: Veneer, blank: Blank, { venue, hand }: { readonly venue: Venue; readonly hand: Hand }): ReturnType<typeof grain> {
  if (veneer === "floor" && !("radius" in blank)) return parquet({ ...blank, ...panelsOf(item, venue) });
  const first = item.seats.find((s) => s.place === "chair") ?? item.seats[0];
  const places = item.seats.length;
  // A joint falls half a wedge to the side of the first place, so that every place has a wedge before it.
  const from = first && places >= 5 ? bearing(sub([first.x, first.y], item.at)) - item.angle - 180 / places : 22.5;
  return grain(veneer, { blank, k: hand.spacing, places, from });
}

/** Strokes that tell a piece from another of its family: the back and arms of a seat, the tiers of a cake, joints of a long bar. */
function detailOf(item: Item, blank: Blank, hand: Hand): readonly Mark[] {
  if (hand.detail !== "full") return [];
  const stroke = { ink: "ink", weight: hand.mid } as const;
  if (item.kind === "lounge" && !("radius" in blank) && Math.max(blank.width, blank.depth) > 5.5) {
    const w = blank.width / 2, d = blank.depth / 2, back = Math.min(2 * d * 0.2, 1.7), arm = Math.min(w * 0.3, 1.3);
    return [{ kind: "path", steps: [...line([-w, -d + back], [w, -d + back]), ...line([-w + arm, -d + back], [-w + arm, d]), ...line([w - arm, -d + back], [w - arm, d])], stroke }];
  }
  if (item.role === "cake") {
    const r = Math.min("radius" in blank ? blank.radius : Math.min(blank.width, blank.depth) / 2, 3.3) * 0.76;
    return [1, 0.66, 0.33].map((k): Mark => ({ kind: "path", steps: circle([0, 0], r * k), fill: "leaf", stroke: { ink: "ink", weight: hand.fine } }));
  }
  if (item.kind === "bar" && "stock" in item.from && (item.from.count ?? 1) > 1 && !("radius" in blank)) {
    const n = item.from.count ?? 1;
    return [{ kind: "path", steps: Array.from({ length: n - 1 }, (_, i) => (i + 1) / n - 0.5).flatMap((t) => line([t * blank.width, -blank.depth / 2], [t * blank.width, blank.depth / 2])), stroke }];
  }
  return [];
}

/** What is drawn bare: a fixed thing on its plinth, with a ring inside. */
function bare(item: Item, blank: Blank, hand: Hand): readonly Mark[] {
  const outline = outlineOf(blank);
  const marks: Mark[] = [{ kind: "path", steps: outline, fill: "leaf", stroke: { ink: "ink", weight: hand.mid } }];
  if (item.role === "wheelchair-space" || hand.detail !== "full") return marks;
  const inner: readonly Step[] = "radius" in blank
    ? [...circle([0, 0], blank.radius * 0.72), ...circle([0, 0], blank.radius * 0.22)]
    : box(-blank.width / 2 + 0.7, -blank.depth / 2 + 0.7, Math.max(0.1, blank.width - 1.4), Math.max(0.1, blank.depth - 1.4));
  return [...marks, { kind: "path", steps: inner, stroke: { ink: "ink-2", weight: hand.fine } }];
}

const turned = (marks: readonly Mark[], frame: Frame, item: Item): readonly Mark[] => {
  const at = toPaper(frame, item.at);
  return marks.map((m) => (m.kind === "path" ? { ...m, steps: placedSteps(m.steps, at, item.angle) } : m));
};

/** One piece with its places: chairs first, for the table covers what is tucked under it. */
export function drawPiece(item: Item, { venue, frame, hand }: { readonly venue: Venue; readonly frame: Frame; readonly hand: Hand }): readonly Mark[] {
  const seats = drawSeats(seatsOf(item), item.kind === "chair" && !isRound(item.shape) ? item.shape : chairOf(venue), frame, hand);
  if (item.kind === "chair") return seats;
  if (item.role === "wheelchair-space") return seats.length > 0 ? seats : turned(bare(item, blankOf(item, frame), hand), frame, item);
  const blank = blankOf(item, frame);
  const veneer = veneerOf(item, venue);
  if (veneer === null) return [...seats, ...turned(bare(item, blank, hand), frame, item)];
  const outline = outlineOf(blank);
  const laid = hand.detail === "figures" ? { fine: [], joints: [] } : body(item, veneer, blank, { venue, hand });
  const marks: Mark[] = [{ kind: "path", steps: outline, fill: `v-${veneer}` }];
  if (laid.fine.length > 0) marks.push({ kind: "path", steps: laid.fine, stroke: { ink: `g-${veneer}`, weight: hand.grain } });
  if (laid.joints.length > 0) marks.push({ kind: "path", steps: laid.joints, stroke: { ink: `g-${veneer}`, weight: hand.grain * 1.7 } });
  marks.push({ kind: "path", steps: outline, stroke: { ink: "ink", weight: hand.mid } }, ...detailOf(item, blank, hand));
  return [...seats, ...turned(marks, frame, item)];
}

/** Order of painting: what lies on the floor, then rows of chairs, then what stands. */
export const layerOf = (item: Item): number => (item.kind === "dance-floor" ? 0 : item.kind === "chair" ? 1 : 2);
