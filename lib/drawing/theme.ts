import type { Ink } from "./display";

export type Colour = Exclude<Ink, "none">;
export type Palette = Readonly<Record<Colour, string>>;

/**
 * What the inks are by theme, #rrggbb. Ratios against their grounds are computed by a test: words 4.5, lines and grain 3
 * (WCAG 2.2, 1.4.3 and 1.4.11).
 */
export const PALETTES: Readonly<Record<"light" | "dark" | "print", Palette>> = {
  light: {
    ground: "#f3eee4", paper: "#f8f5ed", leaf: "#fcfaf4", floor: "#fdfbf6", ink: "#231c18",
    "ink-2": "#4e463f", "ink-3": "#6b6159", line: "#897e74", rule: "#c6bcae", hush: "#ddd7cb",
    wall: "#392f2a", accent: "#015872", "accent-wash": "#deeff3", "on-accent": "#fcfaf4", "v-round": "#efdebb",
    "g-round": "#8e6e45", "v-long": "#d8d1b4", "g-long": "#746849", "v-oak": "#d2af82", "g-oak": "#754e2e",
    "v-chair": "#f4e3d5", "g-chair": "#92735e", "v-floor": "#c0a38d", "g-floor": "#5f4332", "v-music": "#3f3832",
    "g-music": "#a79987", "v-bar": "#814534", "g-bar": "#deb39c", "v-buffet": "#e8cd83", "g-buffet": "#84622a",
    "v-lounge": "#e4b193", "g-lounge": "#834e38", "v-display": "#bacdc2", "g-display": "#516a5e", "t-round": "#231c18",
    "t-long": "#231c18", "t-oak": "#231c18", "t-chair": "#231c18", "t-floor": "#231c18", "t-music": "#fcfaf4",
    "t-bar": "#fcfaf4", "t-buffet": "#231c18", "t-lounge": "#231c18", "t-display": "#231c18",
  },
  dark: {
    ground: "#16120e", paper: "#1d1814", leaf: "#26201c", floor: "#2c2722", ink: "#eee9df",
    "ink-2": "#c3bdb2", "ink-3": "#a59d92", line: "#877f75", rule: "#4d4640", hush: "#37322d",
    wall: "#c3bdb2", accent: "#75c5dc", "accent-wash": "#1c343e", "on-accent": "#0c181d", "v-round": "#65563d",
    "g-round": "#c5ae82", "v-long": "#53503d", "g-long": "#b1ac8c", "v-oak": "#543d24", "g-oak": "#b99462",
    "v-chair": "#706053", "g-chair": "#ceb5a1", "v-floor": "#4b372a", "g-floor": "#af8e73", "v-music": "#c5bdb0",
    "g-music": "#62594f", "v-bar": "#652c20", "g-bar": "#c69176", "v-buffet": "#655323", "g-buffet": "#caae63",
    "v-lounge": "#674331", "g-lounge": "#cf9671", "v-display": "#405249", "g-display": "#96afa0", "t-round": "#eee9df",
    "t-long": "#eee9df", "t-oak": "#eee9df", "t-chair": "#eee9df", "t-floor": "#eee9df", "t-music": "#26201c",
    "t-bar": "#eee9df", "t-buffet": "#eee9df", "t-lounge": "#eee9df", "t-display": "#eee9df",
  },
  print: {
    ground: "#ffffff", paper: "#ffffff", leaf: "#ffffff", floor: "#ffffff", ink: "#0d0d0d",
    "ink-2": "#3d3d3d", "ink-3": "#5d5d5d", line: "#7a7a7a", rule: "#b7b7b7", hush: "#d7d7d7",
    wall: "#1b1b1b", accent: "#005067", "accent-wash": "#e6f3f7", "on-accent": "#ffffff", "v-round": "#f5e8cc",
    "g-round": "#806747", "v-long": "#e1dbc4", "g-long": "#695f47", "v-oak": "#d6ba97", "g-oak": "#67482f",
    "v-chair": "#fbede2", "g-chair": "#856c5b", "v-floor": "#c5ad9c", "g-floor": "#533d2f", "v-music": "#3e3833",
    "g-music": "#a79987", "v-bar": "#7a493c", "g-bar": "#deb39c", "v-buffet": "#edd89e", "g-buffet": "#765c31",
    "v-lounge": "#e7bea6", "g-lounge": "#744939", "v-display": "#c6d5cc", "g-display": "#4d6057", "t-round": "#0d0d0d",
    "t-long": "#0d0d0d", "t-oak": "#0d0d0d", "t-chair": "#0d0d0d", "t-floor": "#0d0d0d", "t-music": "#ffffff",
    "t-bar": "#ffffff", "t-buffet": "#0d0d0d", "t-lounge": "#0d0d0d", "t-display": "#0d0d0d",
  },
};

/** The names of all inks, in the order of the palette. */
export const COLOURS = Object.keys(PALETTES.light).filter((name): name is Colour => name in PALETTES.print);
