import { COLOURS } from "../theme";

/** Families by face. The page's own variables come first where it has them. */
export const FAMILIES = {
  serif: "Newsreader, 'Newsreader Variable', 'Iowan Old Style', Georgia, serif",
  sans: "'Public Sans', 'Public Sans Variable', 'Noto Sans', system-ui, sans-serif",
} as const;

/** The rules that a page needs for plans drawn with theme "css": one class an ink, read from the page's own variables. */
export function planCss(): string {
  const rules = COLOURS.flatMap((ink) => [`.plan .f-${ink}{fill:var(--${ink})}`, `.plan .s-${ink}{stroke:var(--${ink})}`]);
  return [
    ".plan{display:block;max-width:100%;height:auto}",
    ".plan path,.plan circle{fill:none}",
    ...rules,
    `.plan .serif{font-family:var(--serif, ${FAMILIES.serif})}`,
    `.plan .sans{font-family:var(--sans, ${FAMILIES.sans})}`,
    ".plan text{font-optical-sizing:none;font-variant-numeric:tabular-nums;text-rendering:geometricPrecision}",
    "",
  ].join("\n");
}
