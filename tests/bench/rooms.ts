import { rectangle, subtract, union, type Polygon, type Region } from "../../lib/geometry";
import type { Family, SeatingAsk, SeatingSpace } from "../../lib/engine/seating";

/** A round of 5 ft with the gap of 54 in between tables; to a wall half of that, so that each table asks for a disc of one pitch. */
export const DIAMETER = 1524, GAP = 1372, PITCH = DIAMETER + GAP;

export const round: Family = { stock: "round", name: "Round", shape: { diameter: DIAMETER }, count: 900, places: { comfort: 8, most: 8 }, ends: false, joins: false };
export const long: Family = { stock: "long", name: "Long", shape: { width: 1829, depth: 762 }, count: 900, places: { comfort: 6, most: 6 }, ends: false, joins: true };

export const askFor = (families: readonly Family[], more: Partial<SeatingAsk> = {}): SeatingAsk => ({
  places: "most", families, gaps: { tableGap: GAP, wallGap: GAP / 2 }, perTable: "comfort", tables: "any", form: "any",
  chair: { width: 450, depth: 500 }, wheelchairs: 0, chairsLeft: 99_999, ...more,
});

export const spaceOf = (outline: Polygon, more: { readonly solids?: readonly Polygon[]; readonly floors?: readonly Polygon[] } = {}): SeatingSpace => {
  const floor: Region = union([outline]);
  return { room: "hall", floor: more.floors ? subtract(floor, more.floors) : floor, solids: more.solids ?? [], zones: [], axis: 0 };
};

export const square = (side: number): Polygon => [[0, 0], [side, 0], [side, side], [0, side]];
const box = (w: number, h: number): Polygon => [[0, 0], [w, 0], [w, h], [0, h]];
const post = (x: number, y: number): Polygon => rectangle([x, y], 300, 300, 0);

/** Rooms as they are found, each with the most tables that hours of other searches would know: see `known`. */
export const rooms: readonly { readonly name: string; readonly space: SeatingSpace }[] = [
  { name: "oblong 16.2 x 9.4 m", space: spaceOf(box(16_200, 9_400)) },
  { name: "oblong 24 x 11 m", space: spaceOf(box(24_000, 11_000)) },
  { name: "oblong 31 x 17.5 m", space: spaceOf(box(31_000, 17_500)) },
  { name: "L of 18 x 14 m", space: spaceOf([[0, 0], [18_000, 0], [18_000, 7_400], [9_200, 7_400], [9_200, 14_000], [0, 14_000]]) },
  { name: "L of 26 x 20 m", space: spaceOf([[0, 0], [26_000, 0], [26_000, 10_500], [12_500, 10_500], [12_500, 20_000], [0, 20_000]]) },
  { name: "T of 20 x 15 m", space: spaceOf([[0, 0], [20_000, 0], [20_000, 7_000], [14_000, 7_000], [14_000, 15_000], [6_000, 15_000], [6_000, 7_000], [0, 7_000]]) },
  { name: "six columns in 19.5 x 12.2 m", space: spaceOf(box(19_500, 12_200), { solids: [post(4_900, 3_700), post(9_750, 3_700), post(14_600, 3_700), post(4_900, 8_500), post(9_750, 8_500), post(14_600, 8_500)] }) },
  { name: "four columns in 14 x 14 m", space: spaceOf(square(14_000), { solids: [post(4_500, 4_500), post(9_500, 4_500), post(4_500, 9_500), post(9_500, 9_500)] }) },
  { name: "slanted wall, 17 x 12 m", space: spaceOf([[0, 0], [17_000, 0], [13_500, 12_000], [0, 12_000]]) },
  { name: "two slanted walls, 22 x 13 m", space: spaceOf([[2_500, 0], [22_000, 1_500], [19_500, 13_000], [0, 11_000]]) },
  { name: "dance floor of 5.4 m in 16 x 16 m", space: spaceOf(square(16_000), { floors: [rectangle([8_000, 8_000], 5_400, 5_400, 0)] }) },
  { name: "dance floor of 6.3 x 4.5 m in 22 x 13 m", space: spaceOf(box(22_000, 13_000), { floors: [rectangle([11_000, 6_500], 6_300, 4_500, 0)] }) },
  { name: "octagon of 15 m", space: spaceOf([[4_400, 0], [10_600, 0], [15_000, 4_400], [15_000, 10_600], [10_600, 15_000], [4_400, 15_000], [0, 10_600], [0, 4_400]]) },
];
