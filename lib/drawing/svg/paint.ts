import type { Drawing } from "../display";
import { markup } from "./markup";
import { svgTree, type SvgOptions } from "./tree";

/** The drawing as one SVG element, the same bytes for the same drawing. */
export const toSvg = (drawing: Drawing, options: SvgOptions): string => markup(svgTree(drawing, options));
