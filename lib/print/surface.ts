import type PDFDocument from "pdfkit";
import type { Step } from "../drawing/display";
import type { PdfSurface, Pen, Words } from "../drawing/pdf";
import type { Face } from "./faces";
import { FEATURES, runAdvance, shape } from "./runs";

type Doc = InstanceType<typeof PDFDocument>;

function trace(doc: Doc, steps: readonly Step[]): void {
  for (const step of steps) {
    if (step.op === "M") doc.moveTo(step.to[0], step.to[1]);
    else if (step.op === "L") doc.lineTo(step.to[0], step.to[1]);
    else if (step.op === "C") doc.bezierCurveTo(step.c1[0], step.c1[1], step.c2[0], step.c2[1], step.to[0], step.to[1]);
    else doc.closePath();
  }
}

function takePen(doc: Doc, pen: Pen): void {
  doc.lineWidth(pen.weight).strokeColor(pen.color).lineCap(pen.cap ?? "butt").lineJoin("miter");
  if (pen.dash && pen.dash.length > 0) doc.addContent(`[${pen.dash.map((d) => Number(d.toFixed(4))).join(" ")}] 0 d`);
  else doc.undash();
}

function finish(doc: Doc, shape: { readonly fill?: string | undefined; readonly stroke?: Pen | undefined; readonly evenOdd?: boolean }): void {
  const rule = shape.evenOdd ? "even-odd" : "non-zero";
  if (shape.stroke) takePen(doc, shape.stroke);
  if (shape.fill && shape.stroke) doc.fillColor(shape.fill).fillAndStroke(undefined, undefined, rule);
  else if (shape.fill) doc.fillColor(shape.fill).fill(rule);
  else if (shape.stroke) doc.stroke();
}

const registered = new WeakMap<Doc, Set<string>>();

/** A face is made known to a document when its first letter is set. */
function use(doc: Doc, face: Face): Doc {
  const known = registered.get(doc) ?? new Set<string>();
  if (!known.has(face.key)) doc.registerFont(face.key, face.bytes);
  registered.set(doc, known.add(face.key));
  return doc.font(face.key);
}

function write(doc: Doc, words: Words, missing: (letters: readonly string[]) => void): void {
  const shaped = shape(words.text, words.font);
  if (shaped.missing.length > 0) missing(shaped.missing);
  const width = shaped.runs.reduce((sum, run) => sum + runAdvance(run, words.size), 0);
  let x = words.anchor === "start" ? 0 : words.anchor === "middle" ? -width / 2 : -width;
  const [ax, ay] = words.at;
  const turned = words.angle !== 0;
  if (turned) doc.save().translate(ax, ay).rotate(words.angle);
  for (const run of shaped.runs) {
    // Readers turn back by themselves what runs from right to left; syllables they have to be told (ISO 32000-1, 14.9.4).
    if (run.read !== undefined) doc.markContent("Span", { actual: run.read });
    use(doc, run.face).fontSize(words.size).fillColor(words.color);
    doc.text(run.text, (turned ? 0 : ax) + x, turned ? 0 : ay, { lineBreak: false, baseline: "alphabetic", features: [...FEATURES] });
    if (run.read !== undefined) doc.endMarkedContent();
    x += runAdvance(run, words.size);
  }
  if (turned) doc.restore();
}

/** pdfkit behind the painter's surface. Letters that no face holds are told to `missing`. */
export function pdfkitSurface(doc: Doc, missing: (letters: readonly string[]) => void): PdfSurface {
  return {
    path: (s) => { trace(doc, s.steps); finish(doc, s); },
    circle: (s) => { doc.circle(s.at[0], s.at[1], s.radius); finish(doc, s); },
    clip: (steps, body) => {
      doc.save();
      trace(doc, steps);
      doc.clip();
      body();
      doc.restore();
    },
    text: (words) => write(doc, words, missing),
  };
}
