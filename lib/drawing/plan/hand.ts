import type { Paper } from "../display";
import type { Point } from "../../geometry";
import type { LengthStyle } from "../../measure";

/** From the venue's frame to the paper: all rooms of one level share it. */
export type Frame = {
  /** Paper millimetres to one millimetre of the room. */
  readonly perMm: number;
  readonly origin: Paper;
};

export const toPaper = (frame: Frame, p: Point): Paper => [frame.origin[0] + p[0] * frame.perMm, frame.origin[1] + p[1] * frame.perMm];

/**
 * How much is drawn at a scale. full: chairs with backs, sockets, feature walls (1:130 and larger).
 * plain: a chair is one rounded piece. figures: tables and walls, places as a figure (under 1:250).
 */
export type Detail = "full" | "plain" | "figures";
export const detailAt = (perMm: number): Detail => (perMm >= 1 / 130 ? "full" : perMm >= 1 / 250 ? "plain" : "figures");

/** The draughtsman's hand for one drawing: line weights and sizes of words in mm of paper. */
export type Hand = {
  readonly fine: number; readonly mid: number; readonly heavy: number; readonly leaf: number; readonly grain: number;
  readonly room: number; readonly number: number; readonly label: number; readonly note: number;
  readonly medallion: number;
  /** Multiplies the grain's spacing. */
  readonly spacing: number;
  readonly detail: Detail;
  readonly lengths: LengthStyle;
};

/** Line weights are from the row 0.13, 0.18, 0.25, 0.35, 0.50, 0.70 mm, each the one before times the root of two (ISO 128-20; from memory, unconfirmed): every second one, and a door's leaf between. */
const WEIGHTS = { fine: 0.13, mid: 0.25, heavy: 0.5, leaf: 0.35, grain: 0.11 } as const;

export const PX = 25.4 / 96;

/** The hand for a sheet of paper. */
export function sheetHand(perMm: number, lengths: LengthStyle): Hand {
  const detail = detailAt(perMm);
  const far = detail !== "full";
  return { ...WEIGHTS, room: 4.6, number: far ? 3.6 : 4.3, label: 2.6, note: 2.3, medallion: far ? 2.5 : 3.15, spacing: far ? 0.75 : 1, detail, lengths };
}

/** The hand for a sheet that is carried about: no word of it is under 3.5 mm. */
export function carriedHand(perMm: number, lengths: LengthStyle): Hand {
  return { ...sheetHand(perMm, lengths), room: 5.4, number: 5, label: 3.5, note: 3.5, medallion: 3.7 };
}

/** The hand for a page: the fine line is three quarters of a pixel, no word is under 11 px. */
export function screenHand(perMm: number, lengths: LengthStyle): Hand {
  const least = 11.2 * PX;
  // A chair is worth drawing on a screen while the number of a narrow table (760 mm) still stands between its chairs.
  const detail = perMm >= 1 / 130 ? "full" : perMm * 760 >= least * 0.8 ? "plain" : "figures";
  return {
    fine: 0.75 * PX, mid: 1.1 * PX, heavy: 1.8 * PX, leaf: 1.3 * PX, grain: 0.55 * PX,
    room: 15 * PX, number: 12.5 * PX, label: least, note: least, medallion: 8.4 * PX, spacing: detail === "full" ? 1.2 : 0.95, detail, lengths,
  };
}
