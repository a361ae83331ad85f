import { centroid, distance, type Point } from "../../geometry";
import type { Gate, Site } from "../../venue";
import { doorSeconds, WALK } from "./rates";

/** A spot in a room, or just outside one of its doors. */
export type Stop = { readonly room: string; readonly at: Point };
export type Walk = { readonly seconds: number; readonly metres: number };
export type Store = Stop & {
  readonly id: string;
  /** The door that the store lies behind, when it is one. */
  readonly door: number | null;
  /** Where the store comes from: named by the venue, or taken for want of it. */
  readonly why: "named" | "back-of-house" | "farthest";
};

const straight = (a: Point, b: Point): Walk => ({ metres: distance(a, b) / 1000, seconds: distance(a, b) / 1000 / WALK });

type Pair = { readonly a: Gate; readonly b: Gate };
/** Doors between two rooms, one entry for each pair of gates that face each other. */
function pairs(site: Site): readonly Pair[] {
  const gates = new Map<string, Gate>();
  for (const r of site.rooms.values()) for (const g of r.gates) gates.set(`${g.room} ${g.door.id}`, g);
  return site.passages.flatMap((p) => {
    const a = gates.get(`${p.rooms[0]} ${p.doors[0]}`), b = gates.get(`${p.rooms[1]} ${p.doors[1]}`);
    return a && b ? [{ a, b }] : [];
  });
}

/**
 * The quickest walk from one stop to another through the venue's doors (straight lines within a room, time lost at each door);
 * null when no door leads there. Never quicker for a narrower door. Dijkstra over the doors, a handful of nodes.
 */
export function walkFrom(site: Site, from: Stop): (to: Stop) => Walk | null {
  const doors = pairs(site).flatMap(({ a, b }) => [{ here: a, there: b }, { here: b, there: a }]);
  const best = new Map<number, Walk>();
  const done = new Set<number>();
  doors.forEach((d, i) => {
    if (d.here.room !== from.room) return;
    const w = straight(from.at, d.here.at);
    best.set(i, passed(w, d.here, d.there));
  });
  for (;;) {
    let next = -1;
    for (const [i, w] of best) if (!done.has(i) && (next < 0 || w.seconds < (best.get(next)?.seconds ?? Infinity))) next = i;
    const door = doors[next], so = best.get(next);
    if (!door || !so) break;
    done.add(next);
    doors.forEach((d, i) => {
      if (done.has(i) || d.here.room !== door.there.room) return;
      const leg = straight(door.there.at, d.here.at);
      const w = passed({ metres: so.metres + leg.metres, seconds: so.seconds + leg.seconds }, d.here, d.there);
      if (w.seconds < (best.get(i)?.seconds ?? Infinity)) best.set(i, w);
    });
  }
  return (to) => {
    let found: Walk | null = to.room === from.room ? straight(from.at, to.at) : null;
    doors.forEach((d, i) => {
      const w = best.get(i);
      if (!w || d.there.room !== to.room) return;
      const leg = straight(d.there.at, to.at);
      const whole = { metres: w.metres + leg.metres, seconds: w.seconds + leg.seconds };
      if (!found || whole.seconds < found.seconds) found = whole;
    });
    return found;
  };
}

const passed = (w: Walk, here: Gate, there: Gate): Walk => ({
  metres: w.metres + distance(here.at, there.at) / 1000,
  seconds: w.seconds + distance(here.at, there.at) / 1000 / WALK + doorSeconds(Math.min(here.width, there.width)),
});

/**
 * Where pieces go that are not wanted, seen from a room: the venue's store (a room, or a back-of-house door by its id); else the
 * nearest back-of-house door; else, for want of both, the farthest door or room, which `why` tells.
 */
export function storeFor(site: Site, room: string): Store | null {
  const rooms = [...site.rooms.values()];
  const here = site.rooms.get(room);
  if (!here) return null;
  const start: Stop = { room, at: centroid(here.outline) };
  const walk = walkFrom(site, start);
  const gates = rooms.flatMap((r) => r.gates);
  const asStore = (g: Gate, why: Store["why"]): Store => ({ id: g.door.id, room: g.room, at: g.at, door: g.width, why });
  const named = site.venue.store;
  if (named !== undefined) {
    const target = site.rooms.get(named);
    if (target && walk({ room: named, at: centroid(target.outline) })) return { id: named, room: named, at: centroid(target.outline), door: null, why: "named" };
    const door = gates.filter((g) => g.door.id === named).map((g) => ({ g, w: walk({ room: g.room, at: g.at }) }));
    const near = nearest(door);
    if (near) return asStore(near, "named");
  }
  const back = gates.filter((g) => g.door.leads === "back-of-house").map((g) => ({ g, w: walk({ room: g.room, at: g.at }) }));
  const near = nearest(back);
  if (near) return asStore(near, "back-of-house");
  const reached = gates.map((g) => ({ g, w: walk({ room: g.room, at: g.at }) })).filter((x) => x.w !== null);
  const far = reached.sort((x, y) => (y.w?.metres ?? 0) - (x.w?.metres ?? 0) || (x.g.door.id < y.g.door.id ? -1 : 1))[0];
  return far ? asStore(far.g, "farthest") : { id: room, ...start, door: null, why: "farthest" };
}

const nearest = (list: readonly { readonly g: Gate; readonly w: Walk | null }[]): Gate | null =>
  list.filter((x) => x.w !== null).sort((x, y) => (x.w?.seconds ?? 0) - (y.w?.seconds ?? 0) || (x.g.door.id < y.g.door.id ? -1 : 1))[0]?.g ?? null;
