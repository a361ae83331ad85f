import { SCENES, type Scene, type SceneId } from "../layout";
import type { Venue } from "../venue";
import { chairsAmong, chairsOwned } from "./chairs";
import type { Context, Raw } from "./context";
import { turnoversOf, whoForbids } from "./turnovers";

/** Chairs wanted in a room by a later part of the day that stand in other rooms during an earlier one: the venue owns too few for both. */
export type Fetched = { readonly from: Scene; readonly to: Scene; readonly room: string; readonly chairs: number; /** Wanted at once if none were carried, and owned. */ readonly wanted: number; readonly owned: number };

const at = (id: SceneId): number => SCENES.indexOf(id);

const chairsIn = (venue: Venue, scene: Scene, room: string): number => chairsAmong(venue, scene.items.filter((i) => i.room === room));

/**
 * Which chairs must be carried from room to room through the day. A room stands laid from the start for the first part of the day that uses
 * it, and as the last left it; where that and what an earlier part wants elsewhere are more chairs than there are, those that are too
 * many come over between the two. A part's own rooms are the stock rule's to judge.
 */
export function fetchedChairs(venue: Venue, scenes: readonly Scene[]): readonly Fetched[] {
  const owned = chairsOwned(venue);
  const ordered = [...scenes].sort((a, b) => at(a.id) - at(b.id)), rooms = [...new Set(ordered.flatMap((s) => s.rooms))];
  const late = new Map<string, number>(), out: Fetched[] = [];
  for (const [k, from] of ordered.entries()) {
    const own = from.rooms.reduce((n, r) => n + chairsIn(venue, from, r), 0);
    const others = rooms.filter((r) => !from.rooms.includes(r)).map((room) => {
      const before = ordered.slice(0, k).reverse().find((s) => s.rooms.includes(room)), next = ordered.slice(k + 1).find((s) => s.rooms.includes(room));
      const left = before && chairsIn(venue, before, room), laid = next && Math.max(0, chairsIn(venue, next, room) - (late.get(room) ?? 0));
      return { room, to: before ? undefined : next, chairs: left === undefined ? (laid ?? 0) : Math.min(left, laid ?? left) };
    });
    const wanted = own + others.reduce((n, o) => n + o.chairs, 0);
    let short = Math.min(own, wanted - owned);
    for (const { room, to, chairs } of others) {
      const n = Math.min(short, chairs);
      if (!to || n <= 0) continue;
      short -= n;
      late.set(room, (late.get(room) ?? 0) + n);
      out.push({ from, to, room, chairs: n, wanted, owned });
    }
  }
  return out;
}

/** Chairs that two rooms want at once are carried over by a turnover, where package and brief allow one (common practice, no source). */
export function chairsBetween(c: Context): readonly Raw[] {
  const forbids = whoForbids(c);
  return fetchedChairs(c.venue, c.scenes.map((v) => v.scene)).flatMap(({ from, to, room, chairs, wanted, owned }): readonly Raw[] => {
    const base = { level: "must" as const, scene: to.id, items: [], measured: wanted, limit: owned, unit: "chairs" };
    const data = { room, from: from.id, to: to.id, chairs, used: wanted, owned };
    return [
      ...(turnoversOf(c, { room, from, to }).some((t) => t.minutes > 0) ? [] : [{ ...base, code: "chairs-twice", source: "the venue's stock", data }]),
      ...(c.brief && forbids ? [{ ...base, code: "chairs-not-allowed", source: `the ${forbids}`, data: { ...data, by: forbids } }] : []),
    ];
  });
}
