export { toSvg } from "./paint";
export { svgTree, type SvgOptions } from "./tree";
export { planCss } from "./css";
export { escapeText, written, type SvgNode } from "./markup";
