export * from "./display";
export { composePlan, SCALES, type PlanOptions, type Sheet } from "./compose";
export { letterFindings, type Lettered } from "./plan/findings";
export type { TitleBlock } from "./sheet/blocks";
export { planCss, toSvg, type SvgOptions } from "./svg";
export { PALETTES, COLOURS, type Colour, type Palette } from "./theme";
export { textWidth, wrap, type Type } from "./metrics";
