import { existsSync, readFileSync } from "node:fs";
import path from "node:path";
import { create, type Font as FontFile } from "fontkit";
import type { Font } from "../drawing/pdf";
import { readRanges, type Covers } from "./ranges";
import { plainFont } from "./woff";

/** One file of a face, with what it can print. */
export type Face = { readonly key: string; readonly bytes: Buffer; readonly font: FontFile };

/** A file that may hold a letter; it is opened only when its package says that it does. */
type Source = { readonly key: string; readonly covers: Covers; readonly file: string };

/** Whose forms Chinese characters take: those of the language that the words about them are written in. */
export type Han = "chinese" | "japanese" | "korean";

const WEIGHTS = { regular: 400, medium: 500, bold: 600 } as const;
const EUROPE = ["greek", "greek-ext", "cyrillic", "cyrillic-ext"] as const;

type Family = { readonly name: string; readonly subsets: readonly string[] | "all"; readonly slanted?: boolean; readonly weights?: Readonly<Record<Font["weight"], number>> };

// The Arabic faces are those whose letters are one glyph each, dots and all: only so can the words be read back from the paper.
const SERIF: readonly Family[] = [
  { name: "newsreader", subsets: ["latin", "latin-ext", "vietnamese"], slanted: true }, { name: "literata", subsets: EUROPE, slanted: true },
  { name: "noto-serif-hebrew", subsets: ["hebrew"] }, { name: "amiri", subsets: ["arabic"], slanted: true, weights: { regular: 400, medium: 400, bold: 700 } },
  { name: "noto-serif-devanagari", subsets: ["devanagari"] }, { name: "open-sans", subsets: ["math", "symbols"], slanted: true },
];
const SANS: readonly Family[] = [
  { name: "public-sans", subsets: ["latin", "latin-ext", "vietnamese"], slanted: true },
  { name: "noto-sans", subsets: [...EUROPE, "devanagari"], slanted: true },
  { name: "open-sans", subsets: ["math", "symbols"], slanted: true },
  { name: "noto-sans-hebrew", subsets: ["hebrew"] }, { name: "ibm-plex-sans-arabic", subsets: ["arabic"] },
];
const CHINESE: Family = { name: "noto-sans-sc", subsets: "all" };

/** The packages lie beside the program, which is started in its own folder; a bundler is not to follow this path. */
const packages = (): string => path.join(/* turbopackIgnore: true */ process.cwd(), "node_modules");

const once = <T>(made: Map<string, T>, key: string, make: () => T): T => {
  const known = made.get(key);
  if (known !== undefined) return known;
  const value = make();
  made.set(key, value);
  return value;
};

const ranges = new Map<string, ReadonlyMap<string, Covers>>();
const rangesOf = (family: string): ReadonlyMap<string, Covers> =>
  once(ranges, family, () => readRanges(readFileSync(path.join(packages(), "@fontsource", family, "unicode.json"), "utf8")));

function sourcesOf(family: Family, font: Font): readonly Source[] {
  const style = `${(family.weights ?? WEIGHTS)[font.weight]}-${font.italic && family.slanted ? "italic" : "normal"}`;
  const known = rangesOf(family.name);
  const subsets = family.subsets === "all" ? [...known.keys()] : family.subsets;
  return subsets.flatMap((subset) => {
    const covers = known.get(subset);
    const key = `${family.name}-${subset}-${style}`;
    return covers ? [{ key, covers, file: path.join(packages(), "@fontsource", family.name, "files", `${key}.woff`) }] : [];
  });
}

const east = (name: string, file: string, covers: Covers): Source => ({ key: name, covers, file: path.join(packages(), "@expo-google-fonts", file) });
const japanese = (font: Font): Source => {
  const cut = font.weight === "bold" ? "700Bold" : "400Regular";
  return east(`biz-${cut}`, `biz-udpgothic/${cut}/BIZUDPGothic_${cut}.ttf`, (c) => c >= 0x2e80 && c < 0xac00 || c >= 0xf900 && c < 0xfb00 || c >= 0xff00 && c < 0xfff0);
};
const korean: () => Source = () =>
  east("gowun", "gowun-dodum/400Regular/GowunDodum_400Regular.ttf", (c) => c >= 0x1100 && c < 0x1200 || c >= 0x3130 && c < 0x3190 || c >= 0xac00 && c < 0xd7b0);

const lists = new Map<string, readonly Source[]>();

/** The files that are tried for a font, in order: its own family first, then those with more scripts. */
function triedFor(font: Font, han: Han): readonly Source[] {
  return once(lists, `${font.face} ${font.weight} ${font.italic} ${han}`, () => {
    const chinese = sourcesOf(CHINESE, font);
    const eastern = han === "japanese" ? [japanese(font), korean(), ...chinese] : [korean(), ...chinese, japanese(font)];
    return [...(font.face === "serif" ? SERIF : SANS).flatMap((family) => sourcesOf(family, font)), ...eastern];
  });
}

const opened = new Map<string, Face | null>();

function open({ key, file }: Source): Face | null {
  return once(opened, key, () => {
    if (!existsSync(file)) return null;
    const bytes = plainFont(readFileSync(file));
    const font = create(bytes);
    if (!("hasGlyphForCodePoint" in font)) throw new Error(`a collection of fonts where one was meant: ${file}`);
    return { key, bytes, font };
  });
}

const codes = (text: string): readonly number[] => [...text].map((c) => c.codePointAt(0) ?? 0);

export const holds = (face: Face, text: string): boolean => codes(text).every((c) => face.font.hasGlyphForCodePoint(c));

const found = new Map<string, Face | null>();
/** Only so many letters are remembered: a desk that prints all day must not grow without end. */
const REMEMBERED = 20_000;

/** The first face that holds every letter of a text; null where none does. */
export function faceFor(text: string, font: Font, han: Han): Face | null {
  const key = `${font.face} ${font.weight} ${font.italic} ${han} ${text}`;
  const known = found.get(key);
  if (known !== undefined) return known;
  if (found.size >= REMEMBERED) found.clear();
  const points = codes(text);
  let face: Face | null = null;
  for (const source of triedFor(font, han)) {
    if (!points.every(source.covers)) continue;
    const tried = open(source);
    if (tried && holds(tried, text)) { face = tried; break; }
  }
  found.set(key, face);
  return face;
}
