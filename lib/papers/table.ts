import type { Mark } from "../drawing/display";
import type { Setting } from "./blocks";
import { content, element, type Content, type Element } from "./document";
import type { Spot } from "./flow";
import { wrap } from "./lines";
import { baseline, rule, STYLES, words, type Style } from "./type";

export type ColumnSpec = {
  readonly title: string;
  /** Millimetres; the columns without a width share what is left. */
  readonly width?: number;
  readonly align?: "start" | "end";
};
export type Cell = { readonly text: string; readonly under?: string; readonly style?: Style; readonly underStyle?: Style };
export type RowSpec = {
  readonly cells: readonly Cell[];
  /** A firmer line above: the row sums up what stands over it. */
  readonly sum?: boolean;
  /** No line above at all. */
  readonly close?: boolean;
};
export type TableSpec = {
  readonly columns: readonly ColumnSpec[]; readonly rows: readonly RowSpec[];
  /** No row of column titles: the first column heads its row. */
  readonly bare?: boolean;
  /** How column titles are set; left out: as on a proposal. */
  readonly head?: Style;
  /** Clear space over and under the words of a row, mm. */
  readonly pad?: number;
};

const PAD = 1.7;
const GUTTER = 4;
/** A row higher than this may break between its lines; a lower one moves to the next page whole. */
const WHOLE = 45;

type Col = ColumnSpec & { readonly x: number; readonly w: number };
type Line = { readonly text: string; readonly style: Style };
/** Lines that stand at one height in all the cells of a row. */
type Band = { readonly height: number; readonly lines: readonly (Line | undefined)[] };

function columnsOf(spec: TableSpec, width: number): readonly Col[] {
  const fixed = spec.columns.reduce((sum, c) => sum + (c.width ?? 0), 0);
  const open = spec.columns.filter((c) => c.width === undefined).length;
  const share = open === 0 ? 0 : (width - fixed) / open;
  let x = 0;
  return spec.columns.map((c) => {
    const w = c.width ?? share;
    const col = { ...c, x, w };
    x += w;
    return col;
  });
}

function cellLines(cell: Cell, width: number, to: Setting): Line[] {
  const set = (text: string, style: Style): Line[] =>
    wrap(text, { style, width, measure: to.measure }).map((line) => ({ text: line, style }));
  const top = set(cell.text, cell.style ?? STYLES.body);
  return cell.under ? [...top, ...set(cell.under, cell.underStyle ?? STYLES.second)] : top;
}

/** A cell may use the room of the empty cells that follow it, up to the first that says something. */
function roomFor(row: RowSpec, i: number, cols: readonly Col[]): number {
  let width = cols[i]?.w ?? 0;
  if (cols[i]?.align === "end") return width - (i === 0 ? 0 : GUTTER);
  let last = i;
  while (last + 1 < cols.length && row.cells[last + 1]?.text === "") {
    last += 1;
    width += cols[last]?.w ?? 0;
  }
  return width - (last === cols.length - 1 ? 0 : GUTTER);
}

function bandsOf(row: RowSpec, cols: readonly Col[], to: Setting): readonly Band[] {
  const cells = row.cells.map((cell, i) => (cell.text === "" ? [] : cellLines(cell, roomFor(row, i, cols), to)));
  const count = Math.max(...cells.map((c) => c.length));
  return Array.from({ length: count }, (_, i) => {
    const lines = cells.map((c) => c[i]);
    return { lines, height: Math.max(...lines.map((l) => l?.style.leading ?? 0)) };
  });
}

const place = (line: Line, col: Col, spot: Spot, height: number): Mark => {
  const at = spot.x + (col.align === "end" ? col.x + col.w : col.x);
  // Lines of different size in one band share the band's own baseline.
  return words(col.align === "end" ? line.text.trimEnd() : line.text, [at, baseline(spot.y + (height - line.style.leading) / 2, line.style)], line.style, col.align ?? "start");
};

function headMarks(cols: readonly Col[], spot: Spot, s: Style): { readonly cells: readonly Mark[][]; readonly line: Mark } {
  const cells = cols.map((col) => [words(
    col.title, [spot.x + (col.align === "end" ? col.x + col.w : col.x), baseline(spot.y, s)], s, col.align ?? "start",
  )]);
  const y = spot.y + s.leading + PAD;
  return { cells, line: rule([spot.x, y], [spot.x + spot.width, y], 0.25) };
}

/** Height of the rows of a table, were they set in one region as wide as this one. */
export function tableHeight(spec: TableSpec, to: Setting): number {
  const cols = columnsOf(spec, to.flow.width());
  const rows = spec.rows.map((row) => bandsOf(row, cols, to).reduce((sum, b) => sum + b.height, 0) + (row.close ? 1 : 2) * (spec.pad ?? PAD));
  return rows.reduce((sum, h) => sum + h, spec.bare ? 0 : (spec.head ?? STYLES.columnHead).leading + PAD);
}

/**
 * A table that goes on through the regions of the flow. Its column titles stand once in the tree and are painted again,
 * as ornament, over each later part. Rules are ornament too and go to `artifacts`.
 */
export function table(spec: TableSpec, to: Setting & { readonly artifacts: Content[] }): Element {
  const cols = columnsOf(spec, to.flow.width());
  const pad = spec.pad ?? PAD;
  const headStyle = spec.head ?? STYLES.columnHead;
  const headHeight = spec.bare ? 0 : headStyle.leading + PAD;
  let region = -1;
  let lastRow = -1;
  let head: Element | undefined;
  const openRegion = (firstHeight: number): void => {
    if (to.flow.left() < headHeight + firstHeight && region !== -1) to.flow.turn();
    if (to.flow.region() === region) return;
    const spot = to.flow.take(headHeight, firstHeight);
    region = to.flow.region();
    if (spec.bare) return;
    const marks = headMarks(cols, spot, headStyle);
    to.artifacts.push(content(spot.page, [marks.line]));
    if (head) to.artifacts.push(content(spot.page, marks.cells.flat()));
    else head = element("THead", [element("TR", marks.cells.map((c) => element("TH", [content(spot.page, c)], { scope: "Column" })))]);
  };
  const rows = spec.rows.map((row, r) => {
    const bands = bandsOf(row, cols, to);
    const total = bands.reduce((sum, b) => sum + b.height, 0) + 2 * pad;
    const first = total <= WHOLE ? total : (bands[0]?.height ?? 0) * 2 + pad;
    openRegion(first);
    const parts: Content[][] = cols.map(() => []);
    const top = to.flow.take(row.close ? 0 : pad, first - pad);
    region = to.flow.region();
    // The first row of a region has the line of the titles over it, or the region's edge.
    const follows = r > 0 && (region === lastRow || !spec.bare);
    lastRow = region;
    if (follows && !row.close) to.artifacts.push(content(top.page, [row.sum ? rule([top.x, top.y], [top.x + top.width, top.y], 0.25) : rule([top.x, top.y], [top.x + top.width, top.y], 0.13, "ink-3")]));
    bands.forEach((band) => {
      if (to.flow.left() < band.height) openRegion(band.height);
      const spot = to.flow.take(band.height);
      band.lines.forEach((line, i) => {
        const col = cols[i];
        if (line && col && line.text !== "") parts[i]?.push(content(spot.page, [place(line, col, spot, band.height)]));
      });
    });
    if (to.flow.left() >= pad) to.flow.take(pad);
    return element("TR", parts.map((p, i) => (i === 0 ? element("TH", p, { scope: "Row" }) : element("TD", p))));
  });
  return element("Table", head ? [head, element("TBody", rows)] : [element("TBody", rows)]);
}
