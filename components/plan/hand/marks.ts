import type { Drawing, Mark, Paper } from "@/lib/drawing";
import { frameOf, intoFrame, outOfFrame, roomNow, stringsOf, type DimensionString, type Hint } from "@/lib/hand";
import { turn } from "@/lib/geometry";
import { isRound, type Item, type Scene } from "@/lib/layout";
import { formatLength, lengthStyle } from "@/lib/measure";
import type { Venue } from "@/lib/venue";

/** Where a point of a room falls on a drawing. */
export function onPaper(drawing: Pick<Drawing, "origin" | "origins" | "perMetre">, room: string, [x, y]: readonly [number, number]): Paper {
  const [ox, oy] = drawing.origins?.[room] ?? drawing.origin, k = drawing.perMetre / 1000;
  return [ox + x * k, oy + y * k];
}
/** The point of a room that lies under a point of the paper. */
export function offPaper(drawing: Pick<Drawing, "origin" | "origins" | "perMetre">, room: string, [x, y]: Paper): readonly [number, number] {
  const [ox, oy] = drawing.origins?.[room] ?? drawing.origin, k = drawing.perMetre / 1000;
  return [(x - ox) / k, (y - oy) / k];
}

type At = { readonly drawing: Drawing; readonly venue: Venue; readonly item: Item };
/** The width of one CSS pixel at 96 to the inch, mm: what the screen's plans are drawn in. */
const PX = 25.4 / 96;

/** The outline of a chosen piece with a little air about it, firm and in the accent. */
export function outlineMarks({ drawing, item }: At, held: boolean): readonly Mark[] {
  const air = 3 * PX, k = drawing.perMetre / 1000, at = onPaper(drawing, item.room, item.at);
  const stroke = { ink: "accent", weight: 2.5 * PX, ...(held ? { dash: [6 * PX, 3 * PX] } : {}) } as const;
  if (isRound(item.shape)) return [{ kind: "circle", at, radius: (item.shape.diameter / 2) * k + air, stroke }];
  const w = (item.shape.width / 2) * k + air, d = (item.shape.depth / 2) * k + air;
  const corner = (x: number, y: number): Paper => { const [dx, dy] = turn([x, y], item.angle); return [at[0] + dx, at[1] + dy]; };
  const [p, q, r, s] = [corner(-w, -d), corner(w, -d), corner(w, d), corner(-w, d)];
  return [{ kind: "path", steps: [{ op: "M", to: p }, { op: "L", to: q }, { op: "L", to: r }, { op: "L", to: s }, { op: "Z" }], stroke }];
}

/** A chair of the rows as a picture of its own, for the plan draws a room's rows in one go; `gone`: the place that it was taken from. */
export function chairMarks({ drawing, item }: At, gone = false): readonly Mark[] {
  if (isRound(item.shape)) return [];
  const k = drawing.perMetre / 1000, at = onPaper(drawing, item.room, item.at), seat = item.seats[0], angle = seat ? seat.facing - 90 : item.angle;
  const w = (item.shape.width / 2) * k, d = (item.shape.depth / 2) * k;
  const corner = (x: number, y: number): Paper => { const [dx, dy] = turn([x, y], angle); return [at[0] + dx, at[1] + dy]; };
  const [p, q, r, s] = [corner(-w, -d), corner(w, -d), corner(w, d), corner(-w, d)];
  const stroke = gone ? ({ ink: "line", weight: PX, dash: [3 * PX, 2 * PX] } as const) : ({ ink: "g-chair", weight: PX } as const);
  const body: Mark = { kind: "path", steps: [{ op: "M", to: p }, { op: "L", to: q }, { op: "L", to: r }, { op: "L", to: s }, { op: "Z" }], fill: gone ? "floor" : "v-chair", stroke };
  return gone ? [body] : [body, { kind: "path", steps: [{ op: "M", to: p }, { op: "L", to: q }], stroke: { ink: "g-chair", weight: 3 * PX } }];
}

