import { planVoice, planWords } from "../../words/plan";
import { add, bearing, boxOf, distance, scale, sinCos, type Point } from "../../geometry";
import { isRound, type Item } from "../../layout";
import { formatLength, formatSize } from "../../measure";
import type { Room, Venue } from "../../venue";
import type { Ink, Mark, Paper, Veneer } from "../display";
import { capHeight, textWidth, type Type } from "../metrics";
import { closed, line, placedSteps } from "../paths";
import { roomSize } from "./describe";
import type { Ground, Rect } from "./ground";
import { toPaper, type Frame, type Hand } from "./hand";
import { beside, blockSize, cartouche, firstFree, halves, setBlock, setTurned, upright, type Line, type Spot } from "./lettering";
import type { Run } from "./numbers";
import type { Opening } from "./openings";
import { blankOf, panelsOf } from "./pieces";
import { veneerOf } from "./veneer";

export type Desk = { readonly frame: Frame; readonly hand: Hand; readonly ground: Ground; readonly venue: Venue };

const note = (hand: Hand): Type => ({ size: hand.note, face: "serif", italic: true });
const label = (hand: Hand): Type => ({ size: hand.label, face: "sans" });

/** The number of a table on a plain disc of its own tint; the figure stands upright whatever the table's turn. */
export function medallion(run: Run, desk: Desk): readonly Mark[] {
  const { frame, hand, venue, ground } = desk;
  const item = run.items[0];
  if (!item) return [];
  const veneer = veneerOf(item, venue) ?? "round";
  const at = toPaper(frame, run.at);
  const blank = blankOf(item, frame);
  const room = "radius" in blank ? blank.radius : Math.min(blank.width, blank.depth) / 2;
  const type: Type = { size: hand.number, face: "serif", weight: "bold" };
  if (hand.detail === "figures") return placesFigure(run, desk);
  // On a small piece the figure shrinks to the least size, and stands on plain tint without a ring if the ring would meet the edge.
  const tight = room < hand.medallion * 1.35;
  const size = tight ? Math.max(hand.note, Math.min(hand.number, room * 1.1)) : hand.number;
  const set: Type = { ...type, size };
  const wide = textWidth(run.number, set) / 2, tall = (size * capHeight(set)) / 2;
  const need = Math.sqrt(wide * wide + tall * tall) + 0.3;
  const radius = Math.max(need, Math.min(hand.medallion, room * 0.68));
  ground.takeRect({ x: at[0] - Math.max(radius, wide), y: at[1] - radius, width: 2 * Math.max(radius, wide), height: 2 * radius });
  const figure = setTurned({ text: run.number, type: set, ink: `t-${veneer}` }, at, 0);
  if (radius > room - 0.45) return [cartouche(at, { width: 2 * wide + 0.7, height: 2 * tall + 0.8 }, 0, `v-${veneer}`), figure];
  return [{ kind: "circle", at, radius, fill: `v-${veneer}`, stroke: { ink: "ink", weight: hand.fine } }, figure];
}

/** Far off a table shows how many sit at it, where the figure fits on it. */
function placesFigure(run: Run, { frame, hand, venue, ground }: Desk): readonly Mark[] {
  return run.items.flatMap((item): readonly Mark[] => {
    const blank = blankOf(item, frame);
    const text = String(item.seats.length), type: Type = { size: hand.note, face: "sans" };
    const wide = textWidth(text, type);
    if (item.seats.length === 0 || Math.min("radius" in blank ? 1.6 * blank.radius : Math.min(blank.width, blank.depth)) < Math.max(wide, hand.note) + 0.4) return [];
    const at = toPaper(frame, item.at);
    ground.takeRect({ x: at[0] - wide / 2, y: at[1] - hand.note / 2, width: wide, height: hand.note });
    return [setTurned({ text, type, ink: `t-${veneerOf(item, venue) ?? "round"}` }, at, 0)];
  });
}

