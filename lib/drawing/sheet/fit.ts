import type { LengthStyle } from "../../measure";
import { textWidth } from "../metrics";
import type { Rect } from "../plan/ground";
import { sheetHand, type Frame, type Hand } from "../plan/hand";
import { coverOf, stringsOf, type Level } from "../plan/level";
import { barFor, scaleWords, titleHeight, type TitleBlock } from "./blocks";
import { ENTRY, legendOf, type Entry } from "./legend";
import { createPage, type Page } from "./place";

export type Sheet = {
  /** Millimetres of paper: A4 lying is 297 x 210, Letter lying 279.4 x 215.9. */
  readonly width: number; readonly height: number;
  readonly titleBlock?: TitleBlock;
  readonly legend: boolean;
  readonly frame: boolean;
};

/** The frame's two lines, mm from the edge of the paper. */
export const FRAME = 7, INNER = 8.3;

const lineRect = ([a, b]: readonly [readonly [number, number], readonly [number, number]]): Rect =>
  ({ x: Math.min(a[0], b[0]) - 0.8, y: Math.min(a[1], b[1]), width: Math.abs(a[0] - b[0]) + 1.6, height: Math.abs(a[1] - b[1]) });

/** Where the blocks of a sheet lie. */
export type Blocks = { readonly title: Rect | null; readonly scale: Rect; readonly legend: { readonly at: Rect; readonly columns: number } | null };
/** A plan and its blocks laid on a sheet. */
export type Fit = { readonly frame: Frame; readonly blocks: Blocks; readonly score: number };

const TITLE_WIDTHS = [56, 150, 182] as const;
const LEGEND_COLUMNS = [5, 4, 10, 3, 7, 2, 1] as const;
const GAP = 2.2;
const SHIFTS = [0, 0.2, 0.4, 0.6, 0.8, 1] as const;

type Setting = { readonly level: Level; readonly hand: Hand; readonly sheet: Sheet; readonly entries: readonly Entry[]; readonly note: string };

/** Lays the plan and the blocks on the sheet at one scale, or finds that they do not fit. */
function fitAt(perMm: number, { level, hand, sheet, entries, note }: Setting): Fit | null {
  const inner: Rect = { x: INNER + GAP, y: INNER + GAP, width: sheet.width - 2 * (INNER + GAP), height: sheet.height - 2 * (INNER + GAP) };
  const loose: Frame = { perMm, origin: [0, 0] };
  const strings = stringsOf(level, loose, hand);
  const rects = [...coverOf(level, loose), ...strings.takes, ...strings.lines.map(lineRect)];
  const minX = Math.min(...rects.map((r) => r.x)), minY = Math.min(...rects.map((r) => r.y));
  const maxX = Math.max(...rects.map((r) => r.x + r.width)), maxY = Math.max(...rects.map((r) => r.y + r.height));
  const slackX = inner.width - (maxX - minX), slackY = inner.height - (maxY - minY);
  if (slackX < 0 || slackY < 0) return null;
  let best: Fit | null = null;
  const sizes = sizesOf({ sheet, entries, note, perMm, hand });
  for (const fy of SHIFTS) for (const fx of SHIFTS) {
    const shift = { x: inner.x - minX + slackX * fx, y: inner.y - minY + slackY * fy };
    const placed = rects.map((r) => ({ ...r, x: r.x + shift.x, y: r.y + shift.y }));
    for (const width of sheet.titleBlock ? TITLE_WIDTHS : [0]) {
      const blocks = layBlocks(placed, { inner, width, sheet, sizes });
      if (!blocks) continue;
      const score = balance(placed, blocks, inner) + (width > 100 ? 6 : 0);
      if (!best || score < best.score - 1e-9) best = { frame: { perMm, origin: [shift.x, shift.y] }, blocks, score };
      break;
    }
  }
  return best;
}

type Size = { readonly width: number; readonly height: number };
/** What the blocks measure, worked out once for all the places that are tried. */
type Sizes = { readonly title: ReadonlyMap<number, Size>; readonly scale: Size; /** From the widest to the highest, no shape twice. */ readonly legend: readonly (Size & { readonly columns: number })[] };
type Laying = { readonly inner: Rect; readonly width: number; readonly sheet: Sheet; readonly sizes: Sizes };

function sizesOf({ sheet, entries, note, perMm, hand }: { readonly sheet: Sheet; readonly entries: readonly Entry[]; readonly note: string; readonly perMm: number; readonly hand: Hand }): Sizes {
  const { titleBlock } = sheet;
  const bar = barFor(perMm, hand.lengths, 30);
  // Rows of nearly the same length: four families stand two by two, not three and one.
  const across = sheet.legend && entries.length > 0 ? [...new Set(LEGEND_COLUMNS.map((columns) => Math.ceil(entries.length / Math.ceil(entries.length / columns))))] : [];
  return {
    title: new Map(titleBlock ? TITLE_WIDTHS.map((width) => [width, { width, height: titleHeight(titleBlock, width) }]) : []),
    scale: { width: Math.max(bar.length + 8, textWidth(note, { size: 2.3, face: "sans" })) + 15, height: 13.5 },
    legend: across.map((columns) => ({ columns, width: columns * ENTRY.width - 1.5, height: Math.ceil(entries.length / columns) * ENTRY.height - 1.5 })),
  };
}

