export * from "./display";
export { composePlan, type PlanOptions } from "./compose";
export type { Lettered } from "./plan/findings";
export type { Sheet } from "./sheet/fit";
export type { TitleBlock } from "./sheet/blocks";
export { planCss, toSvg, type SvgOptions } from "./svg";
export { PALETTES, type Colour, type Palette } from "./theme";
export { textWidth, wrap, type Type } from "./metrics";
