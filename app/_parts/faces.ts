import local from "next/font/local";

/*
 * The two faces of every page, their Latin letters: named in its head, so that they are there when it is first laid out. Found only in the
 * style sheet they came after that, and all its words were set twice. Other letters have their files in globals.css.
 * The builder reads these as they are written and follows no name: hence the ranges twice. Optical sizes are left out: their file was
 * 132 kB, more than all scripts of a page, this one 58.
 */
export const serif = local({
  src: "../../node_modules/@fontsource-variable/newsreader/files/newsreader-latin-wght-normal.woff2", weight: "200 800", style: "normal", display: "swap", variable: "--face-serif", adjustFontFallback: false,
  declarations: [{ prop: "unicode-range", value: "U+0000-00FF,U+0131,U+0152-0153,U+02BB-02BC,U+02C6,U+02DA,U+02DC,U+0304,U+0308,U+0329,U+2000-206F,U+20AC,U+2122,U+2191,U+2193,U+2212,U+2215,U+FEFF,U+FFFD" }],
});
export const sans = local({
  src: "../../node_modules/@fontsource-variable/public-sans/files/public-sans-latin-wght-normal.woff2", weight: "100 900", style: "normal", display: "swap", variable: "--face-sans", adjustFontFallback: false,
  declarations: [{ prop: "unicode-range", value: "U+0000-00FF,U+0131,U+0152-0153,U+02BB-02BC,U+02C6,U+02DA,U+02DC,U+0304,U+0308,U+0329,U+2000-206F,U+20AC,U+2122,U+2191,U+2193,U+2212,U+2215,U+FEFF,U+FFFD" }],
});
