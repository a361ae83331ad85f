import { people, type Brief } from "../../brief";
import type { Finding, SceneId } from "../../layout";
import { loadKinds, peopleOf, ruleValues, type LoadKind } from "../../rules";
import { siteOf, type Room, type Site, type Use, type Venue } from "../../venue";
import { exitsFrom, round, waysNeeded, widestBound, type Bound } from "./limits";
import { chairs, chairsNeeded, tablePlaces } from "./stock";
import { refusal } from "../refusal";

type Part = {
  readonly scene: SceneId; readonly use: Use; readonly wanted: string; readonly people: number; readonly kinds: readonly LoadKind[];
  /** Held in one room, or spread over several. */
  readonly rooms: "one" | "several";
};

/** The parts of the day that need a room with a use of its own. */
function partsOf(brief: Brief): readonly Part[] {
  const out: Part[] = [];
  const { ceremony, meal, music } = brief;
  if (ceremony.here) out.push({
    scene: "ceremony", use: "ceremony", wanted: ceremony.room, people: peopleOf(brief, "ceremony").guests, rooms: "one",
    kinds: loadKinds("ceremony", ceremony.seating),
  });
  if (meal.service !== "none") out.push({ scene: "meal", use: "dining", wanted: meal.room, people: peopleOf(brief, "meal").guests, rooms: "several", kinds: ["tables"] });
  // A floor to dance on lies in one room; those who watch may be in others, so only the room and the floor's size are judged.
  if (music.dancing > 0) out.push({ scene: "dancing", use: "dancing", wanted: "any", people: 0, rooms: "several", kinds: ["standing", "tables"] });
  return out;
}

const finding = (venue: Venue, scene: SceneId, measured: number, b: Bound): Finding => {
  const data = { ...b.data, measured };
  return refusal(venue, { code: b.code, level: "must", source: b.source, scene, items: [], measured, limit: b.limit, unit: b.unit, data });
};

/** What stands in the way of one part of the day whatever is tried; null when no bound does. */
function roomProof(venue: Venue, site: Site, brief: Brief, part: Part): Finding | null {
  const pack = venue.packages.find((p) => p.id === brief.package);
  if (!pack) return null;
  const say = (measured: number, b: Bound): Finding => finding(venue, part.scene, measured, b);
  if (part.wanted !== "any" && !pack.rooms.includes(part.wanted)) {
    return say(0, { code: "bound-room", limit: 1, unit: "rooms", source: "the package", data: { room: part.wanted, package: pack.id } });
  }
  const named = venue.rooms.filter((r) => pack.rooms.includes(r.id) && (part.wanted === "any" || r.id === part.wanted));
  const fitting = named.filter((r) => r.uses.includes(part.use));
  if (fitting.length === 0) return say(0, {
    code: "bound-use", limit: 1, unit: "rooms", source: "the package and its rooms' uses",
    data: { use: part.use, package: pack.id, ...(part.wanted === "any" ? {} : { room: part.wanted }) },
  });
  return exitProof(venue, site, brief, part, fitting) ?? loadProof(venue, site, brief, part, fitting);
}

function exitProof(venue: Venue, site: Site, brief: Brief, part: Part, rooms: readonly Room[]): Finding | null {
  const needed = waysNeeded(venue, part.people);
  const only: Bound["data"] = rooms.length === 1 && rooms[0] ? { room: rooms[0].id } : {};
  const reached = rooms.map((r) => exitsFrom(site, r.id, "foot").length);
  const most = Math.max(...reached);
  if (most < needed) return finding(venue, part.scene, most, {
    code: "bound-exits", limit: needed, unit: "ways out", source: "IBC 2018 Table 1006.2.1, Table 1006.3.2", data: { people: part.people, found: most, needed, ...only },
  });
  if (brief.guests.wheelchairs === 0 || part.scene === "dancing") return null;
  if (rooms.some((r) => exitsFrom(site, r.id, "wheels").length > 0)) return null;
  return finding(venue, part.scene, 0, {
    code: "bound-route", limit: 1, unit: "ways out", source: "2010 ADA Standards 404.2.3", data: { door: ruleValues(venue).routeDoor, ...only },
  });
}

function loadProof(venue: Venue, site: Site, brief: Brief, part: Part, rooms: readonly Room[]): Finding | null {
  const needed = waysNeeded(venue, part.people);
  const usable = rooms.filter((r) => exitsFrom(site, r.id, "foot").length >= needed);
  const bounds = usable.map((r) => widestBound(venue, r, brief.drape, part.kinds));
  const first = [...bounds].sort((a, b) => b.limit - a.limit)[0];
  if (!first) return null;
  const total = bounds.reduce((n, b) => n + b.limit, 0);
  const limit = part.rooms === "one" ? first.limit : total;
  if (part.people > limit) {
    if (bounds.length === 1) return finding(venue, part.scene, part.people, first);
    if (part.rooms === "one") return finding(venue, part.scene, part.people, { ...first, data: { ...first.data, largest: true } });
    return finding(venue, part.scene, part.people, { code: "bound-rooms", limit: total, unit: "people", source: first.source, data: { rooms: usable.map((r) => r.id) } });
  }
  return part.scene === "dancing" ? floorProof(venue, brief, usable) : null;
}

/** The dancers' floor against the largest room it may lie in. */
function floorProof(venue: Venue, brief: Brief, rooms: readonly Room[]): Finding | null {
  const m2 = (r: Room): number => Math.max(...[null, ...venue.drapes.filter((d) => d.grows === r.id).map((d) => d.id)]
    .map((d) => (siteOf(venue, d === null ? [] : [d]).rooms.get(r.id)?.area ?? 0) / 1e6));
  const largest = Math.max(...rooms.map(m2));
  // The floor is sized by the fewest guests that any reading of the brief gives.
  const dancers = Math.min(people(brief), peopleOf(brief, "dancing").guests) * brief.music.dancing;
  const need = dancers * 0.418;
  if (need <= largest) return null;
  return finding(venue, "dancing", round(need), {
    code: "bound-floor", limit: round(largest), unit: "m2", source: "4.5 ft2 a dancer, rental trade (common practice)", data: { dancers: Math.floor(dancers), need: round(need), area: round(largest) },
  });
}

function stockProofs(venue: Venue, brief: Brief): readonly Finding[] {
  const out: Finding[] = [];
  const meal = peopleOf(brief, "meal").guests, ceremony = peopleOf(brief, "ceremony").guests;
  const owned = chairs(venue);
  if (brief.meal.service !== "none") {
    const places = tablePlaces(venue, brief);
    if (meal > places.limit) out.push(finding(venue, "meal", meal, places));
    else if (chairsNeeded(brief, meal) > owned.limit) out.push(finding(venue, "meal", chairsNeeded(brief, meal), owned));
  }
  const rows = brief.ceremony.here && (brief.ceremony.seating === "rows" || brief.ceremony.seating === "curve");
  if (rows && chairsNeeded(brief, ceremony) > owned.limit) out.push(finding(venue, "ceremony", chairsNeeded(brief, ceremony), owned));
  return out;
}

/**
 * Why no layout can be for a brief: every bound that the brief breaks, each with what was measured, the limit and its source, to be
 * worked out again from the two files alone. Empty when no bound stands in the way, which does not mean that a layout was found.
 * Suppliers are left out: only the guests must have places.
 */
export function proofs(venue: Venue, brief: Brief): readonly Finding[] {
  const site = siteOf(venue);
  const rooms = partsOf(brief).map((p) => roomProof(venue, site, brief, p)).filter((f): f is Finding => f !== null);
  return [...rooms, ...stockProofs(venue, brief)];
}
