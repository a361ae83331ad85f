import type PDFDocument from "pdfkit";
import type { Mark, Step } from "../drawing/display";
import { turnOf, type PdfSurface, type Words } from "../drawing/pdf";
import type { Han } from "./faces";
import { lettersOf } from "./letters";
import { createOps, draw, figure, takeInk, trace, within, type Ops } from "./ops";
import { runAdvance, shape } from "./runs";

type Doc = InstanceType<typeof PDFDocument>;

/** A circle by four curves: the nearest that cubic curves come to it (off by 2.7 in ten thousand of its radius). */
const KAPPA = (4 * (Math.SQRT2 - 1)) / 3;
function ring([x, y]: readonly [number, number], r: number): readonly Step[] {
  const k = r * KAPPA;
  return [
    { op: "M", to: [x + r, y] }, { op: "C", c1: [x + r, y + k], c2: [x + k, y + r], to: [x, y + r] }, { op: "C", c1: [x - k, y + r], c2: [x - r, y + k], to: [x - r, y] },
    { op: "C", c1: [x - r, y - k], c2: [x - k, y - r], to: [x, y - r] }, { op: "C", c1: [x + k, y - r], c2: [x + r, y - k], to: [x + r, y] }, { op: "Z" },
  ];
}

type Missing = (letters: readonly string[]) => void;
type Setting = { readonly doc: Doc; readonly missing: Missing; /** The forms of Chinese characters on this paper. */ readonly han: Han };

function write(to: Ops, { doc, missing, han }: Setting, words: Words): void {
  const shaped = shape(words.text, words.font, han);
  if (shaped.missing.length > 0) missing(shaped.missing);
  const width = shaped.runs.reduce((sum, run) => sum + runAdvance(run, words.size), 0);
  let along = words.anchor === "start" ? 0 : words.anchor === "middle" ? -width / 2 : -width;
  const { sin, cos } = turnOf(words.angle);
  takeInk(to, words.color);
  for (const run of shaped.runs) {
    // Readers turn back by themselves what runs from right to left; syllables they have to be told (ISO 32000-1, 14.9.4).
    if (run.read !== undefined) to.parts.push(`/Span <</ActualText <${utf16(run.read)}>>> BDC`);
    to.parts.push(lettersOf(doc, { text: run.text, face: run.face, size: words.size, at: [words.at[0] + cos * along, words.at[1] + sin * along], turn: [sin, cos] }));
    if (run.read !== undefined) to.parts.push("EMC");
    along += runAdvance(run, words.size);
  }
}

const utf16 = (text: string): string => `feff${[...Array(text.length).keys()].map((i) => text.charCodeAt(i).toString(16).padStart(4, "0")).join("")}`;

/** Lines and fills drawn about their own first point: operators, box, and where that point stands. */
type Drawn = { readonly ops: string; readonly box: Ops["box"]; readonly at: readonly [number, number]; readonly marks: number };

/** The page that is painted, and what of it is not written yet. */
export type PageSurface = PdfSurface & {
  /** Keeps some marks that follow one another: those that look the same are written once, as a form, and shown wherever they stand. */
  readonly keep: (marks: readonly Mark[], paint: () => void) => void;
  /** Writes what was painted to the page that is being written. */
  readonly flush: () => void;
};

/** Less than this is written in place: a form has its own costs. */
const WORTH = 240;

/** The box of a form takes in half the heaviest pen. */
const PEN = 3;

/** pdfkit behind the painter's surface. Letters that no face holds are told to `missing`. */
export function pdfkitSurface(setting: Setting): PageSurface {
  const { doc } = setting;
  const pages = new WeakMap<object, Ops>();
  const kept = new WeakMap<Mark, Drawn>();
  const times = new Map<string, number>();
  const forms = new Map<string, { readonly name: string; readonly ref: object }>();
  let aside: Ops | null = null;
  const page = (): Ops => {
    const known = pages.get(doc.page) ?? createOps();
    pages.set(doc.page, known);
    return known;
  };
  const now = (): Ops => aside ?? page();

  const formOf = ({ ops, box: [x0, y0, x1, y1] }: Drawn): { readonly name: string; readonly ref: object } => {
    const known = forms.get(ops);
    if (known) return known;
    const ref = doc.ref({ Type: "XObject", Subtype: "Form", BBox: [Math.floor(x0 - PEN), Math.floor(y0 - PEN), Math.ceil(x1 + PEN), Math.ceil(y1 + PEN)], Resources: {} });
    ref.end(Buffer.from(ops, "latin1"));
    const made = { name: `P${forms.size + 1}`, ref };
    forms.set(ops, made);
    return made;
  };
  const show = (to: Ops, drawn: Drawn): void => {
    const { name, ref } = formOf(drawn);
    const { xobjects } = doc.page as unknown as { readonly xobjects: Record<string, object> };
    xobjects[name] ??= ref;
    to.parts.push(`q 1 0 0 1 ${figure(drawn.at[0])} ${figure(drawn.at[1])} cm/${name} Do Q`);
  };
  return {
    path: (s) => draw(now(), s.steps, s),
    circle: (s) => draw(now(), ring([s.at[0], s.at[1]], s.radius), s),
    clip: (steps, body) => within(now(), () => {
      trace(now(), steps);
      now().parts.push("W n");
      body();
    }),
    text: (words) => write(now(), setting, words),
    known: (first) => {
      const drawn = aside ? undefined : kept.get(first);
      if (!drawn || (times.get(drawn.ops) ?? 0) < 2) return 0;
      show(page(), drawn);
      return drawn.marks;
    },
    keep: (marks, paint) => {
      const [first] = marks;
      if (!first) return;
      const own = createOps("first");
      aside = own;
      paint();
      aside = null;
      const ops = own.parts.join("\n");
      if (ops.length < WORTH) return;
      kept.set(first, { ops, box: own.box, at: own.origin, marks: marks.length });
      times.set(ops, (times.get(ops) ?? 0) + 1);
    },
    flush: () => {
      const { parts } = page();
      if (parts.length > 0) doc.addContent(parts.join("\n"));
      parts.length = 0;
    },
  };
}
