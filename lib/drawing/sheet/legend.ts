import { isRound, type Scene } from "../../layout";
import { formatLength } from "../../measure";
import type { Venue } from "../../venue";
import { planVoice } from "../../words/plan";
import { VENEERS, type Layer, type Mark, type Veneer } from "../display";
import { shorten, textWidth, type Type } from "../metrics";
import { box, closed, line, placedSteps } from "../paths";
import { drawHatched, socketSign } from "../plan/fittings";
import type { Level } from "../plan/level";
import { grain, parquet } from "../plan/grain";
import type { Rect } from "../plan/ground";
import type { Hand } from "../plan/hand";
import { seatsOf } from "../plan/chairs";
import { panelsOf } from "../plan/pieces";
import { FAMILY_NAMES, veneerOf } from "../plan/veneer";

/** A line or hatching that a legend explains. */
export type Sign = "was" | "now" | "ways" | "sight" | "keep-clear" | "socket";
export type Entry = ({ readonly veneer: Veneer } | { readonly sign: Sign }) & { readonly name: string; readonly says: string };

const SIGNS = {
  was: { name: "Was", says: "before" }, now: { name: "Is now", says: "changed" }, ways: { name: "Ways out", says: "on foot" },
  sight: { name: "Lines of sight", says: "a bar: hidden" }, "keep-clear": { name: "Keep clear", says: "nothing here" }, socket: { name: "Socket", says: "on its wall" },
} as const satisfies Readonly<Record<Sign, { readonly name: string; readonly says: string }>>;

/** What a level's drawing shows beside its furniture, in the order of the legend. */
export function signsOf(level: Level, { hand, layers, changed }: { readonly hand: Hand; readonly layers: readonly Layer[]; readonly changed: boolean }): readonly Entry[] {
  const list: readonly (readonly [Sign, boolean])[] = [
    ["socket", hand.detail === "full" && level.rooms.some((r) => r.sockets.length > 0)], ["keep-clear", level.rooms.some((r) => r.keepClear.length > 0)],
    ["ways", layers.includes("ways")], ["sight", layers.includes("sight")], ["was", changed], ["now", changed],
  ];
  const say = planVoice(hand.lengths.locale);
  return list.flatMap(([sign, there]) => (there ? [{ sign, name: say(SIGNS[sign].name), says: say(SIGNS[sign].says) }] : []));
}

function drawSign(sign: Sign, at: Rect, hand: Hand): readonly Mark[] {
  const y = at.y + at.height / 2, right = at.x + at.width, outline = box(at.x, at.y, at.width, at.height);
  const along = line([at.x, y], [right, y]);
  switch (sign) {
    case "was": return [{ kind: "path", steps: outline, stroke: { ink: "ink-2", weight: hand.mid, dash: [1.5, 0.9] } }];
    case "now": return [{ kind: "path", steps: box(at.x + 0.3, at.y + 0.3, at.width - 0.6, at.height - 0.6), stroke: { ink: "accent", weight: hand.heavy * 1.2 } }];
    case "ways": return [
      { kind: "path", steps: line([at.x, y], [right - 1.7, y]), stroke: { ink: "ink-2", weight: hand.mid, dash: [1.3, 0.9], cap: "round" } },
      { kind: "path", steps: closed([[right, y], [right - 1.7, y - 0.77], [right - 1.7, y + 0.77]]), fill: "ink" },
    ];
    case "sight": return [
      { kind: "path", steps: along, stroke: { ink: "ink-3", weight: hand.fine, dash: [3.2, 0.8, 0.5, 0.8] } },
      { kind: "path", steps: line([right, y - 1.1], [right, y + 1.1]), stroke: { ink: "ink", weight: hand.leaf } },
    ];
    case "keep-clear": return drawHatched([[at.x, at.y], [right, at.y], [right, at.y + at.height], [at.x, at.y + at.height]], hand);
    case "socket": return socketSign([at.x + 0.4, y], 0, hand);
  }
}

