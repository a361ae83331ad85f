import { assertNever } from "../../base";
import type { Drawing, Ink, Mark, Step, Stroke } from "../display";
import { isMeasured, textWidth } from "../metrics";
import { PALETTES, type Palette } from "../theme";
import { FAMILIES } from "./css";
import { allowedText, figure, type Attributes, type SvgNode } from "./markup";
import { pathData } from "./path";

export type SvgOptions = {
  /** A palette set in the file, or "css": classes whose rules `planCss` gives the page. */
  readonly theme: "light" | "dark" | "print" | "css";
  /** Width in CSS pixels; left out: millimetres, so that the file prints at its scale. */
  readonly pixelWidth?: number;
  /** Begins every id of the file: two plans on one page need two. */
  readonly idPrefix?: string;
  /** "objects": every piece is read out by its label; "image": the plan is one picture with its title and words. */
  readonly reads?: "objects" | "image";
};

const element = (name: string, attributes: Attributes, inner?: readonly SvgNode[]): SvgNode => (inner ? { name, attributes, inner } : { name, attributes });
const worded = (name: string, attributes: Attributes, text: string): SvgNode => ({ name, attributes, words: allowedText(text) });

type Brush = { readonly palette: Palette | null; readonly prefix: string; readonly objects: boolean; readonly clips: { count: number } };

const colour = (ink: Ink, brush: Brush): string => (ink === "none" ? "none" : (brush.palette?.[ink] ?? "none"));

function look(mark: { readonly fill?: Ink | undefined; readonly stroke?: Stroke | undefined }, brush: Brush): Attributes {
  const { fill, stroke } = mark;
  const shared = stroke ? {
    "stroke-width": stroke.weight,
    "stroke-dasharray": stroke.dash && stroke.dash.length > 0 ? stroke.dash.map(figure).join(" ") : undefined,
    "stroke-linecap": stroke.cap && stroke.cap !== "butt" ? stroke.cap : undefined,
  } : {};
  if (brush.palette) return { fill: fill === undefined ? "none" : colour(fill, brush), ...(stroke ? { stroke: colour(stroke.ink, brush) } : {}), ...shared };
  const names = [fill && fill !== "none" ? `f-${fill}` : "", stroke && stroke.ink !== "none" ? `s-${stroke.ink}` : ""].filter((n) => n !== "");
  return { class: names.length > 0 ? names.join(" ") : undefined, ...shared };
}

/**
 * A file of its own is opened where our faces may be wanting. Its words are held to the width that they were placed by, so that in any
 * face none runs into another; in a page the faces are the page's own.
 */
const heldTo = (mark: Extract<Mark, { kind: "text" }>): Attributes =>
  (mark.text.length > 1 && isMeasured(mark.text, mark) ? { textLength: textWidth(mark.text, mark), lengthAdjust: "spacingAndGlyphs" } : {});

function words(mark: Extract<Mark, { kind: "text" }>, brush: Brush): SvgNode {
  const weight = mark.weight === "bold" ? 600 : mark.weight === "medium" ? 500 : undefined;
  const [x, y] = mark.at;
  return worded("text", {
    ...(brush.palette
      ? { fill: colour(mark.ink, brush), "font-family": FAMILIES[mark.face], ...heldTo(mark) }
      : { class: `f-${mark.ink} ${mark.face}` }),
    x, y, "font-size": mark.size, "font-weight": weight,
    "font-style": mark.italic ? "italic" : undefined,
    "text-anchor": mark.anchor && mark.anchor !== "start" ? mark.anchor : undefined,
    transform: mark.angle ? `rotate(${figure(mark.angle)} ${figure(x)} ${figure(y)})` : undefined,
  }, mark.text);
}

function group(mark: Extract<Mark, { kind: "group" }>, brush: Brush): readonly SvgNode[] {
  const inner = paintAll(mark.marks, brush);
  if (inner.length === 0 && mark.label === undefined) return [];
  const id = mark.id === undefined ? undefined : `${brush.prefix}${mark.id}`;
  const layer = mark.layer;
  if (mark.role === "decoration") return [element("g", { id, "data-layer": layer, "aria-hidden": brush.objects ? "true" : undefined }, inner)];
  if (mark.label === undefined || !brush.objects) return [element("g", { id, "data-layer": layer }, inner)];
  const role = mark.role === "piece" || mark.role === "note" ? "graphics-symbol" : "graphics-object";
  return [element("g", { id, "data-layer": layer, role, "aria-label": mark.label }, inner)];
}

function paintOne(mark: Mark, brush: Brush): readonly SvgNode[] {
  switch (mark.kind) {
    case "path": {
      const d = pathData(mark.steps);
      return d === "" ? [] : [element("path", { ...look(mark, brush), "fill-rule": mark.evenOdd ? "evenodd" : undefined, d })];
    }
    case "circle":
      return [element("circle", { ...look(mark, brush), cx: mark.at[0], cy: mark.at[1], r: mark.radius })];
    case "clip":
      return clipped(mark.steps, paintAll(mark.marks, brush), brush);
    case "text":
      return mark.text === "" ? [] : [words(mark, brush)];
    case "group":
      return group(mark, brush);
    default:
      return assertNever(mark);
  }
}

function clipped(steps: readonly Step[], inner: readonly SvgNode[], brush: Brush): readonly SvgNode[] {
  if (inner.length === 0) return [];
  const id = `${brush.prefix}clip-${++brush.clips.count}`;
  return [element("clipPath", { id }, [element("path", { d: pathData(steps) })]), element("g", { "clip-path": `url(#${id})` }, inner)];
}

const paintAll = (marks: readonly Mark[], brush: Brush): readonly SvgNode[] => marks.flatMap((m) => paintOne(m, brush));

/** The drawing as a tree of SVG elements: what the string painter writes and the page's painter builds. Its user unit is a millimetre of paper. */
export function svgTree(drawing: Drawing, options: SvgOptions): SvgNode {
  const { theme, pixelWidth } = options;
  const prefix = options.idPrefix ?? "plan-";
  const objects = (options.reads ?? "objects") === "objects";
  const brush: Brush = { palette: theme === "css" ? null : PALETTES[theme], prefix, objects, clips: { count: 0 } };
  const size = pixelWidth === undefined
    ? { width: `${figure(drawing.width)}mm`, height: `${figure(drawing.height)}mm` }
    : { width: pixelWidth, height: Math.round((pixelWidth * drawing.height) / drawing.width) };
  const described = drawing.words.length > 0;
  const head = [
    worded("title", { id: `${prefix}title` }, drawing.title),
    ...(described ? [worded("desc", { id: `${prefix}words` }, drawing.words.join("\n"))] : []),
  ];
  return element("svg", {
    xmlns: "http://www.w3.org/2000/svg", class: "plan", viewBox: `0 0 ${figure(drawing.width)} ${figure(drawing.height)}`, ...size,
    role: objects ? "graphics-document" : "img", "aria-labelledby": `${prefix}title`,
    "aria-describedby": described && !objects ? `${prefix}words` : undefined,
    ...(brush.palette ? { "font-variant": "tabular-nums", "text-rendering": "geometricPrecision" } : {}),
  }, [...head, ...paintAll(drawing.marks, brush)]);
}
