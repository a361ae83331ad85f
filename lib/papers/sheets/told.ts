import type { Brief } from "../../brief";
import type { Item, Layout, Scene, SceneId, Turnover } from "../../layout";
import { isRound } from "../../layout";
import { formatLength, formatSize, lengthStyle } from "../../measure";
import type { Venue } from "../../venue";
import { SCENE_NAMES } from "../words";

export type Told = { readonly venue: Venue; readonly brief: Brief; readonly layout: Layout };

export const roomName = (id: string, venue: Venue): string => venue.rooms.find((r) => r.id === id)?.name ?? id;

export const sizeOf = (item: Pick<Item, "shape">, venue: Venue): string => {
  const style = lengthStyle(venue, true);
  return isRound(item.shape) ? formatLength(item.shape.diameter, style) : formatSize(item.shape.width, item.shape.depth, style);
};

export const lengthOf = (mm: number, venue: Venue, unit = true): string => formatLength(Math.round(mm), lengthStyle(venue, unit));

/** Minutes after midnight of "HH:MM". */
const minutesOf = (time: string): number => Number(time.slice(0, 2)) * 60 + Number(time.slice(3, 5));
const two = (n: number): string => String(n).padStart(2, "0");

/** "HH:MM" moved by so many minutes, round the clock. */
export const clock = (time: string, minutes: number): string => {
  const m = (((minutesOf(time) + minutes) % 1440) + 1440) % 1440;
  return `${two(Math.floor(m / 60))}:${two(m % 60)}`;
};

const ORDER: readonly SceneId[] = ["ceremony", "drinks", "meal", "dancing"];

/** When the crew may begin on a turnover: when the next part of the day begins elsewhere, or else when the one before begins. */
export function beginOf(turnover: Turnover, { brief }: Told): string | undefined {
  const between = ORDER.slice(ORDER.indexOf(turnover.from) + 1, ORDER.indexOf(turnover.to));
  return between.map((s) => brief.times?.[s]).find((t) => t !== undefined);
}

export const timeOf = (scene: SceneId, { brief }: Told): string | undefined => brief.times?.[scene];

export const partName = (scene: Pick<Scene, "id">): string => SCENE_NAMES[scene.id];

/** Scenes in the order of the day. */
export const inOrder = (layout: Layout): readonly Scene[] => [...layout.scenes].sort((a, b) => ORDER.indexOf(a.id) - ORDER.indexOf(b.id));

/** The last part of the day before this one that used a room. */
export function before(layout: Layout, scene: Scene, room: string): Scene | undefined {
  const all = inOrder(layout);
  return all.slice(0, all.indexOf(scene)).findLast((s) => s.rooms.includes(room));
}

const same = (a: Item, b: Item): boolean =>
  a.room === b.room && JSON.stringify(a.from) === JSON.stringify(b.from) && Math.hypot(a.at[0] - b.at[0], a.at[1] - b.at[1]) <= 1 &&
  Math.abs((((a.angle - b.angle) % 360) + 540) % 360 - 180) <= 0.5;

/** Whether a piece has stood there since an earlier part of the day. */
export const standsAlready = (item: Item, scene: Scene, layout: Layout): boolean =>
  before(layout, scene, item.room)?.items.some((i) => same(i, item)) ?? false;

/** What has to be set for a part of the day. */
export const fresh = (scene: Scene, { layout }: Told): readonly Item[] =>
  scene.items.filter((i) => !standsAlready(i, scene, layout) && !("standing" in i.from && stood(i)));

/** A standing piece is there before the day begins; one that was moved is told by its own line. */
const stood = (item: Item): boolean => "standing" in item.from;
