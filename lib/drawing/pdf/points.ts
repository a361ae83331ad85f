import { sinCos } from "../../geometry";
import type { Paper, Step } from "../display";

/** Points of a length in millimetres: 1 in = 72 pt (ISO 32000-1, 8.3.2.3) and 1 in = 25.4 mm, both exact. */
export const toPoints = (mm: number): number => (mm * 72) / 25.4;

/** Where a drawing's paper lies on the page: moved by `at` (mm), then enlarged by `scale` about that point. */
export type Placing = { readonly at: Paper; readonly scale: number };

export const IN_PLACE: Placing = { at: [0, 0], scale: 1 };

export const placed = (p: Paper, by: Placing): Paper => [
  toPoints(by.at[0] + p[0] * by.scale),
  toPoints(by.at[1] + p[1] * by.scale),
];

export function placedStep(step: Step, by: Placing): Step {
  switch (step.op) {
    case "Z":
      return step;
    case "C":
      return { op: "C", c1: placed(step.c1, by), c2: placed(step.c2, by), to: placed(step.to, by) };
    case "M":
    case "L":
      return { op: step.op, to: placed(step.to, by) };
  }
}

/** Sine and cosine of a turn in degrees, clockwise on a page whose y runs down. */
export const turnOf = (degrees: number): { readonly sin: number; readonly cos: number } => (degrees === 0 ? { sin: 0, cos: 1 } : sinCos(degrees));