/** Words on the piece itself, where the cartouche leaves grain on both long sides; null where they do not fit. */
export function wordsOn(item: Item, desk: Desk): readonly Mark[] | null {
  const { frame, hand, venue } = desk;
  const veneer = veneerOf(item, venue);
  if (veneer === null || item.role === "cake") return null;
  if (veneer === "floor") return floorWords(item, veneer, desk);
  const blank = blankOf(item, frame);
  const type = label(hand);
  const [long, short, turn] = "radius" in blank ? [blank.radius * 1.7, blank.radius * 1.2, 0]
    : blank.width >= blank.depth ? [blank.width, blank.depth, item.angle] : [blank.depth, blank.width, item.angle + 90];
  const tall = type.size * capHeight(type) + 1.1;
  const plain = item.label;
  const wide = textWidth(plain, type) + 1.5;
  if (short < tall + 0.8) return null;
  const at = toPaper(frame, item.at);
  const angle = "radius" in blank ? 0 : upright(turn);
  if (wide <= long - 0.5) return [cartouche(at, { width: wide, height: tall }, angle, `v-${veneer}`), setTurned({ text: plain, type, ink: `t-${veneer}` }, at, angle)];
  const two = halves(plain, type);
  const wide2 = Math.max(...two.map((t) => textWidth(t, type))) + 1.5, tall2 = tall + type.size * 1.2;
  if (two.length < 2 || wide2 > long - 0.8 || short < tall2 + 0.8 || angle !== 0) return null;
  const size = { width: wide2, height: tall2 };
  const lines: readonly Line[] = two.map((text) => ({ text, type, ink: `t-${veneer}` }));
  const block = blockSize(lines);
  return [cartouche(at, size, 0, `v-${veneer}`), ...setBlock(lines, { x: at[0] - block.width / 2, y: at[1] - (type.size * (capHeight(type) + 1.2)) / 2, ...block }, "middle")];
}

function floorWords(item: Item, veneer: Veneer, { frame, hand, venue }: Desk): readonly Mark[] | null {
  if (isRound(item.shape)) return null;
  const ink: Ink = `t-${veneer}`;
  const { across, down } = panelsOf(item, venue);
  const name: Line = { text: item.label, type: { size: hand.room * 0.8, face: "serif", weight: "medium" }, ink };
  const size: Line = { text: planVoice(hand.lengths.locale)("{n} panels, {size}", { n: across * down, size: formatSize(item.shape.width, item.shape.depth, hand.lengths) }), type: { size: hand.note, face: "sans" }, ink };
  const blank = blankOf(item, frame);
  const room = "radius" in blank ? { width: 0, depth: 0 } : blank;
  const { sin, cos } = sinCos(item.angle);
  const c = Math.abs(cos), s = Math.abs(sin);
  // The words stand upright: their box must lie within the floor, however that is turned.
  const holds = (w: number, h: number): boolean => w * c + h * s <= room.width && w * s + h * c <= room.depth;
  const at = toPaper(frame, item.at);
  for (const lines of [[name, size], [name], [{ ...name, type: { ...name.type, size: hand.label } }]]) {
    const b = blockSize(lines);
    if (!holds(b.width + 3, b.height + 2.4)) continue;
    const rect: Rect = { x: at[0] - b.width / 2, y: at[1] - b.height / 2 + 0.3, ...b };
    return [cartouche(at, { width: b.width + 2.4, height: b.height + 2 }, 0, `v-${veneer}`), ...setBlock(lines, rect, "middle")];
  }
  return null;
}

/** The box of a piece and of its seats on the paper. */
export function pieceRect(corners: readonly Point[], frame: Frame): Rect {
  const b = boxOf(corners.map((p) => toPaper(frame, p)));
  return { x: b.minX, y: b.minY, width: b.maxX - b.minX, height: b.maxY - b.minY };
}

/** Words beside a piece in clear floor, else by a leader; null where neither has room: the list has them. */
export function wordsBeside(text: string, { target, tight, room, desk }: {
  readonly target: Rect; readonly tight: Rect; readonly room: number; readonly desk: Desk;
}): readonly Mark[] | null {
  const { hand, ground } = desk;
  const type = note(hand);
  const shapes = [...new Set([[text], halves(text, type)].map((l) => l.join("\n")))].map((l) => l.split("\n").map((t): Line => ({ text: t, type, ink: "ink-2" })));
  if ((shapes[0]?.[0] ? textWidth(text, type) : 0) > 15) shapes.reverse();
  for (const near of [tight, target]) for (const lines of shapes) {
    const spot = firstFree(ground, beside(near, blockSize(lines), 3.6), room);
    if (spot) return setBlock(lines, spot.at, spot.anchor);
  }
  if (hand.detail !== "full") return null;
  for (const lines of shapes) {
    const spot = firstFree(ground, clearOf(tight, beside(target, blockSize(lines), 11), ground), room);
    if (!spot) continue;
    const [a, b] = leaderEnds(tight, spot.at);
    ground.takeLine(a, b);
    return [{ kind: "path", steps: line(a, b), stroke: { ink: "ink-3", weight: hand.fine } }, ...setBlock(lines, spot.at, spot.anchor)];
  }
  return null;
}

