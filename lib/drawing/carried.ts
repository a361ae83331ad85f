import type { Layout, SceneId } from "../layout";
import { lengthStyle } from "../measure";
import type { Venue } from "../venue";
import type { Drawing, Mark } from "./display";
import { planVoice } from "../words/plan";
import { box } from "./paths";
import { textWidth } from "./metrics";
import { inWords } from "./plan/describe";
import { createGround, type Rect } from "./plan/ground";
import { carriedHand, toPaper, type Frame, type Hand } from "./plan/hand";
import { coverOf, drawLevel, levelOf, type Level } from "./plan/level";
import { datumOf, fromHere, ordinatesOf, type Ordinates } from "./plan/ordinates";
import { squared } from "./plan/square";
import { CARRIED_SCALES } from "./scales";
import { barFor, northPoint, scaleBar } from "./sheet/blocks";

export type CarriedOptions = {
  readonly rooms: readonly string[];
  /** The part of the page that the plan may fill, mm. */
  readonly width: number; readonly height: number;
  /** The room whose pieces are measured from a corner; left out: none is. The plan is turned until this room stands square. */
  readonly measured?: string;
  /** Rooms whose corner is marked, since distances are told from it. */
  readonly marked?: readonly string[];
  /** "A4": the paper that the scale holds for. */
  readonly paper: string;
  /** No larger than 1 : this: several plans on one page are drawn at one scale. */
  readonly from?: number;
  /** Ways out with their widths. */
  readonly ways?: boolean;
};

const BAND = 12;
const NONE: Ordinates = { marks: [], lines: [], takes: [], under: [] };

type Try = { readonly level: Level; readonly hand: Hand; readonly options: CarriedOptions };

const ordinates = ({ level, hand, options }: Try, frame: Frame, drawn = false): Ordinates => {
  const room = level.rooms.find((r) => r.id === options.measured);
  return room ? ordinatesOf(level, room, { frame, hand, drawn }) : NONE;
};

type Fitted = { readonly frame: Frame; readonly foot: Rect };

const meets = (a: Rect, b: Rect): boolean => a.x < b.x + b.width && b.x < a.x + a.width && a.y < b.y + b.height && b.y < a.y + a.height;

/** The plan in the middle, or to a side, so that the scale bar finds a lower corner free. */
function fitAt(tried: Try, ratio: number): Fitted | null {
  const { level, hand, options } = tried;
  const { width, height } = options;
  const loose: Frame = { perMm: 1 / ratio, origin: [0, 0] };
  const held: readonly Rect[] = [...coverOf(level, loose), ...ordinates(tried, loose).takes];
  const e = {
    minX: Math.min(...held.map((r) => r.x)), minY: Math.min(...held.map((r) => r.y)),
    maxX: Math.max(...held.map((r) => r.x + r.width)), maxY: Math.max(...held.map((r) => r.y + r.height)),
  };
  const wide = barFor(1 / ratio, hand.lengths, 30).length + textWidth(`1\u2009:\u2009${ratio} on ${options.paper}`, { size: hand.note, face: "sans" }) + 27;
  const slack = { x: width - (e.maxX - e.minX), y: height - (e.maxY - e.minY) };
  if (slack.x < 0 || slack.y < 0) return null;
  for (const fy of slack.y >= BAND ? [0.5, 0] : [0]) for (const fx of [0.5, 0, 1]) {
    const frame: Frame = { ...loose, origin: [slack.x * fx - e.minX, slack.y * fy - e.minY] };
    const [ox, oy] = frame.origin;
    const corner = [0, width - wide].map((x): Rect => ({ x, y: height - BAND, width: wide, height: BAND })).find((r) => !held.some((t) => meets({ ...t, x: t.x + ox, y: t.y + oy }, r)));
    if (corner) return { frame, foot: corner };
  }
  return null;
}

