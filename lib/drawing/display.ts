/**
 * The display list: what a drawing is, before any painter. Units are millimetres of paper, y down.
 * Both painters (SVG text, PDF) and the list view are made from this alone.
 */
export type Paper = readonly [x: number, y: number];

/** The ten veneers: a tint and a grain for each family of furniture. */
export const VENEERS = ["round", "long", "oak", "chair", "floor", "music", "bar", "buffet", "lounge", "display"] as const;
export type Veneer = (typeof VENEERS)[number];

/** Names of colours; a theme gives their values. v- tint, g- grain, t- words on it. */
export type Ink =
  | "ground" | "paper" | "leaf" | "floor" | "ink" | "ink-2" | "ink-3" | "line" | "rule" | "hush" | "wall" | "accent"
  | "accent-wash" | "on-accent" | `v-${Veneer}` | `g-${Veneer}` | `t-${Veneer}` | "none";

export type Stroke = { readonly ink: Ink; readonly weight: number; readonly dash?: readonly number[]; readonly cap?: "butt" | "round" | "square" };

/** Path steps in paper millimetres; arcs are given as cubic curves. */
export type Step =
  | { readonly op: "M" | "L"; readonly to: Paper }
  | { readonly op: "C"; readonly c1: Paper; readonly c2: Paper; readonly to: Paper }
  | { readonly op: "Z" };

/** Grain of a veneer: lines laid in the piece's own frame, clipped by its outline. */
export type Grain = { readonly veneer: Veneer; readonly origin: Paper; readonly angle: number; readonly spacing: number };

/** Layers that lie over the plan, each in one group of the drawing. */
export type Layer = "ways" | "sight" | "changes" | "findings" | "dimensions";

export type Mark =
  | { readonly kind: "path"; readonly steps: readonly Step[]; readonly fill?: Ink; readonly stroke?: Stroke; readonly evenOdd?: boolean }
  | { readonly kind: "circle"; readonly at: Paper; readonly radius: number; readonly fill?: Ink; readonly stroke?: Stroke }
  /** Children are shown only inside the outline. */
  | { readonly kind: "clip"; readonly steps: readonly Step[]; readonly marks: readonly Mark[] }
  | {
      readonly kind: "text"; readonly at: Paper; readonly text: string; readonly size: number; readonly face: "serif" | "sans";
      readonly weight?: "regular" | "medium" | "bold"; readonly italic?: boolean; readonly anchor?: "start" | "middle" | "end";
      /** Clockwise degrees about `at`. */
      readonly angle?: number; readonly ink: Ink;
    }
  /** A thing a reader can be told of: its role, its words, its place in the reading order is its place in the list. */
  | {
      readonly kind: "group"; readonly id?: string; readonly role?: "figure" | "piece" | "room" | "legend" | "note" | "decoration";
      readonly label?: string; readonly marks: readonly Mark[];
      /** What a page may hide and show by itself. */
      readonly layer?: Layer;
    };

/** A finished drawing of known size on paper. */
export type Drawing = {
  readonly width: number;
  readonly height: number;
  /** Paper millimetres a metre of the room takes: 10 at 1:100. 0 where the drawing has no scale. */
  readonly perMetre: number;
  /** Where the venue's frame origin falls on the paper. */
  readonly origin: Paper;
  /** The same for each room by its id, where levels are drawn beside one another; left out where `origin` holds for all. */
  readonly origins?: Readonly<Record<string, Paper>>;
  readonly title: string;
  /** The plan in words, for those who do not see it. */
  readonly words: readonly string[];
  readonly marks: readonly Mark[];
};
