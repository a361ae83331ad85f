import { COLOURS, type Colour } from "../theme";

/** Families by face. The page's own variables come first where it has them. */
export const FAMILIES = {
  serif: "Newsreader, 'Newsreader Variable', 'Iowan Old Style', Georgia, serif",
  sans: "'Public Sans', 'Public Sans Variable', 'Noto Sans', system-ui, sans-serif",
} as const;

/**
 * What an ink is where the reader's own colours are forced (CSS Color Adjustment 1, 3.1): lines, grain and words in the text's
 * colour on the canvas; the accent as a highlight. Grain and shape then tell the families apart, as they do in grey print.
 */
function forced(ink: Colour): string {
  if (ink === "accent") return "Highlight";
  if (ink === "on-accent") return "HighlightText";
  if (["ground", "paper", "leaf", "floor", "accent-wash"].includes(ink) || ink.startsWith("v-")) return "Canvas";
  return ink === "rule" || ink === "hush" ? "GrayText" : "CanvasText";
}

/** The rules that a page needs for plans drawn with theme "css": one class an ink, read from the page's own variables. */
export function planCss(): string {
  const rules = COLOURS.flatMap((ink) => [`.plan .f-${ink}{fill:var(--${ink})}`, `.plan .s-${ink}{stroke:var(--${ink})}`]);
  return [
    ".plan{display:block;max-width:100%;height:auto}",
    ".plan path,.plan circle{fill:none}",
    ...rules,
    `.plan .serif{font-family:var(--serif, ${FAMILIES.serif})}`,
    `.plan .sans{font-family:var(--sans, ${FAMILIES.sans})}`,
    "@media (forced-colors: active){",
    ".plan{forced-color-adjust:none}",
    ...COLOURS.flatMap((ink) => [`.plan .f-${ink}{fill:${forced(ink)}}`, `.plan .s-${ink}{stroke:${forced(ink)}}`]),
    "}",
    ".plan text{font-optical-sizing:none;font-variant-numeric:tabular-nums;text-rendering:geometricPrecision}",
    "",
  ].join("\n");
}
