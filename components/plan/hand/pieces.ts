import { isFixed, nameOf, sayTurn, sayWalls, type HandView } from "@/lib/hand";
import { isRound, standsAs, type Item, type Scene, type SceneId } from "@/lib/layout";
import { formatLength, formatSize, lengthStyle } from "@/lib/measure";
import type { Venue } from "@/lib/venue";
import { handVoiceOf, type HandVoice } from "@/lib/words/hand";

export const sceneIn = (view: HandView, id: SceneId): Scene | undefined => view.layout.scenes.find((s) => s.id === id);
export const roomName = (venue: Venue, id: string): string => venue.rooms.find((r) => r.id === id)?.name ?? id;

export function sizeWords(venue: Venue, item: Item): string {
  const style = lengthStyle(venue, true);
  return isRound(item.shape) ? handVoiceOf(venue.locale)("round, {size}", { size: formatLength(item.shape.diameter, style) }) : formatSize(item.shape.width, item.shape.depth, style);
}

/** What tells pieces of one name apart: their place in the list. */
export function namesIn(scene: Scene, say: HandVoice): ReadonlyMap<string, string> {
  const count = new Map<string, number>(), all = new Map<string, number>();
  for (const i of scene.items) all.set(nameOf(i), (all.get(nameOf(i)) ?? 0) + 1);
  return new Map(scene.items.map((i) => {
    const name = nameOf(i), n = (count.get(name) ?? 0) + 1;
    count.set(name, n);
    return [i.id, (all.get(name) ?? 0) > 1 ? say("{name} ({n} of {all})", { name, n, all: all.get(name) ?? n }) : name] as const;
  }));
}

const number = (label: string): number => Number(/(\d+)\s*$/.exec(label)?.[1] ?? Infinity);

/** Pieces by room in the order in which a list tells them: tables by number, then the rest by name, chairs of rows last. */
export function byRoom(scene: Scene): readonly { readonly room: string; readonly items: readonly Item[] }[] {
  const rank = (i: Item): number => (i.kind === "chair" ? 2 : i.kind === "table" && Number.isFinite(number(i.label)) ? 0 : 1);
  const rooms = [...new Set([...scene.rooms, ...scene.items.map((i) => i.room)])];
  return rooms.map((room) => ({
    room, items: scene.items.filter((i) => i.room === room).sort((a, b) => rank(a) - rank(b) || (rank(a) === 0 ? number(a.label) - number(b.label) : 0) || (nameOf(a) < nameOf(b) ? -1 : nameOf(a) > nameOf(b) ? 1 : 0)),
  })).filter((r) => r.items.length > 0);
}

/** Where a piece stands, how it is turned, and what else there is to know of it, in one line. */
export function pieceWords(view: HandView, scene: Scene, item: Item): string {
  const { venue } = view, say = handVoiceOf(venue.locale);
  const places = item.kind === "chair" || item.seats.length === 0 ? [] : [say("{n} places", { n: item.seats.length })];
  const turned = isRound(item.shape) || item.angle === 0 ? [] : [say("turned to {angle}", { angle: sayTurn(item.angle) })];
  return say("{size}. In the {room}, {where}.", { size: [sizeWords(venue, item), ...places].join(", "), room: roomName(venue, item.room), where: [sayWalls(venue, scene, item), ...turned].join(", ") });
}

/** In how many parts of the day it stands as it stands here. */
export const alikeIn = (view: HandView, item: Item): number => view.layout.scenes.filter((s) => s.items.some((i) => standsAs(i, item))).length;
export const staysPut = (view: HandView, item: Item): boolean => isFixed(view.venue, item);
