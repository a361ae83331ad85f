export { toSvg, type SvgOptions } from "./paint";
export { planCss } from "./css";
export { escapeText } from "./markup";
