import type { Mark, Paper, Step } from "../display";

/** A face as the display list asks for it; the printer finds the files that hold its letters. */
export type Font = {
  readonly face: "serif" | "sans";
  readonly weight: "regular" | "medium" | "bold";
  readonly italic: boolean;
};

/** A pen: colour as #rrggbb, weight and dashes in points. */
export type Pen = {
  readonly color: string;
  readonly weight: number;
  readonly dash?: readonly number[];
  readonly cap?: "butt" | "round" | "square";
};

export type Words = {
  /** Where the baseline starts, ends or has its middle, by `anchor`. */
  readonly at: Paper;
  readonly text: string;
  /** Points. */
  readonly size: number;
  readonly font: Font;
  readonly anchor: "start" | "middle" | "end";
  /** Clockwise degrees about `at`. */
  readonly angle: number;
  readonly color: string;
};

/**
 * The little that a painter asks of a PDF page. Everything is in points (1 in = 72 pt), x to the right and y down from the
 * page's top left corner. The printer puts pdfkit behind it, a test puts a recorder.
 */
export type PdfSurface = {
  readonly path: (shape: {
    readonly steps: readonly Step[]; readonly fill?: string; readonly stroke?: Pen; readonly evenOdd?: boolean;
  }) => void;
  readonly circle: (shape: { readonly at: Paper; readonly radius: number; readonly fill?: string; readonly stroke?: Pen }) => void;
  /** What `body` paints is shown only inside the outline. */
  readonly clip: (steps: readonly Step[], body: () => void) => void;
  readonly text: (words: Words) => void;
  /** Shows what begins with this mark, if the surface was given it to keep: how many marks it showed, 0 where it knows none. */
  readonly known?: (first: Mark) => number;
};