/** Title block first, then scale and legend in whichever order both find a place. */
function layBlocks(placed: readonly Rect[], laying: Laying): Blocks | null {
  const { inner, width, sheet, sizes } = laying;
  const base = createPage(inner, placed);
  // Air is kept to the left of a block and above it; to the right and below the inner edge or the next block's own air does it.
  const lay = (page: Page, size: Size): Rect | null => {
    const air = size.width > inner.width - 4 ? 0 : GAP;
    const r = page.find({ width: size.width + air, height: size.height + GAP });
    if (!r) return null;
    page.take(r);
    return { x: r.x + air, y: r.y + GAP, width: size.width, height: size.height };
  };
  const wanted = sizes.title.get(width);
  const title = wanted ? lay(base, wanted) : null;
  if (sheet.titleBlock && !title) return null;
  const layScale = (page: Page): Rect | null => lay(page, sizes.scale);
  const layLegend = (page: Page): Blocks["legend"] => {
    for (const { columns, ...size } of sizes.legend) {
      const at = lay(page, size);
      if (at) return { at, columns };
    }
    return null;
  };
  if (sizes.legend.length === 0) {
    const scale = layScale(base);
    return scale && { title, scale, legend: null };
  }
  for (const first of ["scale", "legend"] as const) {
    const page = base.copy();
    const early = first === "legend" ? layLegend(page) : null;
    if (first === "legend" && !early) continue;
    const scale = layScale(page);
    const legend = scale && (early ?? layLegend(page));
    if (scale && legend) return { title, scale, legend };
  }
  return null;
}

/** How unevenly the plan's margins are shared: to the frame, or to the nearest block beside it. */
function balance(placed: readonly Rect[], blocks: Blocks, inner: Rect): number {
  const minX = Math.min(...placed.map((r) => r.x)), minY = Math.min(...placed.map((r) => r.y));
  const maxX = Math.max(...placed.map((r) => r.x + r.width)), maxY = Math.max(...placed.map((r) => r.y + r.height));
  const list = [blocks.title, blocks.scale, blocks.legend?.at ?? null].filter((r): r is Rect => r !== null);
  const right = Math.min(inner.x + inner.width, ...list.filter((r) => r.x >= maxX && r.y < maxY).map((r) => r.x)) - maxX;
  const below = Math.min(inner.y + inner.height, ...list.filter((r) => r.y >= maxY && r.x < maxX).map((r) => r.y)) - maxY;
  return Math.abs(minX - inner.x - right) + Math.abs(minY - inner.y - below);
}

/** Blocks over a plan that leaves them no room: the title block in the corner, the bar in the other. */
function overPlan(sheet: Sheet): Blocks {
  const width = TITLE_WIDTHS[0], edge = INNER + GAP;
  const height = titleHeight(sheet.titleBlock ?? {}, width);
  return {
    title: sheet.titleBlock ? { x: sheet.width - edge - width, y: sheet.height - edge - height, width, height } : null,
    scale: { x: edge, y: sheet.height - edge - 13.5, width: 80, height: 13.5 }, legend: null,
  };
}

function centred(level: Level, perMm: number, sheet: Sheet): Frame {
  const b = level.box;
  return { perMm, origin: [sheet.width / 2 - ((b.minX + b.maxX) / 2) * perMm, sheet.height / 2 - ((b.minY + b.maxY) / 2) * perMm] };
}


export type Chosen = { readonly frame: Frame; readonly blocks: Blocks; readonly hand: Hand; readonly ratio: number; /** What the legend holds. */ readonly entries: readonly Entry[] };

/**
 * The largest of the scales at which the plan and all blocks hold. Where none does the last is taken all the same: the blocks then
 * lie over the plan's corner, for the cautions are never left out.
 */
export function fitSheet(level: Level, { sheet, scales, paper, style, signs }: {
  readonly sheet: Sheet; readonly scales: readonly number[]; readonly paper: string; readonly style: LengthStyle; /** What the legend explains beside the furniture. */ readonly signs: (hand: Hand) => readonly Entry[];
}): Chosen {
  for (const ratio of scales) {
    const hand = sheetHand(1 / ratio, style);
    const pieces = legendOf(level.scene, level.venue, hand), more = signs(hand);
    // A larger plan is worth more than the sign of a socket, which every drawing office draws alike.
    for (const entries of [[...pieces, ...more], [...pieces, ...more.filter((e) => !("sign" in e && e.sign === "socket"))]]) {
      const fit = fitAt(1 / ratio, { level, hand, sheet, entries, note: scaleWords(ratio, paper, style) });
      if (fit) return { frame: fit.frame, blocks: fit.blocks, hand, ratio, entries };
    }
  }
  const ratio = scales.at(-1) ?? 100;
  return { frame: centred(level, 1 / ratio, sheet), blocks: overPlan(sheet), hand: sheetHand(1 / ratio, style), ratio, entries: [] };
}