export type Line = { readonly from: Paper; readonly to: Paper; readonly text: string; readonly kind: DimensionString["to"] | Hint["kind"] };

/** Dimension strings of a piece on paper: to two walls, and to its nearest neighbour. */
export function lineOf(at: At, s: DimensionString): Line {
  const { drawing, venue, item } = at;
  return { from: onPaper(drawing, item.room, s.from), to: onPaper(drawing, item.room, s.end), text: formatLength(s.mm, lengthStyle(venue)), kind: s.to };
}

export function stringLines(at: At, { drapes, items }: Pick<Scene, "drapes" | "items">): readonly Line[] {
  const room = at.venue.rooms.find((r) => r.id === at.item.room);
  return room ? stringsOf(roomNow(at.venue, drapes, room, at.item.at), at.item, items).map((s) => lineOf(at, s)) : [];
}

/** A line with a tick at 45 degrees at either end and its figure on a plain ground in the middle. */
export function lineMarks({ from, to, text, kind }: Line): readonly Mark[] {
  const tick = 3.5 * PX, long = Math.hypot(to[0] - from[0], to[1] - from[1]);
  const dash = kind === "axis" || kind === "line" ? { dash: [4 * PX, 3 * PX] } : {};
  const ticks: readonly Mark[] = text === "" ? [] : [from, to].map(([x, y]) => ({
    kind: "path", steps: [{ op: "M", to: [x - tick, y + tick] }, { op: "L", to: [x + tick, y - tick] }], stroke: { ink: "accent", weight: 1.5 * PX },
  }));
  const size = 12 * PX, half = (text.length * size * 0.58) / 2, mid: Paper = [(from[0] + to[0]) / 2, (from[1] + to[1]) / 2];
  // Where the line is shorter than its figure, the figure stands beside it.
  const beside = long < 2 * half + 6 * PX, level = Math.abs(to[0] - from[0]) > Math.abs(to[1] - from[1]);
  const at: Paper = !beside ? mid : level ? [mid[0], mid[1] - 9 * PX] : [mid[0] + half + 7 * PX, mid[1]];
  const [x, y] = [at[0] - half - 2 * PX, at[1] - size * 0.62];
  const ground: Mark = { kind: "path", fill: "leaf", steps: [{ op: "M", to: [x, y] }, { op: "L", to: [x + 2 * half + 4 * PX, y] }, { op: "L", to: [x + 2 * half + 4 * PX, y + size * 1.24] }, { op: "L", to: [x, y + size * 1.24] }, { op: "Z" }] };
  return [
    { kind: "path", steps: [{ op: "M", to: from }, { op: "L", to }], stroke: { ink: "accent", weight: (kind === "axis" || kind === "line" ? 1 : 1.25) * PX, ...dash } },
    ...ticks,
    ...(text === "" ? [] : [ground, { kind: "text", at: [at[0], at[1] + size * 0.36], text, size, face: "sans", weight: "medium", anchor: "middle", ink: "accent" } satisfies Mark]),
  ];
}

/** The chosen piece drawn over its plan: outline, and how far it stands from what is about it. */
export function pickedMarks(at: At, scene: Pick<Scene, "drapes" | "items">, held: boolean): readonly Mark[] {
  return [{ kind: "group", role: "decoration", marks: [...outlineMarks(at, held), ...stringLines(at, scene).flatMap(lineMarks)] }];
}

/** A step along the axes of the room that a piece stands in. */
export function stepped(venue: Venue, item: Item, [right, down]: readonly [number, number]): Item["at"] {
  const room = venue.rooms.find((r) => r.id === item.room);
  if (!room) return item.at;
  const f = frameOf(room), [x, y] = intoFrame(f, item.at);
  const [px, py] = outOfFrame(f, [x + right, y + down]);
  return [Math.round(px), Math.round(py)];
}

/** Whether something that came from elsewhere is a drawing. */
export const isDrawing = (x: unknown): x is Drawing => typeof x === "object" && x !== null && "marks" in x && "perMetre" in x && "origin" in x;
