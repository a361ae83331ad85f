import { contains, type Point } from "../../geometry";
import { footprintPolygon, type Finding, type Item, type Layout, type SceneId } from "../../layout";
import type { Mark, Paper } from "../display";
import { capHeight } from "../metrics";
import { closed, line } from "../paths";
import type { Ground } from "./ground";
import { toPaper, type Frame, type Hand } from "./hand";
import { beside, firstFree } from "./lettering";

/** A finding with the letter that it bears on the plan and in any list beside it. */
export type Lettered = { readonly letter: string; readonly finding: Finding };

const RANK = { must: 0, should: 1, note: 2 } as const;

/** The findings of a part of the day that have a place on its plan, weightiest first, lettered from A; at most 26 of them. */
export function letterFindings(layout: Pick<Layout, "findings">, sceneId: SceneId): readonly Lettered[] {
  return layout.findings
    .filter((f) => (f.scene === undefined || f.scene === sceneId) && (f.at !== undefined || f.items.length > 0))
    .map((finding, i) => ({ finding, i })).sort((a, b) => RANK[a.finding.level] - RANK[b.finding.level] || a.i - b.i).slice(0, 26)
    .map(({ finding }, i) => ({ letter: String.fromCharCode(65 + i), finding }));
}

function placeOf(f: Finding, items: readonly Item[]): Point | null {
  if (f.at) return f.at;
  const first = items.find((i) => f.items.includes(i.id));
  return first ? first.at : null;
}

/** Where a leader that comes from a lozenge meets the piece it speaks of: it does not run over the words on it. */
function meeting(f: Finding, items: readonly Item[], { from, to, frame }: { readonly from: Paper; readonly to: Paper; readonly frame: Frame }): Paper {
  const piece = f.at ? undefined : items.find((i) => f.items.includes(i.id));
  if (!piece) return to;
  const outline = footprintPolygon(piece).map((p) => toPaper(frame, p));
  for (let k = 0; k <= 40; k++) {
    const at: Paper = [from[0] + ((to[0] - from[0]) * k) / 40, from[1] + ((to[1] - from[1]) * k) / 40];
    if (contains(outline, at)) return at;
  }
  return to;
}

/** A lozenge with a letter beside the place that a finding speaks of: full for a must, twice lined for a should, open for a note. */
export function drawFindings(list: readonly Lettered[], items: readonly Item[], { frame, hand, ground }: { readonly frame: Frame; readonly hand: Hand; readonly ground: Ground }): readonly Mark[] {
  const r = hand.note * 0.95;
  return list.flatMap(({ letter, finding }): readonly Mark[] => {
    const place = placeOf(finding, items);
    if (!place) return [];
    const p = toPaper(frame, place);
    const spot = firstFree(ground, beside({ x: p[0] - 0.4, y: p[1] - 0.4, width: 0.8, height: 0.8 }, { width: 2.5 * r, height: 2.5 * r }, 60));
    const at: Paper = spot ? [spot.at.x + 1.25 * r, spot.at.y + 1.25 * r] : p;
    const lozenge = (k: number) => closed([[at[0], at[1] - k], [at[0] + k, at[1]], [at[0], at[1] + k], [at[0] - k, at[1]]]);
    const full = finding.level === "must";
    const far = Math.hypot(at[0] - p[0], at[1] - p[1]) > r + 1;
    return [{
      kind: "group", role: "note", label: `Finding ${letter}, ${finding.level}: ${finding.text}`, marks: [
        ...(far ? [{ kind: "path", steps: line(meeting(finding, items, { from: at, to: p, frame }), at), stroke: { ink: "ink-3", weight: hand.fine } } as const] : []),
        { kind: "path", steps: lozenge(r * 1.25), fill: full ? "ink" : "leaf", stroke: { ink: "ink", weight: hand.mid } },
        ...(finding.level === "should" ? [{ kind: "path", steps: lozenge(r * 0.98), stroke: { ink: "ink", weight: hand.fine } } as const] : []),
        { kind: "text", at: [at[0], at[1] + (hand.note * 0.9 * capHeight({ face: "sans" })) / 2], text: letter, size: Math.max(hand.note * 0.9, 2.05), face: "sans", weight: "bold", anchor: "middle", ink: full ? "leaf" : "ink" },
      ],
    }];
  });
}
