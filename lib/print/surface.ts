import type PDFDocument from "pdfkit";
import type { Step } from "../drawing/display";
import type { PdfSurface, Pen, Words } from "../drawing/pdf";
import type { Face } from "./faces";
import { FEATURES, laidOut, type LaidOut } from "./glyphs";
import { runAdvance, shape } from "./runs";

type Doc = InstanceType<typeof PDFDocument>;

/** A hundredth of a point is 3.5 thousandths of a millimetre: finer than any printer, and a third off the file. */
const fine = (points: number): number => Math.round(points * 100) / 100;

function trace(doc: Doc, steps: readonly Step[]): void {
  for (const step of steps) {
    if (step.op === "M") doc.moveTo(fine(step.to[0]), fine(step.to[1]));
    else if (step.op === "L") doc.lineTo(fine(step.to[0]), fine(step.to[1]));
    else if (step.op === "C") doc.bezierCurveTo(fine(step.c1[0]), fine(step.c1[1]), fine(step.c2[0]), fine(step.c2[1]), fine(step.to[0]), fine(step.to[1]));
    else doc.closePath();
  }
}

/** A circle by four curves: the nearest that cubic curves come to it (off by 2.7 in ten thousand of its radius). */
const KAPPA = (4 * (Math.SQRT2 - 1)) / 3;
function ring([x, y]: readonly [number, number], r: number): readonly Step[] {
  const k = r * KAPPA;
  return [
    { op: "M", to: [x + r, y] }, { op: "C", c1: [x + r, y + k], c2: [x + k, y + r], to: [x, y + r] }, { op: "C", c1: [x - k, y + r], c2: [x - r, y + k], to: [x - r, y] },
    { op: "C", c1: [x - r, y - k], c2: [x - k, y - r], to: [x, y - r] }, { op: "C", c1: [x + k, y - r], c2: [x + r, y - k], to: [x + r, y] }, { op: "Z" },
  ];
}

/** What a page's pen and ink are now: what is the same already is not written again. */
type State = { fill: string; stroke: string; weight: number; cap: string; dash: string };
const FRESH: State = { fill: "", stroke: "", weight: -1, cap: "", dash: "?" };
const states = new WeakMap<object, State>();
function stateOf(doc: Doc): State {
  const known = states.get(doc.page);
  if (known) return known;
  const state = { ...FRESH };
  states.set(doc.page, state);
  return state;
}

/** What `body` changes of the page's state is undone after it. */
function within(doc: Doc, body: () => void): void {
  const before = { ...stateOf(doc) };
  doc.save();
  body();
  doc.restore();
  states.set(doc.page, before);
}

function takeInk(doc: Doc, color: string): void {
  const state = stateOf(doc);
  if (state.fill !== color) doc.fillColor(color);
  state.fill = color;
}

function takePen(doc: Doc, pen: Pen): void {
  const state = stateOf(doc);
  const weight = fine(pen.weight), cap = pen.cap ?? "butt";
  const dash = (pen.dash ?? []).map((d) => Number(d.toFixed(3))).join(" ");
  if (state.weight !== weight) doc.lineWidth(weight);
  if (state.stroke !== pen.color) doc.strokeColor(pen.color);
  if (state.cap !== cap) doc.lineCap(cap);
  if (state.dash !== dash) doc.addContent(`[${dash}] 0 d`);
  Object.assign(state, { weight, stroke: pen.color, cap, dash });
}

function finish(doc: Doc, shape: { readonly fill?: string | undefined; readonly stroke?: Pen | undefined; readonly evenOdd?: boolean }): void {
  const rule = shape.evenOdd ? "even-odd" : "non-zero";
  if (shape.fill && shape.stroke) doc.fillAndStroke(undefined, undefined, rule);
  else if (shape.fill) doc.fill(rule);
  else if (shape.stroke) doc.stroke();
}

/** Pen and ink are taken before the path is begun: between its steps and its painting nothing else may stand (ISO 32000-1, 8.5.2). */
function draw(doc: Doc, steps: readonly Step[], shape: { readonly fill?: string | undefined; readonly stroke?: Pen | undefined; readonly evenOdd?: boolean }): void {
  if (shape.stroke) takePen(doc, shape.stroke);
  if (shape.fill) takeInk(doc, shape.fill);
  trace(doc, steps);
  finish(doc, shape);
}

const registered = new WeakMap<Doc, Set<string>>();

type Setter = { layout: (text: string) => LaidOut };
const isSetter = (font: unknown): font is Setter => typeof font === "object" && font !== null && "layout" in font && typeof font.layout === "function";

/**
 * A face is made known to a document when its first letter is set. The writer would lay each text out anew, three times over: it is
 * given what was laid out to measure it, which is the same by the same library.
 */
function use(doc: Doc, face: Face): Doc {
  const known = registered.get(doc) ?? new Set<string>();
  if (known.has(face.key)) return doc.font(face.key);
  registered.set(doc, known.add(face.key));
  doc.registerFont(face.key, face.bytes).font(face.key);
  const font: unknown = Reflect.get(doc, "_font");
  if (isSetter(font)) font.layout = (text) => laidOut(face, text);
  return doc;
}

function write(doc: Doc, words: Words, missing: (letters: readonly string[]) => void): void {
  const shaped = shape(words.text, words.font);
  if (shaped.missing.length > 0) missing(shaped.missing);
  const width = shaped.runs.reduce((sum, run) => sum + runAdvance(run, words.size), 0);
  const start = words.anchor === "start" ? 0 : words.anchor === "middle" ? -width / 2 : -width;
  const [ax, ay] = words.at;
  const set = (ox: number, oy: number): void => {
    let x = ox + start;
    for (const run of shaped.runs) {
      // Readers turn back by themselves what runs from right to left; syllables they have to be told (ISO 32000-1, 14.9.4).
      if (run.read !== undefined) doc.markContent("Span", { actual: run.read });
      takeInk(doc, words.color);
      use(doc, run.face).fontSize(fine(words.size));
      doc.text(run.text, fine(x), fine(oy), { lineBreak: false, baseline: "alphabetic", features: [...FEATURES] });
      if (run.read !== undefined) doc.endMarkedContent();
      x += runAdvance(run, words.size);
    }
  };
  if (words.angle === 0) return set(ax, ay);
  within(doc, () => {
    doc.translate(fine(ax), fine(ay)).rotate(words.angle);
    set(0, 0);
  });
}

/** pdfkit behind the painter's surface. Letters that no face holds are told to `missing`. */
export function pdfkitSurface(doc: Doc, missing: (letters: readonly string[]) => void): PdfSurface {
  return {
    path: (s) => draw(doc, s.steps, s),
    circle: (s) => draw(doc, ring([s.at[0], s.at[1]], s.radius), s),
    clip: (steps, body) => within(doc, () => {
      trace(doc, steps);
      doc.clip();
      body();
    }),
    text: (words) => write(doc, words, missing),
  };
}
