import type { Layout, Scene, SceneId } from "../layout";
import { lengthStyle, type LengthStyle } from "../measure";
import type { Room, Venue } from "../venue";
import type { Drawing, Mark, Paper } from "./display";
import { planVoice } from "../words/plan";
import { changesOf, type Change } from "./changes";
import { box } from "./paths";
import { textWidth } from "./metrics";
import { inWords } from "./plan/describe";
import type { Strings } from "./plan/dimensions";
import { letterFindings, type Lettered } from "./plan/findings";
import { createGround, type Rect } from "./plan/ground";
import { PX, screenHand, type Frame, type Hand } from "./plan/hand";
import { coverOf, drawLevel, layerWords, levelOf, stringsOf, type Level, type LineLayer } from "./plan/level";
import { spread } from "./plan/spread";
import { SCALES } from "./scales";
import { barFor, northPoint, scaleBar, scaleWords, titleBlock } from "./sheet/blocks";
import { fitSheet, FRAME, INNER, type Sheet } from "./sheet/fit";
import { drawLegend, signsOf, smallKey, type Entry } from "./sheet/legend";

export type PlanOptions = {
  /** A full sheet of paper; left out: a small plan for a page. */
  readonly sheet?: Sheet;
  /** 1 : this; "fit" takes the largest of `SCALES` that the sheet holds. A small plan always fits its width. */
  readonly scale?: "fit" | number;
  /** Only these rooms; left out: on a sheet the whole level, in a small plan the rooms of the scene where anything stands. */
  readonly rooms?: readonly string[];
  /** Width at which a small plan will be shown, CSS pixels: no word of it is under 11 px then. */
  readonly pixelWidth?: number;
  /** Mark findings on the plan. */
  readonly findings?: boolean;
  /** False: a small plan without its double frame, for a page that draws one about it. */
  readonly frame?: boolean;
  /** Lines drawn over the plan, each a layer of its own: ways out from every table and row, lines of sight to the couple or the front. */
  readonly layers?: readonly LineLayer[];
  /** The layout of an earlier revision: what changed since is drawn on the plan and told in its words. */
  readonly was?: Pick<Layout, "scenes">;
  /** On a small plan: the ways out by name and width, and dimension strings about it. A sheet always has both. */
  readonly ways?: boolean;
  readonly dimensions?: boolean;
};

/** The rooms of every level on which something of the scene stands that was brought there; of one that nothing was, where most stands. */
function roomsOnSheet(venue: Venue, scene: Scene, only: readonly string[] | undefined): readonly Room[] {
  if (only) return venue.rooms.filter((r) => only.includes(r.id));
  const weight = new Map<number, number>();
  for (const r of venue.rooms) {
    const items = scene.items.filter((i) => i.room === r.id && !("standing" in i.from));
    const seats = items.reduce((n, i) => n + i.seats.length + 1, 0);
    weight.set(r.level, (weight.get(r.level) ?? 0) + seats + (scene.rooms.includes(r.id) ? 0.5 : 0));
  }
  const used = [...weight].filter(([, w]) => w >= 1).map(([l]) => l);
  const most = [...weight].sort((a, b) => b[1] - a[1] || a[0] - b[0])[0]?.[0] ?? 0;
  return venue.rooms.filter((r) => (used.length > 0 ? used : [most]).includes(r.level));
}

function roomsInSmall(venue: Venue, scene: Scene, only: readonly string[] | undefined): readonly Room[] {
  const wanted = only ?? scene.rooms.filter((id) => scene.items.some((i) => i.room === id && (i.seats.length > 0 || i.kind === "chair" || i.kind === "dance-floor" || i.kind === "bar")));
  return venue.rooms.filter((r) => (wanted.length > 0 ? wanted : scene.rooms).includes(r.id));
}

/** The rooms laid out, levels apart, with the findings and changes that are marked on them. */
function laidOut({ venue, scene, findings, changes }: Work, rooms: readonly Room[], ratio: number): { readonly level: Level; readonly findings: readonly Lettered[]; readonly changes: readonly Change[]; /** Where the venue's origin falls for each room, if levels were moved. */ readonly origins: (perMm: number, origin: Paper) => Drawing["origins"] } {
  const laid = spread(venue, scene, rooms, ratio);
  return {
    level: levelOf(laid.venue, laid.scene, laid.rooms, laid.storeys),
    findings: findings.map((f) => ({ ...f, finding: laid.finding(f.finding) })),
    changes: changes.map((c) => ({ ...c, was: c.was.map(laid.item), now: c.now.map(laid.item) })),
    origins: (perMm, origin) => (laid.storeys.length === 0 ? undefined
      : Object.fromEntries(laid.rooms.map((r) => { const [x, y] = laid.shift(r.id); return [r.id, [origin[0] + x * perMm, origin[1] + y * perMm] as const]; }))),
  };
}

