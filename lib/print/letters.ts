import type PDFDocument from "pdfkit";
import type { Face } from "./faces";
import { laidOut, type LaidOut } from "./glyphs";
import { figure } from "./ops";

type Doc = InstanceType<typeof PDFDocument>;

/** What the PDF writer's own font can do beyond its published types: it numbers the glyphs of the subset that it will embed. */
type Setter = { readonly id: string; readonly ref: () => object; layout: (text: string) => LaidOut; readonly encode: (text: string) => readonly [readonly string[], LaidOut["positions"]] };
const isSetter = (font: unknown): font is Setter =>
  typeof font === "object" && font !== null && "layout" in font && "encode" in font && typeof font.encode === "function" && "id" in font && "ref" in font;

const registered = new WeakMap<Doc, Map<string, Setter>>();

/**
 * A face is made known to a document when its first letter is set. The writer would lay each text out anew, three times over: it is
 * given what was laid out to measure it, which is the same by the same library.
 */
function setterOf(doc: Doc, face: Face): Setter {
  const known = registered.get(doc) ?? new Map<string, Setter>();
  registered.set(doc, known);
  const before = known.get(face.key);
  if (before) return before;
  doc.registerFont(face.key, face.bytes).font(face.key);
  const font: unknown = Reflect.get(doc, "_font");
  if (!isSetter(font)) throw new Error("the PDF writer's fonts are not as they were: see its version in package.json");
  font.layout = (text) => laidOut(face, text);
  known.set(face.key, font);
  return font;
}

type Set = { readonly text: string; readonly face: Face; readonly size: number; readonly at: readonly [number, number]; /** Sine and cosine of the turn. */ readonly turn: readonly [number, number] };

/** One run of letters as operators of a text object (ISO 32000-1, 9.4), set on a page whose y runs down. */
export function lettersOf(doc: Doc, { text, face, size, at, turn: [sin, cos] }: Set): string {
  const font = setterOf(doc, face);
  const { fonts } = doc.page as unknown as { readonly fonts: Record<string, object> };
  fonts[font.id] ??= font.ref();
  const [codes, positions] = font.encode(text);
  const scale = size / 1000;
  const slant = (n: number): string => figure4(n);
  const matrix = (x: number, y: number): string =>
    `${slant(cos)} ${slant(sin)} ${slant(sin)} ${slant(-cos)} ${figure(at[0] + cos * x + sin * y)} ${figure(at[1] + sin * x - cos * y)} Tm`;
  const out: string[] = ["BT", `/${font.id} ${figure(size)} Tf`, matrix(0, 0)];
  let shown: string[] = [], hex = "", x = 0, moved = false;
  const close = (): void => { if (hex !== "") shown.push(`<${hex}>`); hex = ""; };
  const flush = (): void => {
    close();
    if (shown.length > 0) out.push(shown.length === 1 && shown[0]?.startsWith("<") ? `${shown[0]} Tj` : `[${shown.join("")}]TJ`);
    shown = [];
  };
  positions.forEach((p, i) => {
    const lifted = p.xOffset !== 0 || p.yOffset !== 0;
    if (lifted || moved) {
      flush();
      out.push(matrix(x + p.xOffset * scale, p.yOffset * scale));
    }
    moved = lifted;
    hex += codes[i] ?? "";
    const kern = p.xAdvance - p.advanceWidth;
    if (!lifted && Math.abs(kern) >= 0.05 && i + 1 < positions.length) { close(); shown.push(figure(-kern)); }
    x += p.xAdvance * scale;
  });
  flush();
  out.push("ET");
  return out.join("\n");
}

/** Sines and cosines with four decimals: a hundredth of a point over a page's width. */
const figure4 = (n: number): string => String(Math.round(n * 1e4) / 1e4 + 0);
