import type { Brief } from "../../lib/brief";
import type { Finding } from "../../lib/layout";
import type { Venue } from "../../lib/venue";

/**
 * A second opinion on every "impossible", from the two files alone: nothing of the engine or its rules is used here, only the
 * figures as their sources print them. It answers what is wrong with a proof, or null where the proof holds.
 */
type Room = Venue["rooms"][number];
type Scene = "ceremony" | "drinks" | "meal" | "dancing";
const FT2 = 0.09290304;
/** IBC 2018 Table 1004.5 and 1004.5.1; the guides' floor-space factors for the second profile. */
const FACTORS = {
  "model-code": { rows: 7 * FT2, tables: 15 * FT2, standing: 5 * FT2 }, "uk-guide": { rows: 0.65, tables: 1, standing: 0.3 }, house: { rows: 7 * FT2, tables: 15 * FT2, standing: 5 * FT2 },
} as const;
const DENSEST = 7 * FT2;

function shoelace(p: readonly (readonly [number, number])[]): number {
  let twice = 0;
  for (let i = 0; i < p.length; i++) {
    const a = p[i] ?? [0, 0], b = p[(i + 1) % p.length] ?? [0, 0];
    twice += a[0] * b[1] - b[0] * a[1];
  }
  return Math.abs(twice) / 2e6;
}

const guestsOf = (b: Brief): number => b.guests.adults + b.guests.children;
const peopleAt = (b: Brief, scene: Scene): number => (scene === "ceremony" ? (b.guests.ceremony ?? guestsOf(b)) : scene === "dancing" ? (b.guests.evening ?? guestsOf(b)) : guestsOf(b));
const useOf = (scene: Scene): Room["uses"][number] => (scene === "ceremony" ? "ceremony" : scene === "dancing" ? "dancing" : "dining");

/** Rooms that the brief and the package leave for a part of the day. */
function roomsFor(v: Venue, b: Brief, scene: Scene): readonly Room[] {
  const pack = v.packages.find((p) => p.id === b.package);
  const named = scene === "ceremony" ? b.ceremony.room : scene === "meal" ? b.meal.room : "any";
  return v.rooms.filter((r) => pack?.rooms.includes(r.id) && r.uses.includes(useOf(scene)) && (named === "any" || named === r.id));
}

const widthOf = (d: Room["doors"][number]): number => Math.hypot(d.to[0] - d.from[0], d.to[1] - d.from[1]);

/** Ways out that a walker of some width may come to from a room, through any rooms at all. A door listed in two rooms counts for either. */
function exitsOf(v: Venue, from: string, least: number, noSteps: boolean): number {
  const open = (d: Room["doors"][number]): boolean => widthOf(d) >= least - 1 && (!noSteps || (d.steps ?? 0) === 0);
  const reached = new Set([from]);
  for (let grown = true; grown;) {
    grown = false;
    for (const r of v.rooms) for (const d of r.doors) {
      if (!open(d) || !v.rooms.some((o) => o.id === d.leads)) continue;
      for (const [a, b] of [[r.id, d.leads], [d.leads, r.id]] as const) if (reached.has(a) && !reached.has(b)) { reached.add(b); grown = true; }
    }
  }
  return v.rooms.filter((r) => reached.has(r.id)).reduce((n, r) => n + r.doors.filter((d) => d.exit && open(d)).length, 0);
}
const waysWanted = (people: number): number => (people > 1000 ? 4 : people > 500 ? 3 : people > 49 ? 2 : 1);

/** Floor between the doors of two rooms that face each other across a wall, m2: the width of the narrower by the way between them. */
function openingInto(v: Venue, grows: string, from: string): number {
  const doors = (room: string, leads: string): readonly Room["doors"][number][] => v.rooms.find((r) => r.id === room)?.doors.filter((d) => d.leads === leads) ?? [];
  const mid = (d: Room["doors"][number]): readonly [number, number] => [(d.from[0] + d.to[0]) / 2, (d.from[1] + d.to[1]) / 2];
  return doors(grows, from).reduce((n, a) => n + Math.max(0, ...doors(from, grows).map((b) => (Math.hypot(mid(a)[0] - mid(b)[0], mid(a)[1] - mid(b)[1]) * Math.max(widthOf(a), widthOf(b))) / 1e6)), 0);
}

/** The most people that a room can be said to hold for a part of the day, with the most generous of its drapes. */
function holds(v: Venue, b: Brief, r: Room, scene: Scene): number {
  const kinds: readonly ("rows" | "tables" | "standing")[] = scene === "meal" ? ["tables"] : scene !== "ceremony" ? ["tables", "standing"]
    : b.ceremony.seating === "standing" ? ["standing"] : b.ceremony.seating === "at-tables" ? ["tables"] : ["rows"];
  const figure = (p: Room["posted"]): number | null => {
    const all = kinds.map((k) => p?.[k]).filter((n): n is number => n !== undefined);
    return all.length > 0 ? Math.max(...all) : null;
  };
  const profile = FACTORS[v.rules?.profile ?? "model-code"];
  const each = Math.min(...kinds.map((k) => profile[k]));
  const one = (area: number, posted: number | null): number => Math.min(Math.floor(area / DENSEST + 1e-6), posted ?? Math.floor(area / each + 1e-6));
  const own = shoelace(r.outline);
  const draped = b.drape === "no" ? [] : v.drapes.filter((d) => d.grows === r.id).map((d) => {
    const lent = figure(v.rooms.find((o) => o.id === d.from)?.posted), mine = figure(r.posted);
    // The strip, and the floor of the opening before it.
    return one(own + shoelace(d.area) + openingInto(v, r.id, d.from), figure(d.posted) ?? (mine === null || lent === null ? null : mine + lent));
  });
  return Math.max(one(own, figure(r.posted)), ...draped);
}

