import type { Point, Polygon, Region } from "../../geometry";
import type { Item, ItemShape } from "../../layout";

/** Tables of one stock line that may be laid for dining. */
export type Family = {
  readonly stock: string;
  readonly name: string;
  readonly shape: ItemShape;
  readonly count: number;
  readonly places: { readonly comfort: number; readonly most: number };
  /** The places at the two ends are among them. */
  readonly ends: boolean;
  /** May be put end to end. */
  readonly joins: boolean;
};

export type Zone = { readonly polygon: Polygon; readonly tableClear: number };

/** The floor that dining tables may take, in the venue's frame, mm. */
export type SeatingSpace = {
  readonly room: string;
  readonly floor: Region;
  /** Columns and pieces: nothing overlaps them, and a place that faces one keeps the wall gap. */
  readonly solids: readonly Polygon[];
  /** Floor without tables or chairs; a seated table's edge keeps `tableClear` off it. */
  readonly zones: readonly Zone[];
  /** The room's main axis, degrees. */
  readonly axis: number;
  readonly mirror?: { readonly at: Point; readonly angle: number };
  readonly focus?: Point;
  /** Tables with places that stand already: the table gap holds against them. */
  readonly fixed?: readonly Item[];
  /** Points just inside the ways out: places must be able to walk there. */
  readonly exits?: readonly Point[];
};

export type TablesWanted = "rounds" | "long" | "mixed" | "any";
export type FormWanted = "grid" | "u" | "e" | "t" | "hollow-square" | "spine" | "diagonal" | "any";
export type ChairSize = { readonly width: number; readonly depth: number };

export type SeatingAsk = {
  readonly places: number | "most";
  readonly families: readonly Family[];
  readonly gaps: { readonly tableGap: number; readonly wallGap: number };
  readonly perTable: "comfort" | "most" | number;
  readonly tables: TablesWanted;
  readonly form: FormWanted;
  readonly chair: ChairSize;
  readonly wheelchairs: number;
  readonly chairsLeft: number;
};

export type SeatingOptions = {
  /** Steps of search, as a multiple of the usual; 0 for patterns alone. */
  readonly effort?: number;
  readonly seed?: number;
  /** Ids of tables that the caller's own check refuses. They are shifted or dropped. */
  readonly verify?: (items: readonly Item[]) => readonly string[];
};

export type TableKind = "rounds" | "long" | "mixed";
export type Seated = {
  readonly items: readonly Item[];
  readonly places: number;
  readonly wheelchairs: number;
  readonly form: string;
  readonly family: TableKind;
  /** Groups of tables that stand end to end, single tables counted too. */
  readonly runs: number;
  /** True to rows, columns or the line of symmetry; not merely wherever tables went. */
  readonly composed: boolean;
  /** Not composed, but brought into rows and columns that nearly all keep. */
  readonly lined: boolean;
};

/** Forms in which tables stand wherever they went. */
export const LOOSE_FORMS: ReadonlySet<string> = new Set(["free", "fullest", "lined"]);

/** Sides of a rectangle at angle 0: top (-y), right (+x), bottom (+y), left (-x). */
export type Sides = readonly [top: number, right: number, bottom: number, left: number];

/** A table with the places it is laid for, in the room's own frame. */
export type Laid = {
  readonly family: Family;
  readonly at: Point;
  readonly angle: number;
  /** Rounds: the places of the ring. Rectangles: 0. */
  readonly ring: number;
  /** Rectangles: places on each side. */
  readonly sides: Sides;
  /** Which group of joined tables it belongs to. */
  readonly group: number;
};