type Work = { readonly venue: Venue; readonly scene: Scene; readonly options: PlanOptions; readonly style: LengthStyle; readonly findings: readonly Lettered[]; readonly changes: readonly Change[] };
const said = ({ findings, changes, style }: Work): readonly string[] =>
  [...changes.map((c) => planVoice(style.locale)("Change {n}: {text}", { n: c.number, text: c.text })),
    ...findings.map(({ letter, finding }) => planVoice(style.locale)("Finding {letter}, {level}: {text}", { letter, level: planVoice(style.locale)(finding.level), text: finding.text }))];

const doubleFrame = (width: number, height: number, outer: number, inner: number, weights: { readonly heavy: number; readonly fine: number }): readonly Mark[] => [
  { kind: "path", steps: box(outer, outer, width - 2 * outer, height - 2 * outer), stroke: { ink: "ink", weight: weights.heavy } },
  { kind: "path", steps: box(inner, inner, width - 2 * inner, height - 2 * inner), stroke: { ink: "ink", weight: weights.fine } },
];

const withOrigins = (origins: Drawing["origins"]): Pick<Drawing, "origins"> => (origins ? { origins } : {});

function composeSheet(work: Work, asked: Sheet): Drawing {
  const { venue, scene, options, style } = work, say = planVoice(style.locale);
  const sheet: Sheet = { ...asked, titleBlock: asked.titleBlock && { ...asked.titleBlock, locale: style.locale } };
  const { level, findings, changes, origins } = laidOut(work, roomsOnSheet(venue, scene, options.rooms), sheet.width / sheet.height);
  const scales: readonly number[] = typeof options.scale === "number" ? [options.scale] : SCALES;
  const paper = sheetName(sheet) ?? say("this sheet");
  const signs = (h: Hand): readonly Entry[] => signsOf(level, { hand: h, layers: options.layers ?? [], changed: changes.length > 0 });
  const { frame, blocks, hand, ratio, entries } = fitSheet(level, { sheet, scales, paper, style, signs });
  const ground = createGround(sheet.width, sheet.height, 0.4);
  for (const r of [blocks.title, blocks.scale, blocks.legend?.at]) if (r) ground.takeRect({ x: r.x - 1, y: r.y - 1, width: r.width + 2, height: r.height + 2 });
  for (const r of [{ x: 0, y: 0, width: sheet.width, height: INNER + 0.6 }, { x: 0, y: sheet.height - INNER - 0.6, width: sheet.width, height: INNER + 0.6 },
    { x: 0, y: 0, width: INNER + 0.6, height: sheet.height }, { x: sheet.width - INNER - 0.6, y: 0, width: INNER + 0.6, height: sheet.height }]) ground.takeRect(r);
  const plan = drawLevel(level, { frame, hand, ground, strings: stringsOf(level, frame, hand), ways: true, findings, changes, layers: options.layers ?? [] });
  const marks: Mark[] = [{ kind: "path", steps: box(0, 0, sheet.width, sheet.height), fill: "paper" }, ...plan];
  if (blocks.legend) marks.push({ kind: "group", id: "legend", role: "legend", label: say("Legend"), marks: drawLegend(entries, blocks.legend.at, blocks.legend.columns, hand) });
  marks.push(scaleGroup(blocks.scale, { ratio, paper, venue, style, hand }));
  if (blocks.title && sheet.titleBlock) marks.push({ kind: "group", id: "title", role: "note", label: say("Title block"), marks: titleBlock(venue.name, sheet.titleBlock, blocks.title) });
  if (sheet.frame) marks.push({ kind: "group", role: "decoration", marks: doubleFrame(sheet.width, sheet.height, FRAME, INNER, { heavy: 0.5, fine: 0.13 }) });
  return {
    width: sheet.width, height: sheet.height, perMetre: 1000 / ratio, origin: frame.origin, ...withOrigins(origins(1 / ratio, frame.origin)),
    title: say("{venue}: {part}. Plan at 1:{ratio}.", { venue: venue.name, part: scene.title, ratio }), words: [...inWords(venue, scene, style), ...layerWords(plan), ...said(work)], marks,
  };
}

