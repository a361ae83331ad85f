import { add, turn, type Point } from "../../geometry";
import { WHEELCHAIR_FLOOR, type Item, type Seat } from "../../layout";
import type { Mark, Step } from "../display";
import { box, placedSteps, roundedBack } from "../paths";
import { grain } from "./grain";
import { toPaper, type Frame, type Hand } from "./hand";

type Size = { readonly width: number; readonly depth: number };

/** The seats of a piece, chair items included: a chair without a seat of its own sits at its middle. */
export const seatsOf = (item: Item): readonly Seat[] =>
  item.seats.length > 0 || item.kind !== "chair" ? item.seats : [{ x: item.at[0], y: item.at[1], facing: item.angle + 90, place: "chair" }];

/**
 * All chairs of a piece in three marks: seats, flecks, backs. A sitter looks down the chair's own page, so its back is at -y.
 * A wheelchair place is an open outline: nothing of the venue's stands there.
 */
export function drawSeats(seats: readonly Seat[], size: Size, frame: Frame, hand: Hand): readonly Mark[] {
  if (hand.detail === "figures") return [];
  const chairs = seats.filter((s) => s.place === "chair");
  const w = size.width * frame.perMm, d = size.depth * frame.perMm;
  const full = hand.detail === "full";
  const put = (steps: readonly Step[]): readonly Step[] =>
    chairs.flatMap((s) => placedSteps(steps, toPaper(frame, [s.x, s.y]), s.facing - 90));
  const marks: Mark[] = [];
  if (chairs.length > 0 && full) {
    const back = 0.13 * d;
    marks.push(
      { kind: "path", steps: put(box(-w / 2, -d / 2, w, d)), fill: "v-chair", stroke: { ink: "g-chair", weight: hand.fine } },
      { kind: "path", steps: put(grain("chair", { blank: { width: w, depth: d * 0.8 }, k: hand.spacing, places: 0, from: 0 }).fine), stroke: { ink: "g-chair", weight: hand.grain } },
      { kind: "path", steps: put(box(-w / 2 - 0.08, -d / 2, w + 0.16, back)), fill: "ink-2" },
    );
  } else if (chairs.length > 0) {
    const radius = Math.min(w, d) * 0.36;
    marks.push({ kind: "path", steps: put(roundedBack(w, d, radius)), fill: "v-chair", stroke: { ink: "ink-2", weight: hand.fine } });
  }
  const spaces = seats.filter((s) => s.place === "wheelchair");
  if (spaces.length > 0) {
    const sw = WHEELCHAIR_FLOOR.width * frame.perMm, sd = WHEELCHAIR_FLOOR.depth * frame.perMm;
    marks.push({
      kind: "path", fill: "floor", stroke: { ink: "ink", weight: hand.mid },
      steps: spaces.flatMap((s) => placedSteps(box(-sw / 2, -sd / 2, sw, sd), toPaper(frame, [s.x, s.y]), s.facing - 90)),
    });
  }
  return marks;
}

/** The floor of a seat as a polygon in the venue's frame. */
export function seatCorners(seat: Seat, size: Size): readonly Point[] {
  const { width, depth } = seat.place === "wheelchair" ? WHEELCHAIR_FLOOR : size;
  return ([[-1, -1], [1, -1], [1, 1], [-1, 1]] as const).map(([x, y]) => add([seat.x, seat.y], turn([(x * width) / 2, (y * depth) / 2], seat.facing - 90)));
}
