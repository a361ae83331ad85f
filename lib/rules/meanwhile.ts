import type { Brief } from "../brief";
import { SCENES, type Scene } from "../layout";
import type { Venue } from "../venue";
import { siteFor, type Context, type Raw } from "./context";
import { peopleOf, postedFor } from "./people";
import { changes } from "./turnovers";

/** Where everyone is while a room is turned over, and how many those rooms hold, in the dry and in the wet. */
export type Meanwhile = { readonly room: string; readonly from: Scene; readonly to: Scene; readonly people: number; readonly rooms: readonly string[]; readonly holds: number; readonly wet: number;
  /** What all the hired rooms let for drinks hold that are not turned over at the time, and those of them under a roof; 0 where no part of the day lies between, to be held in them. */
  readonly could: number; readonly couldWet: number;
};

/**
 * For each room that changes between two parts of the day: the rooms its guests have meanwhile. They are those of the parts in
 * between; where nothing lies between, those of the next part and of the last. Rooms that are turned over at the same time are none.
 */
export function meanwhile(venue: Venue, scenes: readonly Scene[], brief: Brief): readonly Meanwhile[] {
  const all = changes(scenes, venue.drapes);
  const at = (s: Scene): number => SCENES.indexOf(s.id);
  return all.map(({ room, from, to }) => {
    const between = scenes.filter((s) => at(s) > at(from) && at(s) < at(to));
    const busy = new Set(all.filter((c) => at(c.from) < at(to) && at(c.to) > at(from)).map((c) => c.room));
    const rooms = [...new Set((between.length > 0 ? between : [to, from]).flatMap((s) => s.rooms))].filter((r) => !busy.has(r));
    const holds = (list: readonly string[]): number => {
      const load = postedFor(siteFor(venue, to.drapes), { id: "drinks", rooms: list }, brief);
      return Math.min(load.total, load.densest);
    };
    const roofed = (list: readonly string[]): readonly string[] => list.filter((r) => venue.rooms.find((v) => v.id === r)?.outdoor !== true);
    // A room outdoors that is turned over is left for the open.
    const outdoor = venue.rooms.find((v) => v.id === room)?.outdoor === true;
    const people = outdoor ? 0 : peopleOf(brief, from.id).guests;
    const pack = venue.packages.find((p) => p.id === brief.package);
    const free = between.length === 0 ? [] : venue.rooms.filter((r) => !busy.has(r.id) && (pack?.rooms.includes(r.id) ?? true) && r.uses.includes("drinks")).map((r) => r.id);
    const held = (list: readonly string[]): number => (list.length === 0 ? 0 : holds(list));
    return { room, from, to, people, rooms, could: held(free), couldWet: held(roofed(free)), holds: held(rooms), wet: held(roofed(rooms)) };
  });
}

/**
 * Everyone has another room while theirs is turned over, in the wet as well (common practice, no source). A must where the rooms that
 * are hired could give one and the layout does not use them; where they could not, no layout cures it, and it is a should that says what
 * they hold. The wet is judged on the day's wet-weather twin, by the rooms under a roof; a day that has none is told of it as a should.
 */
export function turnoverRoom(c: Context): readonly Raw[] {
  const brief = c.brief;
  if (!brief) return [];
  return meanwhile(c.venue, c.scenes.map((v) => v.scene), brief).flatMap((m): readonly Raw[] => {
    const could = c.wet ? m.couldWet : m.could;
    const base = { level: could >= m.people ? "must" as const : "should" as const, source: "common practice, no source", scene: m.to.id, items: [], limit: m.people, unit: "people" };
    const data = { room: m.room, from: m.from.id, to: m.to.id, people: m.people };
    if (c.wet) return m.wet < m.people ? [{ ...base, code: "turnover-room", measured: m.wet, data: { ...data, could, holds: m.wet, wet: true } }] : [];
    if (m.holds < m.people) return [{ ...base, code: "turnover-room", measured: m.holds, data: { ...data, could, holds: m.holds, wet: false } }];
    return m.wet < m.people && !c.layout.wet ? [{ ...base, code: "turnover-room", level: "should", measured: m.wet, data: { ...data, could: m.couldWet, holds: m.wet, wet: true } }] : [];
  });
}
