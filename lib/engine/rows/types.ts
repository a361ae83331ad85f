import type { Point, Polygon, Region } from "../../geometry";
import type { Item } from "../../layout";
import type { Gate } from "../../venue";

export type Stretch = { readonly from: Point; readonly to: Point };

/** One room as the rows find it. */
export type RowSpace = {
  readonly room: string;
  /** The floor; its boundary is the walls. */
  readonly floor: Region;
  /** Columns, standing pieces and whatever else stands there. */
  readonly solids: readonly Polygon[];
  /** Those of them that are pieces and no part of the house: rows look better past them than round them. */
  readonly pieces?: readonly Polygon[];
  /** Floor that chairs keep out of: door floors, keep-clear and the like. */
  readonly zones: readonly Polygon[];
  /** The loudest axis of the room, degrees. */
  readonly axis: number;
  readonly gates: readonly Gate[];
  /** Stretches of wall that make a good backdrop. */
  readonly features: readonly Stretch[];
  readonly windows: readonly Stretch[];
};

export type RowAsk = {
  /** Everyone to be seated, wheelchair users included. */
  readonly people: number;
  readonly wheelchairs: number;
  readonly chair: { readonly id: string; readonly width: number; readonly depth: number };
  /** Back to back of rows, mm; raised where the row formula asks for more. */
  readonly rowPitch: number;
  readonly aisle: "centre" | "sides" | "none";
  readonly curve: boolean;
  /** Chairs that the venue still has. */
  readonly chairsLeft: number;
  /** Least depth before the first row, mm; 1829 (6 ft, rental trade, common practice) unless a profile asks more. */
  readonly frontDepth?: number;
  readonly djSpot?: Point;
  /** Only full aisles, lanes at both ends and the usual gaps. */
  readonly comfortOnly?: boolean;
};

export type RowPlan = {
  readonly items: readonly Item[];
  readonly places: number;
  readonly wheelchairs: number;
  /** Where the couple stand and the way they look (degrees clockwise from +x), and the floor kept for them. */
  readonly front: { readonly at: Point; readonly facing: number; readonly zone: Polygon };
  readonly aisle: Polygon | null;
  readonly aisleWidth: number;
  readonly rows: number;
  readonly pitch: number;
  /** The floor that the chairs take as one block. */
  readonly field: Polygon;
  /** What an eye has against the plan: as if the farthest guest sat so many millimetres farther off than he does. */
  readonly cost: number;
  readonly title: string;
};
