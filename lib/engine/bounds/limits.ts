import { area } from "../../geometry";
import type { Finding } from "../../layout";
import { exitsNeeded, ruleValues, type LoadKind } from "../../rules";
import { roomsFrom, siteOf, type Posted, type Room, type Site, type Venue } from "../../venue";

/** A figure that no layout passes, with what it rests on. */
export type Bound = {
  readonly code: string;
  readonly limit: number;
  readonly unit: string;
  readonly source: string;
  readonly data: NonNullable<Finding["data"]>;
};

const best = (posted: Posted | undefined, kinds: readonly LoadKind[]): number | null => {
  const all = kinds.flatMap((k) => { const n = posted?.[k]; return n === undefined ? [] : [n]; });
  return all.length === 0 ? null : Math.max(...all);
};

/**
 * Most people that one room may hold for a use, over the drapes given: the authority's figure, or the area's share where it gave
 * none, and one to 0.65 m2 in any case (7 net ft2, IBC 2018 1004.5.1). The whole outline is counted, columns too, so that the
 * bound errs on the generous side.
 */
export function roomBound(venue: Venue, room: Room, drape: string | null, kinds: readonly LoadKind[]): Bound {
  const site = siteOf(venue, drape === null ? [] : [drape]);
  const values = ruleValues(venue);
  const m2 = (site.rooms.get(room.id)?.area ?? area(room.outline)) / 1e6;
  const drawn: Bound["data"] = site.drapes.some((one) => one.grows === room.id) ? { drape: true } : {};
  const densest = Math.floor(m2 / values.densest + 1e-9);
  const dense: Bound = {
    code: "bound-densest", limit: densest, unit: "people", source: "IBC 2018 1004.5.1 (7 net ft2 a person)",
    data: { room: room.id, area: round(m2), each: round(values.densest), ...drawn },
  };
  const own = best(room.posted, kinds);
  const d = site.drapes[0];
  const lent = d ? best(venue.rooms.find((r) => r.id === d.from)?.posted, kinds) : null;
  const posted = d && d.grows === room.id ? (best(d.posted, kinds) ?? (own === null || lent === null ? null : own + lent)) : own;
  if (posted !== null) return posted > densest ? dense : {
    code: "bound-posted", limit: posted, unit: "people", source: "the authority's posted figure", data: { room: room.id, kind: kinds.join("/"), ...drawn },
  };
  const each = Math.min(...kinds.map((k) => values.factors[k]));
  const share = Math.floor(m2 / each + 1e-9);
  return share > densest ? dense : {
    code: "bound-area", limit: share, unit: "people", source: values.source.factors, data: { room: room.id, area: round(m2), each: round(each), ...drawn },
  };
}
export const round = (x: number): number => Math.round(x * 1000) / 1000;

/** Drapes that grow a room, and none. */
export const drapesOf = (venue: Venue, room: Room, wish: "any" | "yes" | "no" | undefined): readonly (string | null)[] =>
  [null, ...(wish === "no" ? [] : venue.drapes.filter((d) => d.grows === room.id).map((d) => d.id))];

/** The most generous of a room's bounds over the drapes that may be drawn. */
export function widestBound(venue: Venue, room: Room, wish: "any" | "yes" | "no" | undefined, kinds: readonly LoadKind[]): Bound {
  const all = drapesOf(venue, room, wish).map((d) => roomBound(venue, room, d, kinds));
  return all.reduce((a, b) => (b.limit > a.limit ? b : a));
}

/** Narrowest door on an accessible route, mm, less the millimetre let go; narrowest that a path of 305 mm passes. */
const WHEELS = 799, FOOT = 304;

/**
 * Ways out that can be reached from a room at all, by any rooms of the venue, whatever stands where: doors between rooms that both
 * or either names count as open. Wheels need 800 mm and no steps.
 */
export function exitsFrom(site: Site, room: string, walker: "foot" | "wheels"): readonly string[] {
  const passes = (g: { readonly width: number; readonly door: { readonly steps?: number } }): boolean =>
    walker === "wheels" ? g.width >= WHEELS && (g.door.steps ?? 0) === 0 : g.width >= FOOT;
  const gates = [...site.rooms.values()].flatMap((r) => r.gates).filter(passes);
  const reached = roomsFrom(site, [room], (at) => gates.map((g) => (g.room === at ? g.leadsTo : g.leadsTo === at ? g.room : null)));
  const exits = gates.filter((g) => g.door.exit && reached.has(g.room)).map((g) => `${g.room}/${g.door.id}`);
  return [...new Set(exits)].sort();
}

/** Ways out that this many people need: 2 from 50, 3 from 501, 4 from 1,001 (IBC 2018 tables 1006.2.1 and 1006.3.2). */
export const waysNeeded = (venue: Venue, people: number): number => exitsNeeded(people, ruleValues(venue).exitSteps);
