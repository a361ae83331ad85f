import type { Scene, Turnover } from "../../layout";
import type { Fetched } from "../../rules";
import { siteOf, type Venue } from "../../venue";
import { handled, type Handled } from "./pieces";
import { CREW, ratesOf, WALK } from "./rates";
import { timetable } from "./schedule";
import { carrying, emptying, pair, round, together } from "./turnovers";
import { walkFrom } from "./walk";

/** `day`: the turnovers of the rooms themselves. `guests`: who leave the first room. */
type Ask = { readonly day: readonly Turnover[]; readonly guests: number };

/**
 * The day's turnovers with chairs carried from the rooms of one part of the day to a room that is laid for a later one: of those that no
 * room of their own wants again the ones with the shortest walk, which no one puts away then. Minutes as `turnoverPlans` counts them,
 * from the last guest's leaving.
 */
export function withFetched(venue: Venue, { from, to, room, chairs }: Fetched, { day, guests }: Ask): readonly Turnover[] {
  const site = siteOf(venue, [...new Set([...from.drapes, ...to.drapes])]), rates = ratesOf(venue), crew = venue.crew?.size ?? CREW;
  const kinds = new Set(venue.stock.filter((s) => s.kind === "chair").map((s) => `stock ${s.id}`)), usual = [...kinds][0] ?? "stock chair";
  const chairsOf = (scene: Scene, rooms: readonly string[]): readonly Handled[] => handled(scene, new Set(rooms), usual).filter((h) => h.family === "chair" && kinds.has(h.kind));
  const cleared = new Map(day.filter((t) => t.from === from.id).map((t) => [t.room, new Set(t.moves.filter((m) => m.act === "away").map((m) => m.item))] as const));
  const free = chairsOf(from, from.rooms).filter((h) => cleared.get(h.room)?.has(h.id) ?? true);
  const walks = new Map(free.map((h) => [h, walkFrom(site, h)] as const));
  const seconds = (a: Handled, b: Handled): number => walks.get(a)?.(b)?.seconds ?? Math.hypot(a.at[0] - b.at[0], a.at[1] - b.at[1]) / 1000 / WALK;
  const trips = pair(free, chairsOf(to, [room]), seconds).map(([a, b]) => ({ a, b, seconds: seconds(a, b) })).sort((a, b) => a.seconds - b.seconds).slice(0, chairs);
  const leaving = emptying(site, free[0]?.room ?? room, guests);
  const jobs = trips.map((t) => ({ minutes: carrying(t.a, t.seconds, rates), move: { item: t.a.id, to: t.b.id, act: "shift" as const } }));
  const { timed, ends } = timetable([jobs], { crew, from: leaving });
  const taken = new Set(trips.map((t) => t.a.id));
  return [
    ...day.map((t) => (t.from === from.id ? { ...t, moves: t.moves.filter((m) => m.act !== "away" || !taken.has(m.item)) } : t)),
    { from: from.id, to: to.id, room, crew, minutes: Math.max(1, Math.ceil(round(ends))), leaving: round(leaving), moves: together(timed) },
  ];
}
