import type { Drawing, Mark } from "../drawing/display";
import { CAUTIONS } from "../words/cautions";
import { sayIn } from "../words/pages";
import type { PaperVoice } from "../words/papers";
import { paragraph, type Setting } from "./blocks";
import { content, element, type Content, type Element } from "./document";
import { flowThrough, type Region } from "./flow";
import { MARGIN, TOP, type Sheet } from "./frame";
import { shorten, wrap, wrapEvenly } from "./lines";
import { planFigure } from "./plans";
import { table, tableHeight } from "./table";
import { baseline, rule, STYLES, words, type Measure, type Style } from "./type";

export type Fact = { readonly title: string; readonly value: string };
export type CoverSpec = {
  readonly say: PaperVoice;
  readonly venue: string; readonly names: string; readonly day: string; readonly facts: readonly Fact[]; readonly lead: readonly string[];
  /** The plan made for a part of the page of this size, mm. */
  readonly plan: ((room: { readonly width: number; readonly height: number }) => Drawing) | undefined; readonly contents: readonly { readonly title: string; readonly page: number }[];
  readonly live?: { readonly url: string; readonly qr: readonly (readonly boolean[])[] };
};

const LEFT_WIDTH = 94;
const GUTTER = 12;
const BADGE = 8.6;
const QR_SIDE = 23;
/** Where the facts begin, mm from the top, and the air in their rows: the first that holds. */
const FACTS = 100, PADS = [1.7, 1.3, 1] as const;

/** Four squares of two woods, the grain crossing: the mark of the sheet. */
function badge(x: number, y: number): readonly Mark[] {
  const half = BADGE / 2;
  const cell = (cx: number, cy: number, ink: "round" | "oak"): readonly Mark[] => {
    const steps = [
      { op: "M", to: [cx, cy] }, { op: "L", to: [cx + half, cy] }, { op: "L", to: [cx + half, cy + half] }, { op: "L", to: [cx, cy + half] }, { op: "Z" },
    ] as const;
    const grain = [0.3, 0.6, 0.9, 1.2, 1.5].map((t): Mark => {
      const [a, b] = ink === "oak" ? [[cx + half * (t - 1), cy], [cx + half * t, cy + half]] as const : [[cx + half * t, cy], [cx + half * (t - 1), cy + half]] as const;
      return { kind: "path", steps: [{ op: "M", to: a }, { op: "L", to: b }], stroke: { ink: `g-${ink}`, weight: 0.13 } };
    });
    return [{ kind: "clip", steps, marks: [{ kind: "path", steps, fill: `v-${ink}` }, ...grain] }, { kind: "path", steps, stroke: { ink: "ink", weight: 0.25 } }];
  };
  return [...cell(x, y, "oak"), ...cell(x + half, y, "round"), ...cell(x, y + half, "round"), ...cell(x + half, y + half, "oak")];
}

/** The largest setting in which the names keep to their room; a text too long even for the least is given up to `shorten`. */
function setNames(names: string, width: number, measure: Measure): { readonly style: Style; readonly lines: readonly string[] } {
  const sizes = [12.4, 10.5, 8.8, 7.2, 6, 5];
  const tried = sizes.map((size) => {
    const style: Style = { font: { face: "serif", weight: "regular", italic: false }, size, leading: size * 1.04, ink: "ink" };
    return { style, lines: wrap(names, { style, width, measure }) };
  });
  const holds = (t: (typeof tried)[number]): boolean => t.lines.length * t.style.leading <= 40;
  // Each name on a line of its own, if it need not be small for that; else no word broken; else whatever holds.
  const own = tried.find((t) => holds(t) && t.style.size >= 8 && t.lines.length === names.split("\n").length);
  const fits = own ?? tried.find((t) => holds(t) && (t.style.size <= 7.2 || !brokenWord(names, t, width, measure)));
  if (fits) return fits;
  const least = tried.at(-1) ?? { style: STYLES.part, lines: [] };
  const room = Math.floor(40 / least.style.leading);
  const last = shorten(least.lines.slice(room - 1).join(" "), { style: least.style, width, measure });
  return { style: least.style, lines: [...least.lines.slice(0, room - 1), last] };
}

const brokenWord = (names: string, t: { readonly style: Style }, width: number, measure: Measure): boolean =>
  names.split(/\s+/).some((word) => measure(word, t.style.font, t.style.size) > width);

function qrMarks(qr: readonly (readonly boolean[])[], x: number, y: number): readonly Mark[] {
  const side = QR_SIDE / qr.length;
  // Each run of dark modules in a row is one rectangle, a hair higher than its row so that no seam shows between rows.
  const steps = qr.flatMap((row, r) => {
    const runs: [number, number][] = [];
    row.forEach((dark, c) => {
      const last = runs.at(-1);
      if (!dark) return;
      if (last && last[1] === c) last[1] = c + 1;
      else runs.push([c, c + 1]);
    });
    const top = y + r * side;
    return runs.flatMap(([a, b]) => [
      { op: "M", to: [x + a * side, top] }, { op: "L", to: [x + b * side, top] }, { op: "L", to: [x + b * side, top + side + 0.01] },
      { op: "L", to: [x + a * side, top + side + 0.01] }, { op: "Z" },
    ] as const);
  });
  return [{ kind: "path", steps, fill: "ink" }];
}