/** The families that stand in a scene, each with what is brought out of it; families that do not occur are left out. */
export function legendOf(scene: Scene, venue: Venue, hand: Hand): readonly Entry[] {
  const families = new Map<Veneer, Scene["items"][number][]>();
  for (const item of scene.items) {
    const v = veneerOf(item, venue);
    if (v !== null && v !== "chair") families.set(v, [...(families.get(v) ?? []), item]);
  }
  const say = planVoice(hand.lengths.locale);
  const chairs = scene.items.flatMap(seatsOf).filter((s) => s.place === "chair").length;
  return VENEERS.flatMap((veneer): readonly Entry[] => {
    if (veneer === "chair") return chairs > 0 ? [{ veneer, name: say(FAMILY_NAMES.chair), says: String(chairs) }] : [];
    const items = families.get(veneer);
    if (!items) return [];
    const name = say(FAMILY_NAMES[veneer]);
    if (veneer === "floor") {
      const panels = items.reduce((n, i) => { const p = panelsOf(i, venue); return n + p.across * p.down; }, 0);
      const one = items[0];
      const side = one && !isRound(one.shape) ? one.shape.width / panelsOf(one, venue).across : 0;
      return [{ veneer, name, says: say("{n} panels of {side}", { n: panels, side: formatLength(side, hand.lengths) }) }];
    }
    if (veneer === "round") {
      const places = items.map((i) => i.seats.length);
      const lo = Math.min(...places), hi = Math.max(...places);
      return [{ veneer, name, says: hi === 0 ? String(items.length) : say("{n}, of {places} places", { n: items.length, places: lo === hi ? hi : `${lo}–${hi}` }) }];
    }
    if (veneer === "long") {
      const high = items.filter((i) => i.kind === "cocktail-table").length;
      const low = items.length - high;
      return [{ veneer, name: low === 0 ? say("High tables") : name, says: low === 0 ? String(high) : high === 0 ? String(low) : say("{n}, and {high} high", { n: low, high }) }];
    }
    if (veneer === "bar") return [{ veneer, name, says: say("{n} units", { n: items.reduce((n, i) => n + ("stock" in i.from ? (i.from.count ?? 1) : 1), 0) }) }];
    const standing = items.filter((i) => "standing" in i.from).length;
    return [{ veneer, name, says: standing === items.length ? say("{n}, as they stand", { n: items.length }) : say("{n} pieces", { n: items.length }) }];
  });
}

export const ENTRY = { width: 20, height: 11, sample: 18, band: 4.3 } as const;

export function drawLegend(entries: readonly Entry[], at: Rect, columns: number, hand: Hand): readonly Mark[] {
  const name: Type = { size: 2.2, face: "sans", weight: "bold" };
  const says: Type = { size: 2.05, face: "sans" };
  return entries.flatMap((e, i): readonly Mark[] => {
    const x = at.x + (i % columns) * ENTRY.width, y = at.y + Math.floor(i / columns) * ENTRY.height;
    const sample: Rect = { x, y, width: ENTRY.sample, height: ENTRY.band };
    return [{
      kind: "group", role: "note", label: `${e.name}: ${e.says}`, marks: [
        ...("sign" in e ? drawSign(e.sign, sample, hand) : drawSample(e.veneer, sample, hand)),
        { kind: "text", at: [x, y + ENTRY.band + 3], text: shorten(e.name, ENTRY.width - 1, name), ...name, ink: "ink" },
        { kind: "text", at: [x, y + ENTRY.band + 5.7], text: shorten(e.says, ENTRY.width - 1, says), ...says, ink: "ink-2" },
      ],
    }];
  });
}

/** The signs of a small plan in one line, each with its word, as many as fit; sockets and kept floor explain themselves there. */
export function smallKey(entries: readonly Entry[], strip: Rect, hand: Hand): readonly Mark[] {
  const type: Type = { size: hand.note, face: "sans" };
  const marks: Mark[] = [];
  let x = strip.x;
  for (const e of entries) {
    if (!("sign" in e) || e.sign === "socket" || e.sign === "keep-clear") continue;
    const wide = hand.note * 2.6, word = textWidth(e.name, type);
    if (x + wide + 1 + word > strip.x + strip.width) break;
    const tall = hand.note * 0.8, base = strip.y + strip.height;
    marks.push(...drawSign(e.sign, { x, y: base - tall + 0.2, width: wide, height: tall }, hand), { kind: "text", at: [x + wide + 1, base], text: e.name, ...type, ink: "ink-2" });
    x += wide + word + hand.note * 1.6;
  }
  return marks;
}

function drawSample(veneer: Veneer, at: Rect, hand: Hand): readonly Mark[] {
  const blank = { width: at.width, depth: at.height };
  const laid = veneer === "floor" ? parquet({ ...blank, across: 4, down: 1 })
    : veneer === "round" ? { fine: burst(blank), joints: [] } : grain(veneer, { blank, k: 1, places: 0, from: 0 });
  const middle = [at.x + at.width / 2, at.y + at.height / 2] as const;
  const outline = box(at.x, at.y, at.width, at.height);
  return [
    { kind: "path", steps: outline, fill: `v-${veneer}` },
    { kind: "path", steps: placedSteps(laid.fine, middle, 0), stroke: { ink: `g-${veneer}`, weight: hand.grain } },
    { kind: "path", steps: placedSteps(laid.joints, middle, 0), stroke: { ink: `g-${veneer}`, weight: hand.grain * 1.7 } },
    { kind: "path", steps: outline, stroke: { ink: "ink", weight: 0.25 } },
  ];
}

/** A slice through the sunburst, for a sample that is longer than it is deep. */
function burst({ width, depth }: { readonly width: number; readonly depth: number }): ReturnType<typeof grain>["fine"] {
  const w = width / 2, d = depth / 2;
  const ends: (readonly [number, number])[] = [];
  for (let i = 0; i <= 8; i++) ends.push([-w + (i * width) / 8, -d], [-w + (i * width) / 8, d]);
  for (let i = 1; i < 4; i++) ends.push([-w, -d + (i * depth) / 4], [w, -d + (i * depth) / 4]);
  return ends.flatMap(([x, y]) => [{ op: "M", to: [x * 0.12, y * 0.12] } as const, { op: "L", to: [x, y] } as const]);
}
