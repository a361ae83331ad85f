import { seeded } from "../../../../lib/base";
import { isSimple, turn, union, type Point, type Polygon } from "../../../../lib/geometry";
import type { Family, SeatingAsk, SeatingSpace } from "../../../../lib/engine/seating";

export const rectangleAt = (x: number, y: number, w: number, h: number): Polygon => [[x, y], [x + w, y], [x + w, y + h], [x, y + h]];
export const ROUND: Family = { stock: "round-5ft", name: "Round", shape: { diameter: 1524 }, count: 99, places: { comfort: 8, most: 10 }, ends: false, joins: false };
export const BIG_ROUND: Family = { ...ROUND, stock: "round-6ft", shape: { diameter: 1829 }, count: 10, places: { comfort: 10, most: 12 } };
export const LONG: Family = { stock: "long-6ft", name: "Long", shape: { width: 1829, depth: 762 }, count: 99, places: { comfort: 6, most: 8 }, ends: true, joins: true };
export const LONGER: Family = { ...LONG, stock: "long-8ft", shape: { width: 2438, depth: 762 }, places: { comfort: 8, most: 10 }, ends: false, count: 9 };
export const ASK: SeatingAsk = {
  places: 80, families: [ROUND, LONG], gaps: { tableGap: 1524, wallGap: 1067 }, perTable: "comfort", tables: "any", form: "any",
  chair: { width: 450, depth: 500 }, wheelchairs: 0, chairsLeft: 999,
};
export const spaceOf = (outline: Polygon, more: Partial<SeatingSpace> = {}): SeatingSpace =>
  ({ room: "hall", floor: union([outline]), solids: [], zones: [], axis: 0, ...more });

const FORMS = ["any", "any", "any", "grid", "u", "e", "t", "hollow-square", "spine"] as const;

/** A room of one of five kinds, perhaps turned, with columns and a kept floor, and what is asked of it; null where the outline crosses itself. */
export function randomCase(seed: number): { readonly space: SeatingSpace; readonly ask: SeatingAsk } | null {
  const random = seeded(seed * 7919);
  const whole = (a: number, b: number): number => Math.round(a + random() * (b - a));
  const w = whole(8_000, 24_000), h = whole(7_000, 16_000), kind = whole(0, 4);
  const x = whole(w * 0.4, w * 0.7), y = whole(h * 0.4, h * 0.7);
  const outline = (): Polygon => {
    if (kind === 0) return rectangleAt(0, 0, w, h);
    if (kind === 1) return [[0, 0], [w, 0], [w, y], [x, y], [x, h], [0, h]];
    if (kind === 2) return [[0, 0], [w, whole(0, 2_000)], [w - whole(0, 3_000), h], [0, h - whole(0, 1_500)]];
    if (kind === 3) return [[0, 0], [w, 0], [w, y], [x, y], [x, h], [w - x, h], [w - x, y], [0, y]];
    return Array.from({ length: 8 }, (_, i): Point => { const q = turn([(w / 2) * (0.8 + 0.4 * random()), 0], i * 45); return [q[0], (q[1] * h) / w]; });
  };
  const angle = random() < 0.4 ? whole(1, 89) : 0;
  const room = outline().map((p): Point => { const q = turn(p, angle); return [Math.round(q[0]), Math.round(q[1])]; });
  if (!isSimple(room)) return null;
  const cx = Math.round(room.reduce((s, p) => s + p[0], 0) / room.length), cy = Math.round(room.reduce((s, p) => s + p[1], 0) / room.length);
  const about = (): Point => [Math.round(cx + (random() - 0.5) * w * 0.6), Math.round(cy + (random() - 0.5) * h * 0.6)];
  const solids = Array.from({ length: whole(0, 3) }, () => { const [a, b] = about(), s = whole(150, 500); return rectangleAt(a, b, s, s); });
  const zones = random() < 0.5 ? [{ polygon: rectangleAt(...about(), whole(1_000, 4_000), whole(1_000, 4_000)), tableClear: whole(0, 483) }] : [];
  const mirror = random() < 0.4 ? { mirror: { at: [cx, cy] as const, angle: 90 + angle } } : {};
  return {
    space: spaceOf(room, { solids, zones, axis: angle, ...mirror }),
    ask: {
      ...ASK, places: random() < 0.4 ? "most" : whole(20, 140),
      families: random() < 0.5 ? [ROUND, LONG] : [{ ...ROUND, count: 6 }, BIG_ROUND, LONGER, { ...LONG, count: 8 }],
      gaps: random() < 0.5 ? ASK.gaps : { tableGap: 1372, wallGap: 762 },
      perTable: random() < 0.5 ? "comfort" : "most", wheelchairs: random() < 0.3 ? 2 : 0, form: FORMS[whole(0, 8)] ?? "any",
      chairsLeft: random() < 0.2 ? 50 : 999,
    },
  };
}