function scaleGroup(at: Rect, { ratio, paper, venue, style, hand }: { readonly ratio: number; readonly paper: string; readonly venue: Venue; readonly style: LengthStyle; readonly hand: Hand }): Mark {
  const bar = barFor(1 / ratio, style, 30);
  const note = scaleWords(ratio, paper, style);
  const north = venue.north !== undefined;
  const x = at.x + (north ? 15 : 0);
  return {
    kind: "group", id: "scale", role: "note", label: note, marks: [
      ...(venue.north === undefined ? [] : northPoint([at.x + 5.4, at.y + 8], 4.4, venue.north)),
      { kind: "text", at: [x, at.y + 3], text: note, size: 2.3, face: "sans", ink: "ink-2" },
      ...scaleBar(bar, [x, at.y + 5.4], { lengths: style, note: 2.3, weight: hand.fine }),
    ],
  };
}

/** What a paper of this size is called; undefined for one that has no name. */
function sheetName({ width, height }: Sheet): string | undefined {
  const near = (a: number, b: number): boolean => Math.abs(Math.max(width, height) - a) < 1 && Math.abs(Math.min(width, height) - b) < 1;
  return near(297, 210) ? "A4" : near(420, 297) ? "A3" : near(279.4, 215.9) ? "Letter" : near(355.6, 215.9) ? "Legal" : near(431.8, 279.4) ? "Tabloid" : undefined;
}

function composeSmall(work: Work): Drawing {
  const { venue, scene, options, style } = work;
  const { level, findings, changes, origins } = laidOut(work, roomsInSmall(venue, scene, options.rooms), 1.6);
  const width = (options.pixelWidth ?? 360) * PX;
  const framed = options.frame !== false;
  const edge = 2 * PX, fine = 6 * PX, pad = framed ? fine + 7 * PX : 2 * PX;
  const b = level.box;
  const round = options.dimensions ? marginsOf(level, { perMm: (width - 2 * pad) / Math.max(1, b.maxX - b.minX), style }) : NO_MARGINS;
  const perMm = (width - 2 * pad - round.left - round.right) / Math.max(1, b.maxX - b.minX);
  const tallest = width * 1.35;
  const scaled = Math.min(perMm, (tallest - 2 * pad - 8) / Math.max(1, b.maxY - b.minY));
  const hand = screenHand(scaled, style);
  const band = hand.note * 1.25;
  const planHeight = (b.maxY - b.minY) * scaled;
  const height = planHeight + 2 * pad + band + round.top + round.bottom;
  const frame: Frame = { perMm: scaled, origin: [(width + round.left - round.right) / 2 - ((b.minX + b.maxX) / 2) * scaled, pad + round.top - b.minY * scaled] };
  const ground = createGround(width, height, 0.25);
  const strings: Strings = options.dimensions ? stringsOf(level, frame, hand) : { marks: [], takes: [], lines: [] };
  const bar = barFor(scaled, style, width * 0.16);
  const foot = height - pad - band;
  // The strip along the foot is the bar's and the key's, and no word crosses the frame.
  const strip: readonly Mark[] = [
    ...smallBar(bar, [width - pad, height - pad + PX], hand),
    ...smallKey(signsOf(level, { hand, layers: options.layers ?? [], changed: changes.length > 0 }), { x: pad, y: foot, width: width - 2 * pad - bar.length - 4 * hand.note, height: band }, hand),
  ];
  ground.takeRect({ x: 0, y: foot, width, height: height - foot });
  for (const r of [{ x: 0, y: 0, width, height: fine }, { x: 0, y: 0, width: fine, height }, { x: width - fine, y: 0, width: fine, height }]) if (framed) ground.takeRect(r);
  const marks = drawLevel(level, { frame, hand, ground, strings, ways: options.ways ?? false, findings, changes, layers: options.layers ?? [] });
  return {
    width, height, perMetre: scaled * 1000, origin: frame.origin, ...withOrigins(origins(scaled, frame.origin)),
    title: `${venue.name}: ${scene.title}. ${level.rooms.map((r) => r.name).join(", ")}.`,
    words: [...inWords(venue, scene, style), ...layerWords(marks), ...said(work)],
    marks: [
      { kind: "path", steps: box(0, 0, width, height), fill: "paper" },
      ...marks,
      { kind: "group", id: "scale", role: "decoration", marks: strip },
      ...(framed ? [{ kind: "group", role: "decoration", marks: doubleFrame(width, height, edge, fine, { heavy: hand.mid, fine: hand.fine }) } as const] : []),
    ],
  };
}

