import { CAUTIONS } from "../../words/cautions";
import { languageOf, sayIn } from "../../words/pages";
import { planVoice } from "../../words/plan";
import type { LengthStyle } from "../../measure";

import type { Mark, Paper, Step } from "../display";
import { capHeight, shorten, textWidth, wrap, type Type } from "../metrics";
import { box, closed, line, placedSteps } from "../paths";
import type { Rect } from "../plan/ground";

/**
 * What the title block says. Left out or empty: its cell is not drawn. With the venue's name (the legal owner), the house that drew
 * it (the creator), the reference and the day of drawing it has the data fields of ISO 7200 (2004; from memory, unconfirmed).
 */
export type TitleBlock = {
  readonly couple?: string; readonly day?: string; readonly package?: string; readonly scene?: string; readonly layoutTitle?: string;
  readonly places?: string | number; readonly revision?: string | number; readonly fingerprint?: string;
  /** "4 of 8". */
  readonly sheet?: string;
  /** The booking's reference, the day it was drawn, who agreed it and when. */
  readonly reference?: string; readonly drawn?: string; readonly agreed?: string;
  /** Whose words its captions are; British English where it is left out. */
  readonly locale?: string;
};

const CAPTION: Type = { size: 2, face: "sans" };
const VALUE: Type = { size: 3, face: "serif" };
const CAUTION: Type = { size: 2.3, face: "sans" };

type Cell = { readonly caption: string; readonly value: string };
const CELL = 7.9, PAD = 2, HEAD = 10.4, LINE = 2.7;

/** Who drew it and when, and who agreed it: under the name, where a row of cells would cost the plan its scale. */
function standing({ drawn, agreed, locale = "en-GB" }: TitleBlock): readonly string[] {
  const say = planVoice(locale);
  return [drawn ? say("drawn by Marquetry, {day}", { day: drawn }) : say("drawn by Marquetry"), ...(agreed ? [say("agreed by {whom}", { whom: agreed })] : [])];
}
const headOf = (t: TitleBlock): number => HEAD + (standing(t).length - 1) * LINE;

function rowsOf(t: TitleBlock): readonly (readonly Cell[])[] {
  const say = planVoice(t.locale ?? "en-GB");
  const cell = (caption: Parameters<typeof say>[0], value: string | number | undefined): readonly Cell[] => (value === undefined || value === "" ? [] : [{ caption: say(caption), value: String(value) }]);
  return [
    [...cell("For", t.couple), ...cell("Reference", t.reference)],
    [...cell("Day", t.day), ...cell("Package", t.package)],
    [...cell("Part of the day", t.scene), ...cell("Layout", t.layoutTitle)],
    [...cell("Places", t.places), ...cell("Revision", t.revision), ...cell("Fingerprint", t.fingerprint), ...cell("Sheet", t.sheet)],
  ].filter((r) => r.length > 0);
}

const broken = new Map<string, readonly string[]>();
/** The cautions never change and stand at a few widths only: broken into lines once for each, and for each language. */
function cautionLines(width: number, { locale = "en-GB" }: TitleBlock): readonly string[] {
  const language = languageOf(locale), key = `${language} ${width}`;
  const lines = broken.get(key) ?? wrap(sayIn(language)(CAUTIONS), width - 2 * PAD, CAUTION);
  if (broken.size < 50) broken.set(key, lines);
  return lines;
}
const CAUTION_LEAD = 3;
/** The share of a lying title block that its cells take; the cautions have the rest. */
const LYING = 0.68;

/** Height that the title block takes at a width, mm. */
export function titleHeight(t: TitleBlock, width: number): number {
  if (width > 100) return Math.max(headOf(t) + Math.ceil(rowsOf(t).length / 2) * CELL, cautionLines(width * (1 - LYING), t).length * CAUTION_LEAD + 2.6);
  return headOf(t) + rowsOf(t).length * CELL + cautionLines(width, t).length * CAUTION_LEAD + 2.6;
}

/**
 * Columns of a row: each as wide as what it holds asks for, with what is left over shared out; where all asks are too much the
 * longest gives way, and never so far that another's caption would not fit.
 */
function columns(row: readonly Cell[], width: number): readonly number[] {
  const asks = row.map((c) => Math.max(textWidth(c.value, VALUE), textWidth(c.caption, CAPTION)) + 2 * PAD);
  const sum = asks.reduce((a, b) => a + b, 0);
  if (sum <= width) return asks.map((a) => a + ((width - sum) * a) / sum);
  const least = row.map((c) => textWidth(c.caption, CAPTION) + 2 * PAD);
  // The largest width that no column may pass, so that all together take the width there is.
  let low = 0, high = width;
  for (let i = 0; i < 30; i++) {
    const cap = (low + high) / 2;
    if (asks.reduce((n, a, k) => n + Math.max(least[k] ?? 0, Math.min(a, cap)), 0) > width) high = cap; else low = cap;
  }
  return asks.map((a, k) => Math.max(least[k] ?? 0, Math.min(a, low)));
}