const isRound = (s: Venue["stock"][number]): boolean => "diameter" in s.shape;
const owned = (v: Venue, kind: string): number => v.stock.filter((s) => s.kind === kind).reduce((n, s) => n + s.count, 0);

/** Places at all tables of the family asked for, and those that the couple may take at another. */
function placesOwned(v: Venue, b: Brief): number {
  const seated = v.stock.filter((s) => s.kind === "table" && s.seats);
  const asked = seated.filter((s) => (b.meal.tables === "rounds" ? isRound(s) : b.meal.tables === "long" ? !isRound(s) : true));
  const sum = (list: typeof seated): number => list.reduce((n, s) => n + s.count * (s.seats?.most ?? 0), 0);
  const rest = seated.filter((s) => !asked.includes(s));
  // Two may sit alone at a table of any stock.
  return sum(asked) + (b.meal.top === "pair" ? 2 : b.meal.top === "none" ? 0 : sum(rest));
}

/** What is wrong with one proof, or null. */
export function proofFault(v: Venue, b: Brief, f: Finding): string | null {
  const scene = f.scene ?? "meal";
  const rooms = roomsFor(v, b, scene), people = peopleAt(b, scene);
  const pack = v.packages.find((p) => p.id === b.package);
  switch (f.code) {
    case "bound-room": {
      const named = scene === "ceremony" ? b.ceremony.room : b.meal.room;
      return named !== "any" && !pack?.rooms.includes(named) ? null : `${named} is in the package`;
    }
    case "bound-use": return rooms.length === 0 ? null : `${rooms.map((r) => r.id).join(", ")} may be used`;
    case "bound-exits": return rooms.every((r) => exitsOf(v, r.id, 305, false) < waysWanted(people)) ? null : "a room has ways out enough";
    case "bound-route": return b.guests.wheelchairs > 0 && rooms.every((r) => exitsOf(v, r.id, 800, true) === 0) ? null : "wheels reach a room";
    case "bound-posted": case "bound-area": case "bound-densest": case "bound-rooms": {
      const usable = rooms.filter((r) => exitsOf(v, r.id, 305, false) >= waysWanted(people));
      const each = usable.map((r) => holds(v, b, r, scene));
      const limit = scene === "ceremony" ? Math.max(0, ...each) : each.reduce((n, x) => n + x, 0);
      return people > limit ? null : `${people} people, rooms for ${limit}`;
    }
    case "bound-floor": {
      // The figure of the trade as the file format prints it, and the fewest guests that any reading of the brief gives.
      const need = Math.min(guestsOf(b), people) * b.music.dancing * 0.418;
      // Nobody dances in a room that no way out can be reached from.
      const largest = Math.max(0, ...rooms.filter((r) => exitsOf(v, r.id, 305, false) > 0).map((r) => shoelace(r.outline) + Math.max(0, ...v.drapes.filter((d) => d.grows === r.id).map((d) => shoelace(d.area) * 1.05))));
      return need > largest ? null : `${need} m2 of floor, ${largest} m2 of room`;
    }
    case "bound-tables": return people > placesOwned(v, b) ? null : `${people} guests, ${placesOwned(v, b)} places owned`;
    case "bound-chairs": {
      const need = people - b.guests.wheelchairs - b.guests.highChairs;
      return need > owned(v, "chair") ? null : `${need} chairs wanted, ${owned(v, "chair")} owned`;
    }
    case "bound-dance-panels": {
      const need = people * b.music.dancing * 4.5 * FT2;
      const have = v.stock.filter((s) => s.kind === "dance-panel").reduce((n, s) => n + s.count * ("diameter" in s.shape ? 0 : (s.shape.width * s.shape.depth) / 1e6), 0);
      return have < need ? null : `${need} m2 wanted, panels for ${have} m2`;
    }
    case "bound-buffet": {
      const asked = b.meal.service === "buffet" || b.meal.service === "stations";
      return asked && !v.rooms.some((r) => pack?.rooms.includes(r.id) && r.uses.includes("buffet")) ? null : "a room is let for a buffet";
    }
    case "bound-form": {
      const legs = new Map<string, number>([["u", 2], ["e", 3], ["t", 1], ["hollow-square", 2]]).get(b.meal.form) ?? 0, heads = b.meal.form === "hollow-square" ? 2 : 1;
      const joined = b.meal.tables === "rounds" ? [] : v.stock.filter((s) => s.kind === "table" && s.joins === true && !isRound(s) && (s.seats?.most ?? 0) > 0 && s.count >= legs + heads);
      return legs > 0 && b.meal.service !== "none" && joined.length === 0 ? null : "the form can be laid of the venue's tables";
    }
    case "bound-at-tables": return b.ceremony.here && b.ceremony.seating === "at-tables" && b.meal.service === "none" ? null : "tables are laid that day";
    case "bound-drape": return b.drape === "yes" && !v.drapes.some((d) => pack?.rooms.includes(d.grows) && pack.rooms.includes(d.from)) ? null : "a drape hangs between two rooms of the package";
    default: return `nobody can work out ${f.code}`;
  }
}