function leftColumn(spec: CoverSpec, sheet: Sheet, to: { readonly measure: Measure; readonly artifacts: Content[] }): readonly Element[] {
  const { measure, artifacts } = to;
  const { venue, day } = STYLES;
  artifacts.push(content(0, badge(MARGIN, TOP)));
  const venueName = wrap(spec.venue, { style: venue, width: LEFT_WIDTH - BADGE - 3, measure }).slice(0, 3);
  const venueTop = TOP + BADGE / 2 - venue.leading / 2;
  const venueMarks = venueName.map((line, i) => words(line, [MARGIN + BADGE + 3, baseline(venueTop + i * venue.leading, venue)], venue));
  const names = setNames(spec.names, LEFT_WIDTH, measure);
  const quiet: Style = { ...STYLES.body, ink: "ink-2" };
  const rows = spec.facts.map((f) => ({ cells: [{ text: f.title, style: quiet }, { text: f.value }] }));
  const columns = [{ title: "", width: 28 }, { title: "" }] as const;
  // Facts begin in the middle of the page; where they are many they are set closer, then all moves up.
  const floor = sheet.height - 16 - (spec.live ? QR_SIDE + 6 : 0);
  const tall = (pad: number): number => tableHeight({ bare: true, columns, rows, pad }, { flow: flowThrough(() => ({ page: 0, x: MARGIN, y: 0, width: LEFT_WIDTH, height: sheet.height })), measure });
  const pad = PADS.find((p) => FACTS + tall(p) <= floor) ?? PADS[2];
  const up = Math.min(84 - names.lines.length * names.style.leading - (TOP + BADGE + 6), Math.max(0, FACTS + tall(pad) - floor));
  const namesTop = 84 - up - names.lines.length * names.style.leading;
  const nameMarks = names.lines.map((line, i) => words(line, [MARGIN, baseline(namesTop + i * names.style.leading, names.style)], names.style));
  const dayMark = words(spec.day, [MARGIN, baseline(86.5 - up, day)], day);
  const region: Region = { page: 0, x: MARGIN, y: FACTS - up, width: LEFT_WIDTH, height: sheet.height - FACTS + up - 15 };
  const setting = { flow: flowThrough(() => region), measure, artifacts };
  artifacts.push(content(0, [rule([MARGIN, region.y], [MARGIN + LEFT_WIDTH, region.y])]));
  const facts = table({ bare: true, columns, rows, pad }, setting);
  const end = region.y + (setting.flow.used()[0] ?? 0);
  artifacts.push(content(0, [rule([MARGIN, end], [MARGIN + LEFT_WIDTH, end])]));
  return [
    element("P", [content(0, venueMarks)]), element("H1", [content(0, nameMarks)]), element("P", [content(0, [dayMark])]), facts,
    ...(spec.live ? liveBlock(spec.live, sheet, { ...to, say: spec.say }) : []),
  ];
}