/** Words at the largest size down to `least` at which they fit a width; if none does, cut short. */
function fitted(text: string, type: Type, width: number, least: number): { readonly text: string; readonly type: Type } {
  const size = Math.min(type.size, Math.max(least, (type.size * width) / Math.max(1e-6, textWidth(text, type))));
  const set = { ...type, size };
  return { text: shorten(text, width + 1e-6, set), type: set };
}

function cells(rows: readonly (readonly Cell[])[], at: Rect): readonly Mark[] {
  const marks: Mark[] = [];
  const rules: Step[] = [];
  rows.forEach((row, j) => {
    const y = at.y + j * CELL;
    rules.push(...line([at.x, y], [at.x + at.width, y]));
    let x = at.x;
    columns(row, at.width).forEach((w, i) => {
      const c = row[i];
      if (!c) return;
      if (i > 0) rules.push(...line([x, y], [x, y + CELL]));
      const value = fitted(c.value, VALUE, w - PAD * 1.4, 2.4);
      marks.push(
        { kind: "text", at: [x + PAD, y + 2.8], text: c.caption, ...CAPTION, ink: "ink-3" },
        { kind: "text", at: [x + PAD, y + 6.4], text: value.text, ...value.type, ink: "ink" },
      );
      x += w;
    });
  });
  return [{ kind: "path", steps: rules, stroke: { ink: "ink", weight: 0.13 } }, ...marks];
}

/** Four squares of veneer: the mark of the house. */
function emblem(at: Paper): readonly Mark[] {
  const s = 3.3;
  const steps: Step[] = [];
  const square = (x: number, y: number): readonly Step[] => box(at[0] + x, at[1] + y, s, s);
  for (let i = 1; i < 4; i++) {
    const t = (i * s) / 4;
    steps.push(...line([at[0] + t, at[1]], [at[0] + t, at[1] + s]), ...line([at[0] + s, at[1] + t], [at[0] + 2 * s, at[1] + t]),
      ...line([at[0], at[1] + s + t], [at[0] + s, at[1] + s + t]), ...line([at[0] + s + t, at[1] + s], [at[0] + s + t, at[1] + 2 * s]));
  }
  return [
    { kind: "path", steps: [...square(0, 0), ...square(s, s)], fill: "v-oak" }, { kind: "path", steps: [...square(s, 0), ...square(0, s)], fill: "v-round" },
    { kind: "path", steps, stroke: { ink: "g-oak", weight: 0.11 } },
    { kind: "path", steps: [...square(0, 0), ...square(s, 0), ...square(0, s), ...square(s, s)], stroke: { ink: "ink", weight: 0.18 } },
  ];
}

/** The title block with the cautions in it: upright, or lying (wider than 100 mm) with the cautions to the right. */
export function titleBlock(venueName: string, t: TitleBlock, at: Rect): readonly Mark[] {
  const lying = at.width > 100;
  const left = lying ? at.width * LYING : at.width;
  const rows = rowsOf(t);
  const shown = lying ? rows.reduce<(readonly Cell[])[]>((out, row, i) => (i % 2 === 0 ? [...out, row] : [...out.slice(0, -1), [...(out.at(-1) ?? []), ...row]]), []) : rows;
  const name: Type = { size: 5, face: "serif", weight: "medium" };
  const title = fitted(venueName, name, left - 14, 3.2);
  const words = cautionLines(lying ? at.width - left : at.width, t);
  const top = lying ? at.y : at.y + headOf(t) + rows.length * CELL;
  const cautionX = lying ? at.x + left : at.x;
  return [
    { kind: "path", steps: box(at.x, at.y, at.width, at.height), fill: "leaf", stroke: { ink: "ink", weight: 0.25 } },
    ...emblem([at.x + PAD, at.y + 2.2]),
    { kind: "text", at: [at.x + PAD + 8.6, at.y + 5.6], text: title.text, ...title.type, ink: "ink" },
    ...standing(t).map((text, i): Mark => {
      const line = fitted(text, CAPTION, left - 12.6, 1.7);
      return { kind: "text", at: [at.x + PAD + 8.6, at.y + 8.7 + i * LINE], text: line.text, ...line.type, ink: "ink-3" };
    }),
    ...cells(shown, { x: at.x, y: at.y + headOf(t), width: left, height: at.height }),
    { kind: "path", steps: lying ? line([cautionX, at.y], [cautionX, at.y + at.height]) : line([at.x, top], [at.x + at.width, top]), stroke: { ink: "ink", weight: 0.13 } },
    ...words.map((text, i): Mark => ({ kind: "text", at: [cautionX + PAD, top + 3.3 + i * CAUTION_LEAD], text, ...CAUTION, ink: "ink" })),
  ];
}