/** The spots whose leader would run over clear floor only: it crosses no word, no chair, no edge. */
function* clearOf(target: Rect, spots: Iterable<Spot>, ground: Ground): Generator<Spot> {
  for (const spot of spots) {
    const [a, b] = leaderEnds(target, spot.at);
    const long = distance(a, b);
    let free = true;
    for (let d = 0.7; d < long && free; d += 0.4) {
      const p: Paper = [a[0] + ((b[0] - a[0]) * d) / long, a[1] + ((b[1] - a[1]) * d) / long];
      free = ground.free({ x: p[0] - 0.2, y: p[1] - 0.2, width: 0.4, height: 0.4 });
    }
    if (free) yield spot;
  }
}

function leaderEnds(target: Rect, words: Rect): readonly [Paper, Paper] {
  const near = (r: Rect, p: Paper): Paper => [Math.max(r.x, Math.min(r.x + r.width, p[0])), Math.max(r.y, Math.min(r.y + r.height, p[1]))];
  const end = near({ x: words.x - 0.6, y: words.y - 0.6, width: words.width + 1.2, height: words.height + 1.2 }, [target.x + target.width / 2, target.y + target.height / 2]);
  return [near(target, end), end];
}

/** A room's name with its size beneath, in the middle of its largest clear floor; in a crowded room outside by its wall. A room that the part of the day does not use says so: what stands in it is not listed. */
export function roomName(room: Room, index: number, { frame, hand, ground }: Desk, { outside, used }: { readonly outside: boolean; readonly used: boolean }): readonly Mark[] {
  const b = boxOf(room.outline.map((p) => toPaper(frame, p)));
  const [w, d] = roomSize(room);
  const say = planVoice(hand.lengths.locale);
  const size: Line = { text: [formatSize(w, d, hand.lengths), ...(room.outdoor ? [say("outdoors")] : []), ...(used ? [] : [say("not in use")])].join(", "), type: { size: hand.note * 1.04, face: "sans" }, ink: "ink-2" };
  const least = hand.detail === "full" ? hand.note : hand.note;
  const named = (k: number, two: boolean): readonly Line[] => {
    const type: Type = { size: Math.max(least, hand.room * k), face: "serif", weight: "medium" };
    return (two ? halves(room.name, type) : [room.name]).map((text) => ({ text, type, ink: "ink" }));
  };
  const small = hand.detail !== "full";
  const tries: readonly (readonly Line[])[] = [
    ...(small ? [] : [[...named(1, false), size], [...named(1, true), size]]), named(1, false), named(1, true), named(0.8, false), named(0.8, true),
  ];
  const centre: Paper = [(b.minX + b.maxX) / 2, (b.minY + b.maxY) / 2];
  const free = ground.survey({ x: b.minX, y: b.minY, width: b.maxX - b.minX, height: b.maxY - b.minY }, index);
  for (const lines of tries) {
    const block = blockSize(lines);
    for (const margin of lines === tries[0] ? [9, 7, 5, 3.5, 2.4, 1.5, 0.8] : [3, 1.5, 0.8]) {
      const spot = roomiest(free, { block, margin, b, centre });
      if (!spot) continue;
      ground.takeRect({ x: spot.x - 0.5, y: spot.y - 0.5, width: spot.width + 1, height: spot.height + 1 });
      return setBlock(lines, spot, "middle");
    }
  }
  if (!outside) return [];
  const lines: readonly Line[] = [...named(0.8, false), size];
  const wall: Rect = { x: b.minX, y: b.minY, width: b.maxX - b.minX, height: b.maxY - b.minY };
  const spot = firstFree(ground, beside(wall, blockSize(lines), 14), -1);
  return spot ? setBlock(lines, spot.at, spot.anchor) : [];
}