/** An address without its scheme, broken after a stroke where it must be; the link behind it is whole. */
function addressLines(url: string, fit: { readonly style: Style; readonly width: number; readonly measure: Measure }): readonly string[] {
  const lines: string[] = [];
  for (const part of url.replace(/^https?:\/\//, "").split(/(?<=\/)/)) {
    const longer = (lines.at(-1) ?? "") + part;
    if (lines.length > 0 && fit.measure(longer, fit.style.font, fit.style.size) <= fit.width) lines[lines.length - 1] = longer;
    else lines.push(...wrap(part, fit));
  }
  return lines.length <= 4 ? lines : [...lines.slice(0, 3), "…"];
}

function liveBlock(live: NonNullable<CoverSpec["live"]>, sheet: Sheet, { measure, say }: { readonly measure: Measure; readonly say: PaperVoice }): readonly Element[] {
  const y = sheet.height - 16 - QR_SIDE;
  const x = MARGIN + QR_SIDE + 5;
  const s = STYLES.second;
  const width = LEFT_WIDTH - QR_SIDE - 5;
  const url = addressLines(live.url, { style: s, width, measure });
  const says = wrap(say("The live page, always the newest revision:"), { style: s, width, measure });
  const top = y + QR_SIDE - (url.length + says.length) * s.leading + 0.8;
  const urlTop = top + says.length * s.leading;
  const code = element("Figure", [content(0, qrMarks(live.qr, MARGIN, y))], {
    alt: say("A square code that leads to {url}", { url: live.url }), box: { page: 0, at: [MARGIN, y], width: QR_SIDE, height: QR_SIDE },
  });
  const line = (text: string, i: number, from: number): Mark => words(text, [x, baseline(from + i * s.leading, s)], s);
  const link = element("Link", [content(0, url.map((t, i) => line(t, i, urlTop)))], {
    leads: { to: live.url, says: say("The live page: {url}", { url: live.url }) }, box: { page: 0, at: [x, urlTop], width, height: url.length * s.leading },
  });
  return [code, element("P", [content(0, says.map((t, i) => line(t, i, top))), link])];
}

/** Entries in columns, read down then across, at the foot of the right-hand side. */
function contentsBlock(spec: CoverSpec, region: Region, to: { readonly measure: Measure; readonly artifacts: Content[] }): { readonly element: Element; readonly top: number } {
  const s = STYLES.second;
  const bold: Style = { ...s, font: { ...s.font, weight: "bold" }, ink: "ink" };
  const perColumn = Math.max(2, Math.ceil(spec.contents.length / 3));
  const columns = Math.ceil(spec.contents.length / perColumn);
  const line = s.leading + 1;
  const top = region.y + region.height - perColumn * line;
  to.artifacts.push(content(0, [rule([region.x, top - 3], [region.x + region.width, top - 3], 0.25)]));
  // Each column as wide as its longest title asks, what is left shared between them; where they ask too much, all alike.
  const asked = Array.from({ length: columns }, (_, c) =>
    Math.max(...spec.contents.slice(c * perColumn, (c + 1) * perColumn).map((e) => to.measure(e.title, s.font, s.size))) + 10);
  const spare = (region.width - asked.reduce((sum, w) => sum + w, 0)) / Math.max(1, columns - 1);
  const widths = spare >= 0 ? asked.map((w, c) => (c < columns - 1 ? w + spare : w)) : asked.map(() => region.width / columns);
  const items = spec.contents.map((entry, i) => {
    const column = Math.floor(i / perColumn);
    const width = widths[column] ?? 0;
    const x = region.x + widths.slice(0, column).reduce((sum, w) => sum + w, 0);
    const y = baseline(top + (i % perColumn) * line, s);
    const title = shorten(entry.title, { style: s, width: width - 9, measure: to.measure });
    return element("LI", [
      element("Lbl", [content(0, [words(String(entry.page + 1), [x, y], bold)])]),
      element("LBody", [element("Link", [content(0, [words(title, [x + 6, y], { ...s, ink: "ink" })])], {
        leads: { to: entry.page, says: spec.say("{title}, sheet {n}", { title: entry.title, n: entry.page + 1 }) },
        box: { page: 0, at: [x, top + (i % perColumn) * line], width: width - 3, height: s.leading },
      })]),
    ]);
  });
  return { element: element("L", items), top: top - 3 };
}

/** As many of the sentences as three lines hold; one sentence that is longer is shortened, and stands in full with the reasons. */
function leadOf(sentences: readonly string[], fit: { readonly style: Style; readonly width: number; readonly measure: Measure }): string {
  const room = 3;
  const fitting = sentences.reduce((kept, sentence) => {
    const longer = kept === "" ? sentence : `${kept} ${sentence}`;
    return kept === "" || wrap(longer, fit).length <= room ? longer : kept;
  }, "");
  const lines = wrap(fitting, fit);
  return lines.length <= room ? fitting : [...lines.slice(0, room - 1), shorten(lines.slice(room - 1).join(" "), fit)].join(" ");
}

/** The first page: who, when, what was chosen and what it costs; the plan of the meal small; what the pages hold. */
export function coverPage(spec: CoverSpec, sheet: Sheet, measure: Measure): { readonly elements: readonly Element[]; readonly artifacts: readonly Content[] } {
  const artifacts: Content[] = [];
  const left = leftColumn(spec, sheet, { measure, artifacts });
  const x = MARGIN + LEFT_WIDTH + GUTTER;
  const region: Region = { page: 0, x, y: TOP, width: sheet.width - MARGIN - x, height: sheet.height - TOP - 16 };
  const setting: Setting = { flow: flowThrough(() => region), measure };
  const leadText = leadOf(spec.lead, { style: STYLES.lead, width: region.width, measure });
  const lead = leadText === "" ? [] : [paragraph(leadText, STYLES.lead, setting)];
  const contents = contentsBlock(spec, region, { measure, artifacts });
  const cautionLines = wrapEvenly(sayIn(spec.say.language)(CAUTIONS), { style: STYLES.caution, width: region.width, measure });
  const cautionTop = contents.top - 6 - cautionLines.length * STYLES.caution.leading;
  const caution = element("P", [content(0, cautionLines.map((t, i) => words(t, [x, baseline(cautionTop + i * STYLES.caution.leading, STYLES.caution)], STYLES.caution)))]);
  const planTop = TOP + (setting.flow.used()[0] ?? 0) + 4;
  const room: Region = { page: 0, x, y: planTop, width: region.width, height: cautionTop - 4 - planTop };
  const figure = spec.plan ? [planFigure(spec.plan(room), room)] : [];
  return { elements: [...left, ...lead, ...figure, caution, contents.element], artifacts };
}