/** Lengths that a scale bar may have, mm of the room, with the parts that divide it in round figures. */
const METRES = [[1_000, 4], [2_000, 4], [4_000, 4], [5_000, 5], [8_000, 4], [10_000, 5], [20_000, 4], [40_000, 4], [50_000, 5], [100_000, 5]] as const;
const FEET = [4, 8, 12, 16, 20, 40, 80, 160, 320].map((ft) => [ft * 304.8, 4] as const);

export type Bar = { readonly mm: number; readonly length: number; readonly parts: number };
export function barFor(perMm: number, lengths: LengthStyle, least: number): Bar {
  const steps: readonly (readonly [number, number])[] = lengths.system === "metric" ? METRES : FEET;
  const [mm, parts] = steps.find(([s]) => s * perMm >= least) ?? steps.at(-1) ?? [1_000, 4];
  return { mm, length: mm * perMm, parts };
}

/** A scale bar in equal parts, the first of them in small change, with its figures beneath. */
export function scaleBar(bar: Bar, at: Paper, { lengths, note, weight }: { readonly lengths: LengthStyle; readonly note: number; readonly weight: number }): readonly Mark[] {
  const [x, y] = at;
  const h = note * 0.85, part = bar.length / bar.parts;
  const filled: Step[] = [];
  for (let i = 0; i < 4; i += 2) filled.push(...box(x + (i * part) / 4, y, part / 4, h));
  for (let i = 2; i < bar.parts; i += 2) filled.push(...box(x + i * part, y, part, h));
  const type: Type = { size: note, face: "sans" };
  const whole = lengths.system === "metric"
    ? (mm: number): string => new Intl.NumberFormat(lengths.locale, { maximumFractionDigits: 2 }).format(mm / 1000)
    : (mm: number): string => String(Math.round(mm / 304.8));
  const unit = lengths.system === "metric" ? "m" : "ft";
  return [
    { kind: "path", steps: filled, fill: "ink" },
    { kind: "path", steps: [...box(x, y, bar.length, h), ...Array.from({ length: bar.parts - 1 }, (_, i) => i + 1).flatMap((i) => line([x + i * part, y], [x + i * part, y + h]))], stroke: { ink: "ink", weight } },
    ...Array.from({ length: bar.parts + 1 }, (_, i) => i).map((i): Mark => ({
      kind: "text", at: [x + i * part, y + h + note * (capHeight(type) + 0.35)], ...type, anchor: i === 0 ? "start" : "middle", ink: "ink-2",
      text: i === bar.parts ? `${whole(bar.mm)}\u00a0${unit}` : whole((bar.mm * i) / bar.parts),
    })),
  ];
}

/** A north point: a ring, a needle half filled, its letter at the head. Degrees clockwise from up the page. */
export function northPoint(centre: Paper, radius: number, north: number, letter = 2.6): readonly Mark[] {
  const put = (steps: readonly Step[]): readonly Step[] => placedSteps(steps, centre, north);
  const r = radius, n = r * 0.34;
  const head = placedSteps(line([0, -r - (letter / 2.6) * 1.9]), centre, north)[0];
  const at: Paper = head && head.op !== "Z" ? head.to : centre;
  return [
    { kind: "circle", at: centre, radius, stroke: { ink: "ink-2", weight: 0.13 } },
    { kind: "path", steps: put(closed([[0, -r * 0.86], [n, r * 0.66], [0, r * 0.38]])), fill: "leaf", stroke: { ink: "ink", weight: 0.13 } },
    { kind: "path", steps: put(closed([[0, -r * 0.86], [-n, r * 0.66], [0, r * 0.38]])), fill: "ink", stroke: { ink: "ink", weight: 0.13 } },
    { kind: "text", at: [at[0], at[1] + (letter / 2.6) * 0.9], text: "N", size: letter, face: "serif", weight: "medium", anchor: "middle", ink: "ink" },
  ];
}

export const scaleWords = (ratio: number, paper: string, lengths: LengthStyle): string =>
  planVoice(lengths.locale)(lengths.system === "metric" ? "Scale 1\u2009:\u2009{ratio} on {paper}. Lengths in metres." : "Scale 1\u2009:\u2009{ratio} on {paper}. Lengths in feet and inches.", { ratio, paper });