type Search = { readonly block: { readonly width: number; readonly height: number }; readonly margin: number; readonly b: { readonly minX: number; readonly minY: number; readonly maxX: number; readonly maxY: number }; readonly centre: Paper };
/** The free spot nearest to the centre, of those on a grid of 1 mm; of equals the upper, then the left. Rows near the centre are asked first. */
function roomiest(free: (r: Rect) => boolean, { block, margin, b, centre }: Search): Rect | null {
  const from = { x: b.minX + margin, y: b.minY + margin };
  const rows = Math.floor(b.maxY - from.y - block.height - margin + 1e-9), columns = Math.floor(b.maxX - from.x - block.width - margin + 1e-9);
  const mid = { x: centre[0] - block.width / 2, y: centre[1] - block.height / 2 };
  let best: Rect | null = null, least = Infinity;
  const ask = (i: number, j: number): void => {
    if (i < 0 || i > columns) return;
    const x = from.x + i, y = from.y + j, off = Math.hypot(x - mid.x, y - mid.y);
    if (off > least || (off === least && best !== null && (y > best.y || (y === best.y && x >= best.x)))) return;
    if (!free({ x: x - margin, y: y - margin, width: block.width + 2 * margin, height: block.height + 2 * margin })) return;
    best = { x, y, ...block };
    least = off;
  };
  const row = (j: number): void => {
    if (j < 0 || j > rows || Math.abs(from.y + j - mid.y) > least) return;
    const i = Math.floor(mid.x - from.x);
    for (let k = 0; k <= columns + Math.abs(i) + 1 && Math.abs(k - 1) <= least; k++) { ask(i - k, j); ask(i + 1 + k, j); }
  };
  const j = Math.floor(mid.y - from.y);
  for (let k = 0; k <= rows + Math.abs(j) + 1 && Math.abs(k - 1) <= least; k++) { row(j - k); row(j + 1 + k); }
  return best;
}

/** A solid arrow, the words and the clear width, beside every way out; outside the door where there is room. */
export function wayOut(o: Opening, { frame, hand, ground }: Desk): readonly Mark[] {
  const outward = scale(o.gate.inward, -1);
  const type: Type = { size: hand.note, face: "sans", weight: "bold" };
  const width = formatLength(o.gate.width, hand.lengths);
  const words = planWords(hand.lengths.locale).wayOut;
  const arrow = hand.note * 0.95, gap = 0.8;
  const first = textWidth(words, type), second = textWidth(width, { ...type, weight: "regular" });
  const block = { width: arrow + gap + first + gap + second, height: hand.note * (capHeight(type) + 0.2) };
  const face = scale(outward, o.depth);
  const past = scale(outward, o.depth + (o.swing === "out" || o.swing === "both" ? o.gate.leaf : 0) + Math.min(o.steps, 6) * 280);
  const corners = [add(o.gate.from, face), add(o.gate.to, face), add(o.gate.to, past), add(o.gate.from, past)];
  const inside = [o.gate.from, o.gate.to, add(o.gate.to, scale(o.gate.inward, 300)), add(o.gate.from, scale(o.gate.inward, 300))];
  const spot = firstFree(ground, beside(pieceRect(corners, frame), block, 5), -1) ?? firstFree(ground, beside(pieceRect(inside, frame), block, 6));
  if (!spot) return [];
  const { x, y } = spot.at;
  const base = y + hand.note * capHeight(type) + 0.1;
  const r = arrow / 2;
  const mid: Paper = [x + r, base - (hand.note * capHeight(type)) / 2];
  return [
    { kind: "path", steps: placedSteps(closed([[r, 0], [-r * 0.8, -r * 0.85], [-r * 0.8, r * 0.85]]), mid, bearing(outward)), fill: "ink" },
    { kind: "text", at: [x + arrow + gap, base], text: words, ...type, ink: "ink" },
    { kind: "text", at: [x + arrow + 2 * gap + first, base], text: width, ...type, weight: "regular", ink: "ink-2" },
  ];
}
