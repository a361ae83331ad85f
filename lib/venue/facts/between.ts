import { type Problem } from "../../base";
import { add, boxesNear, boxOf, edges, intersect, offset, regionArea, scale, segmentDistance, subtract, union, type Polygon, type Segment } from "../../geometry";
import type { Venue } from "../schema";
import { ON_WALL, siteOf, THICKEST_WALL, type Site } from "../site";
import { outlineFault, problem } from "./room";

/** Where two rooms contradict each other: their floors, the doors between them, the drapes. Pre: each room holds for itself. */
export function betweenFacts(venue: Venue): readonly Problem[] {
  const site = siteOf(venue);
  return [...floorsApart(venue), ...doorsMeet(venue, site), ...outsideIsFree(venue, site), ...drapesFit(venue, site)];
}

function floorsApart(venue: Venue): readonly Problem[] {
  return venue.rooms.flatMap((b, i) => venue.rooms.slice(0, i).flatMap((a) => {
    if (a.level !== b.level || !boxesNear(boxOf(a.outline), boxOf(b.outline), 0)) return [];
    // Rooms may share a wall line, and rounding to millimetres may lay one over it by a hair.
    const common = offset(intersect(union([a.outline]), [b.outline]), -ON_WALL);
    return common.length === 0 ? [] : [problem(["rooms", i, "outline"], `lies over ${a.id}, which is on the same level; allowed: rooms of one level side by side`)];
  }));
}

function doorsMeet(venue: Venue, site: Site): readonly Problem[] {
  return venue.rooms.flatMap((room, i) => room.doors.flatMap((door, k) => {
    const at = ["rooms", i, "doors", k, "leads"] as const;
    if (["outside", "back-of-house", "toilets"].includes(door.leads)) return [];
    const other = venue.rooms.find((r) => r.id === door.leads);
    if (!other || other === room) {
      const rooms = venue.rooms.filter((r) => r !== room).map((r) => `"${r.id}"`);
      return [problem(at, `"${door.leads}" is ${other ? "the door's own room" : "not a room of this venue"}; allowed: ${["\"outside\"", "\"back-of-house\"", "\"toilets\"", ...rooms].join(", ")}`)];
    }
    if (!other.doors.some((d) => d.leads === room.id)) {
      return [problem(at, `${other.id} has no door that leads to ${room.id}; allowed: a door between two rooms listed in both`)];
    }
    // A stair joins rooms of two levels, whose frames have nothing to do with one another.
    if (other.level !== room.level) return [];
    const meets = site.passages.some((p) => p.doors.some((d, n) => d === door.id && p.rooms[n] === room.id) && p.rooms.includes(other.id));
    return meets ? [] : [problem(at, `no door of ${other.id} faces this one; allowed: doors that face each other across at most ${THICKEST_WALL} mm of wall`)];
  }));
}

/** How far beyond a door that leads outside the floor must be nobody's room, mm: a walker's depth past the wall. */
const BEYOND = 520;
/** The share of that floor which a neighbouring room may take, for walls drawn askew. */
const TAKEN = 0.1;

/** A door that is said to lead outside does not open against another room under a roof. */
function outsideIsFree(venue: Venue, site: Site): readonly Problem[] {
  return venue.rooms.flatMap((room, i) => room.doors.flatMap((door, k) => {
    const gate = site.rooms.get(room.id)?.gates.find((g) => g.door === door);
    if (!gate || door.leads !== "outside") return [];
    const out = scale(gate.inward, -BEYOND);
    const strip: Polygon = [gate.from, gate.to, add(gate.to, out), add(gate.from, out)];
    const other = venue.rooms.find((o) => o !== room && o.level === room.level && o.outdoor !== true && boxesNear(boxOf(o.outline), boxOf(strip), 0) &&
      regionArea(intersect(union([strip]), [o.outline])) > TAKEN * gate.width * BEYOND);
    return other ? [problem(["rooms", i, "doors", k, "leads"], `"outside", yet ${other.id} lies behind this door; allowed: "${other.id}", with a door that faces it there, or a door in an outer wall`)] : [];
  }));
}

function drapesFit(venue: Venue, site: Site): readonly Problem[] {
  return venue.drapes.flatMap((drape, i) => {
    const at = ["drapes", i, "area"] as const;
    const fault = outlineFault(drape.area);
    if (fault) return [problem(at, fault)];
    const from = venue.rooms.find((r) => r.id === drape.from), grows = venue.rooms.find((r) => r.id === drape.grows);
    // Unknown rooms are told of elsewhere.
    if (!from || !grows) return [];
    if (from === grows) return [problem(["drapes", i, "grows"], "is the room that the drape takes from; allowed: another room")];
    if (from.level !== grows.level) return [problem(["drapes", i, "grows"], `${grows.id} is on another level than ${from.id}; allowed: two rooms of one level`)];
    const out = offset(subtract(union([drape.area]), [from.outline]), -ON_WALL);
    if (out.length > 0) return [problem(at, `reaches out of ${from.id}; allowed: a part of that room's floor`)];
    const openings = site.passages.filter((p) => p.rooms.includes(from.id) && p.rooms.includes(grows.id));
    const gates = openings.map((p) => site.rooms.get(from.id)?.gates.find((g) => g.door.id === p.doors[p.rooms.indexOf(from.id)]));
    const touches = gates.some((g) => g && sides(drape.area).some((e) => segmentDistance(e, [g.from, g.to]) <= ON_WALL));
    return touches ? [] : [problem(at, `touches no opening between ${from.id} and ${grows.id}; allowed: an area that reaches one`)];
  });
}

const sides = (p: Polygon): readonly Segment[] => edges(p);
