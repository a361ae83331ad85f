import { readFileSync } from "node:fs";
import path from "node:path";
import { create, type Font as FontFile } from "fontkit";
import type { Font } from "../drawing/pdf";

/** One file of a face, with what it can print. */
export type Face = { readonly key: string; readonly bytes: Buffer; readonly font: FontFile };

const WEIGHTS = { regular: 400, medium: 500, bold: 600 } as const;
const SCRIPTS = ["greek", "greek-ext", "cyrillic", "cyrillic-ext"] as const;
const SERIF = [["newsreader", ["latin", "latin-ext", "vietnamese"]], ["literata", SCRIPTS], ["open-sans", ["math", "symbols"]]] as const;
const SANS = [["public-sans", ["latin", "latin-ext", "vietnamese"]], ["open-sans", [...SCRIPTS, "math", "symbols"]]] as const;

/** The packages lie beside the program, which is started in its own folder; a bundler is not to follow this path. */
const folder = (): string => path.join(/* turbopackIgnore: true */ process.cwd(), "node_modules", "@fontsource");

const opened = new Map<string, Face>();

function open(key: string, file: string): Face {
  const known = opened.get(key);
  if (known) return known;
  const bytes = readFileSync(file);
  const font = create(bytes);
  if (!("hasGlyphForCodePoint" in font)) throw new Error(`a collection of fonts where one was meant: ${file}`);
  const face = { key, bytes, font };
  opened.set(key, face);
  return face;
}

/** The files that are tried for a font, in order: its own family first, then those with more scripts. */
export function facesOf(font: Font): readonly Face[] {
  const style = `${WEIGHTS[font.weight]}-${font.italic ? "italic" : "normal"}`;
  return (font.face === "serif" ? SERIF : SANS).flatMap(([family, subsets]) =>
    subsets.map((subset) => {
      const key = `${family}-${subset}-${style}`;
      return open(key, path.join(folder(), family, "files", `${key}.woff`));
    }));
}