type Margins = { readonly left: number; readonly right: number; readonly top: number; readonly bottom: number };
const NO_MARGINS: Margins = { left: 0, right: 0, top: 0, bottom: 0 };

/** What the dimension strings take beyond the plan itself on each side, mm of paper. They keep their size at every scale, or nearly. */
function marginsOf(level: Level, { perMm, style }: { readonly perMm: number; readonly style: LengthStyle }): Margins {
  const loose: Frame = { perMm, origin: [0, 0] };
  const rects = [...coverOf(level, loose), ...stringsOf(level, loose, screenHand(perMm, style)).takes];
  const { minX, minY, maxX, maxY } = level.box;
  return {
    left: Math.max(0, minX * perMm - Math.min(...rects.map((r) => r.x))), right: Math.max(0, Math.max(...rects.map((r) => r.x + r.width)) - maxX * perMm),
    top: Math.max(0, minY * perMm - Math.min(...rects.map((r) => r.y))), bottom: Math.max(0, Math.max(...rects.map((r) => r.y + r.height)) - maxY * perMm),
  };
}

/** A small plan's bar has its ends figured only, beside it: figures under it would not fit at 11 px. `corner` is its lower right. */
function smallBar(bar: ReturnType<typeof barFor>, corner: readonly [number, number], hand: Hand): readonly Mark[] {
  const h = 4.5 * PX;
  const type = { size: hand.note, face: "sans" } as const;
  const texts = scaleBar(bar, [0, 0], { lengths: hand.lengths, note: hand.note, weight: hand.fine }).filter((m) => m.kind === "text");
  const end = texts.at(-1)?.text ?? "";
  const x = corner[0] - textWidth(end, type) - 1 - bar.length, y = corner[1] - hand.note * 0.36 - h / 2;
  const shapes = scaleBar(bar, [x, y], { lengths: hand.lengths, note: h / 0.85, weight: hand.fine }).filter((m) => m.kind !== "text");
  return [
    { kind: "text", at: [x - 1, corner[1]], text: "0", ...type, anchor: "end", ink: "ink-2" }, ...shapes,
    { kind: "text", at: [x + bar.length + 1, corner[1]], text: end, ...type, ink: "ink-2" },
  ];
}

/**
 * The plan of one part of the day, to scale: a full sheet with its title block, or a small plan for a page.
 * Throws where the layout has no such scene: that is the caller's slip.
 */
export function composePlan(venue: Venue, layout: Pick<Layout, "scenes" | "findings">, sceneId: SceneId, options: PlanOptions = {}): Drawing {
  const scene = layout.scenes.find((s) => s.id === sceneId);
  if (!scene) throw new Error(`no scene ${sceneId} in the layout: ${layout.scenes.map((s) => s.id).join(", ")}`);
  const style = lengthStyle(venue);
  const work: Work = {
    venue, scene, options, style, findings: options.findings ? letterFindings(layout, sceneId) : [],
    changes: options.was ? changesOf(venue, options.was.scenes.find((s) => s.id === sceneId), scene) : [],
  };
  return options.sheet ? composeSheet(work, options.sheet) : composeSmall(work);
}

/**
 * Two revisions of one part of the day on one plan: the plan as it is now, with what was dashed, what is outlined, and each change
 * numbered. The drawing's words begin with the plan's own and hold the changes by the same numbers.
 */
export function compare(venue: Venue, { was, now }: { readonly was: Pick<Layout, "scenes">; readonly now: Pick<Layout, "scenes" | "findings"> }, sceneId: SceneId, options: PlanOptions = {}): { readonly drawing: Drawing; readonly changes: readonly Change[] } {
  const scene = now.scenes.find((s) => s.id === sceneId);
  return {
    drawing: composePlan(venue, now, sceneId, { ...options, was }),
    changes: scene ? changesOf(venue, was.scenes.find((s) => s.id === sceneId), scene) : [],
  };
}
