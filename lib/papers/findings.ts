import type { Mark } from "../drawing/display";
import type { Finding, Layout, Level } from "../layout";
import type { Venue } from "../venue";
import { CAUTIONS } from "../words/cautions";
import { areaText, lengthText } from "../words/lengths";
import { sayIn } from "../words/pages";
import type { PaperVoice } from "../words/papers";
import { heading, paragraph, type Setting } from "./blocks";
import { content, element, type Content, type Element } from "./document";
import { wrap } from "./lines";
import { baseline, STYLES, words, type Style } from "./type";
import { LEVEL_NAMES, sayIfKnown, SCENE_NAMES } from "./words";
import { foundOf } from "../words/rain";

const INDENT = 6;
const SIDE = 2.6;
/** Millimetres up to which a finding is not broken. */
const WHOLE = 40;

/** Weight by shape: must a full square, should half, note open. */
function weightMark(level: Level, x: number, y: number): readonly Mark[] {
  const square = (w: number, fill: boolean): Mark => ({
    kind: "path", ...(fill ? { fill: "ink" } : { stroke: { ink: "ink", weight: 0.25 } }),
    steps: [{ op: "M", to: [x, y] }, { op: "L", to: [x + w, y] }, { op: "L", to: [x + w, y + SIDE] }, { op: "L", to: [x, y + SIDE] }, { op: "Z" }],
  });
  if (level === "must") return [square(SIDE, true)];
  return level === "should" ? [square(SIDE / 2, true), square(SIDE, false)] : [square(SIDE, false)];
}

type Told = { readonly layout: Layout; readonly venue: Venue; readonly say: PaperVoice };
type Here = Setting & { readonly artifacts: Content[] } & Pick<Told, "venue" | "say">;

/** A figure with its unit: a metric length stays in whole millimetres, as rules are written. */
function figure(n: number, unit: string | undefined, { venue, say }: Here): string {
  if (unit === "m2") return areaText(n, venue.lengths, venue.locale);
  if (unit === "mm" && venue.lengths === "imperial") return lengthText(n, venue.lengths, venue.locale);
  const plain = new Intl.NumberFormat(venue.locale, { maximumFractionDigits: 2, useGrouping: false }).format(n);
  return unit === undefined || unit === "" ? plain : `${plain} ${sayIfKnown(unit, say)}`;
}

function measuredWords({ measured, limit, unit }: Finding, to: Here): string {
  if (measured === undefined) return "";
  const found = figure(measured, unit, to);
  return limit === undefined ? to.say("measured {measured}", { measured: found }) : to.say("measured {measured}, limit {limit}", { measured: found, limit: figure(limit, unit, to) });
}

function findingBlock(f: Finding, to: Here): Element {
  const linesOf = (text: string, s: Style): readonly string[] => wrap(text, { style: s, width: to.flow.width() - INDENT, measure: to.measure });
  const under = [...(f.scene ? [to.say(SCENE_NAMES[f.scene])] : []), measuredWords(f, to), sayIn(to.say.language).given(f.source)].filter(Boolean).join("; ");
  const height = linesOf(f.text, STYLES.body).length * STYLES.body.leading + (under ? linesOf(under, STYLES.second).length * STYLES.second.leading : 0);
  const set = (text: string, s: Style): Content[] =>
    linesOf(text, s).map((line, i, all) => {
      const first = s === STYLES.body && i === 0;
      // A finding of a few lines stays whole; a long one keeps two lines together at its start.
      const keep = first && height <= WHOLE ? height - s.leading : i === 0 && all.length > 1 ? s.leading : 0;
      const spot = to.flow.take(s.leading, keep);
      if (first) to.artifacts.push(content(spot.page, weightMark(f.level, spot.x, spot.y + (s.leading - SIDE) / 2)));
      return content(spot.page, [words(line, [spot.x + INDENT, baseline(spot.y, s)], s)]);
    });
  const body = set(f.text, STYLES.body);
  const second = under ? set(under, STYLES.second) : [];
  return element("LI", [element("LBody", [...body, ...second])]);
}

function levelBlock(level: Level, findings: readonly Finding[], to: Here): readonly Element[] {
  // Two pieces of one table may give the same words about the same part of the day: they are said once.
  const same = (a: Finding, b: Finding): boolean => a.text === b.text && a.scene === b.scene && a.source === b.source;
  const mine = findings.filter((f, i) => f.level === level && findings.findIndex((g) => g.level === level && same(f, g)) === i);
  if (mine.length === 0) return [];
  const { title, says } = LEVEL_NAMES[level];
  to.flow.gap(5);
  const head = heading(to.say(title), STYLES.part, { ...to, tag: "H3", keep: 20 });
  const sum = paragraph(to.say(says, { n: mine.length }), STYLES.second, to);
  const items = mine.map((f) => {
    to.flow.gap(2.4);
    return findingBlock(f, to);
  });
  return [head, sum, element("L", items)];
}

/** What the check found, heaviest first, and the cautions in words no smaller than the rest. */
export function findingsSection({ layout, venue, say }: Told, setting: Setting & { readonly artifacts: Content[] }, unprinted = ""): readonly Element[] {
  const to: Here = { ...setting, venue, say };
  const said = [sayIn(say.language)(CAUTIONS), unprinted].filter(Boolean).map((text) => {
    to.flow.gap(3);
    return paragraph(text, STYLES.body, to);
  });
  const findings = foundOf(layout, sayIn(say.language));
  if (findings.length === 0) {
    to.flow.gap(3);
    return [...said, paragraph(say("The check of this layout gave no finding."), STYLES.body, to)];
  }
  return [...said, ...(["must", "should", "note"] as const).flatMap((level) => levelBlock(level, findings, to))];
}