/**
 * The plan of a sheet that is carried about, at the largest round scale that its part of the page holds (ISO 5455): no word under
 * 3.5 mm, distances from one corner along two walls, the scale bar beneath. Throws where the layout has no such scene.
 */
export function composeCarried(given: Venue, layout: Pick<Layout, "scenes">, sceneId: SceneId, options: CarriedOptions): Drawing & { readonly ratio: number } {
  const asked = layout.scenes.find((s) => s.id === sceneId);
  if (!asked) throw new Error(`no scene ${sceneId} in the layout: ${layout.scenes.map((s) => s.id).join(", ")}`);
  const { venue, scene } = squared(given, asked, options.measured ?? options.rooms[0]);
  const style = lengthStyle(venue);
  const level = levelOf(venue, scene, venue.rooms.filter((r) => options.rooms.includes(r.id)));
  const { width, height } = options;
  let ratio: number = CARRIED_SCALES.at(-1) ?? 100;
  let fitted: Fitted | null = null;
  for (const tried of CARRIED_SCALES.filter((s) => s >= (options.from ?? 0))) {
    fitted = fitAt({ level, hand: carriedHand(1 / tried, style), options }, tried);
    if (fitted) { ratio = tried; break; }
  }
  const hand = carriedHand(1 / ratio, style);
  const { frame, foot: at } = fitted ?? { frame: { perMm: 1 / ratio, origin: [width / 2, height / 2] as const }, foot: { x: 0, y: height - BAND, width, height: BAND } };
  const ground = createGround(width, height, 0.4);
  ground.takeRect(at);
  const corners = level.rooms.filter((r) => r.id !== options.measured && (options.marked ?? []).includes(r.id)).flatMap((r) => { const at = datumOf(r); return at ? [toPaper(frame, at)] : []; });
  for (const [x, y] of corners) ground.takeRect({ x: x - 3, y: y - 3, width: 6, height: 6 });
  const strings = ordinates({ level, hand, options }, frame, true);
  const [fabric, ...rest] = drawLevel(level, { frame, hand, ground, strings, ways: options.ways ?? true, findings: [] });
  const marks: Mark[] = [
    ...(fabric ? [fabric] : []), ...(strings.under.length > 0 ? [{ kind: "group", role: "decoration", marks: strings.under } as const] : []), ...rest,
    ...(corners.length > 0 ? [{ kind: "group", role: "decoration", layer: "dimensions", marks: corners.flatMap(fromHere) } as const] : []), foot({ venue, ratio, hand, options, at }),
  ];
  return {
    width, height, perMetre: 1000 / ratio, origin: frame.origin, ratio, title: planVoice(style.locale)("{venue}: {part}. Plan at 1:{ratio}.", { venue: venue.name, part: scene.title, ratio }),
    words: inWords({ ...venue, rooms: level.rooms }, { ...scene, items: level.items }, style), marks: [{ kind: "path", steps: box(0, 0, width, height), fill: "leaf" }, ...marks],
  };
}

function foot({ venue, ratio, hand, options, at }: { readonly venue: Venue; readonly ratio: number; readonly hand: Hand; readonly options: CarriedOptions; readonly at: Rect }): Mark {
  const bar = barFor(1 / ratio, hand.lengths, 30);
  const { y } = at;
  const x = at.x + (venue.north === undefined ? 0 : 14);
  const note = `1\u2009:\u2009${ratio} on ${options.paper}`;
  return {
    kind: "group", id: "scale", role: "note", label: `Scale ${note}`, marks: [
      ...(venue.north === undefined ? [] : northPoint([at.x + 5.4, y + 7.6], 3.6, venue.north, 3.5)),
      { kind: "text", at: [x, y + 6.4], text: note, size: hand.note, face: "sans", ink: "ink" },
      ...scaleBar(bar, [x + textWidth(note, { size: hand.note, face: "sans" }) + 6, y + 3.4], { lengths: hand.lengths, note: hand.note, weight: hand.fine }),
    ],
  };
}
