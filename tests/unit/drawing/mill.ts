import { tidewheel } from "../../../lib/demo/tidewheel";
import type { Item, Layout } from "../../../lib/layout";
import { along, layout, piece, round, scene, standing, venue } from "./kit";

export const mill = venue(tidewheel);

const hall = "grain-floor";
const t = (n: number, x: number, y: number, wheelchair?: number): Item =>
  round(`table-${n}`, n, [x, y], { room: hall, diameter: 1680, stock: "round", places: 8, ...(wheelchair === undefined ? {} : { wheelchair }) });
const oak = (id: string, n: number, x: number, ends: -1 | 1): Item => piece({
  id, kind: "table", role: "dining", label: `Table ${n}`, room: hall, from: { stock: "oak" }, shape: { width: 2400, depth: 950 }, at: [x, 4700],
  seats: along([x, 4700], [2400, 950], { angle: 0, places: 4, ends }),
});

/** The meal: seven rounds about a spine of oak, the couple at the north wall. 92 places, one of them for a wheelchair. */
export function millMeal(): Layout {
  const items: readonly Item[] = [
    t(1, 5140, 7550), t(2, 1960, 7550), t(3, 1960, 1850), t(4, 5140, 1850), t(5, 11060, 1850), t(6, 14240, 1850), t(7, 11060, 7550, 4),
    oak("table-8a", 8, 3600, -1), oak("table-8b", 8, 6000, 1), oak("table-9a", 9, 10200, -1), oak("table-9b", 9, 12600, 1),
    piece({
      id: "top", kind: "table", role: "top", label: "Couple", room: hall, from: { stock: "small" }, shape: { width: 1220, depth: 760 }, at: [8100, 1700],
      seats: along([8100, 1700], [1220, 760], { angle: 0, places: 2, sides: [-1] }),
    }),
    ...standing(mill, [hall, "wheel-room"], { "flour-chest": "cake" }).map((i) => (i.role === "cake" ? { ...i, label: "Cake" } : i)),
    piece({ id: "plan", kind: "easel", role: "seating-plan", label: "Seating plan", room: hall, shape: { width: 620, depth: 420 }, at: [6820, 9130] }),
    piece({ id: "bar", kind: "bar", label: "Bar", room: "wheel-room", from: { stock: "bar-unit", count: 2 }, shape: { width: 4800, depth: 700 }, at: [20800, 2750] }),
    piece({ id: "floor", kind: "dance-floor", label: "Dance floor", room: "wheel-room", from: { stock: "panel", count: 20 }, shape: { width: 4500, depth: 3600 }, at: [20500, 5920] }),
    piece({ id: "dj", kind: "dj", label: "DJ", room: "wheel-room", shape: { width: 1600, depth: 560 }, at: [23090, 5920], angle: 90 }),
    piece({ id: "high-1", kind: "cocktail-table", label: "High table", room: "wheel-room", from: { stock: "high" }, shape: { diameter: 600 }, at: [23560, 3000] }),
    piece({ id: "buffet-1", kind: "table", role: "buffet", label: "Buffet", room: "millers-parlour", from: { stock: "long", count: 2 }, shape: { width: 3660, depth: 760 }, at: [3300, 12500] }),
    piece({ id: "welcome", kind: "table", role: "welcome", label: "Welcome", room: "lade-passage", from: { stock: "narrow" }, shape: { width: 1500, depth: 450 }, at: [8975, 13300], angle: 90 }),
    piece({ id: "cards", kind: "table", role: "cards", also: ["guest-book"], label: "Cards, book", room: "lade-passage", from: { stock: "narrow" }, shape: { width: 1500, depth: 450 }, at: [8975, 11150], angle: 90 }),
    ...[11_000, 12_600, 15_900, 17_500].map((x, i) => piece({
      id: `terrace-${i}`, kind: "cocktail-table", label: "High table", room: "sluice-terrace", from: { stock: "high" }, shape: { diameter: 600 }, at: [x, 12600],
    })),
  ];
  return layout("A, rounds about a spine", [scene("meal", "Meal", [hall, "wheel-room", "millers-parlour", "lade-passage", "sluice-terrace"], items)]);
}

/** The ceremony: rows of chairs in the same hall, ten either side of the aisle, the arch before the feature wall. */
export function millCeremony(): Layout {
  const chairs: Item[] = [];
  for (let row = 0; row < 6; row++) for (let k = 0; k < 14; k++) {
    const x = 8100 + (k < 7 ? -1 : 1) * (700 + ((k < 7 ? 6 - k : k - 7) + 0.5) * 500);
    const at: readonly [number, number] = [x, 3600 + row * 950];
    chairs.push(piece({
      id: `chair-${row + 1}-${k + 1}`, kind: "chair", label: "Chair", room: hall, from: { stock: "chair" }, shape: { width: 450, depth: 500 }, at, angle: 180,
      seats: [{ x: at[0], y: at[1], facing: 270, place: "chair" }],
    }));
  }
  const items = [
    ...chairs, piece({ id: "arch", kind: "arch", label: "Willow arch", room: hall, from: { stock: "willow-arch" }, shape: { width: 1800, depth: 600 }, at: [8100, 500] }),
    ...standing(mill, [hall, "wheel-room"]),
  ];
  return layout("A, rounds about a spine", [scene("ceremony", "Ceremony", [hall, "lade-passage"], items)]);
}
