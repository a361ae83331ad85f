import { distance, nearestOnSegment, pointSegmentDistance, type Point, type Polygon } from "../geometry";
import type { Item } from "../layout";
import { socketAt, type Venue } from "../venue";
import { placed, type Context, type Raw, type SceneView } from "./context";

/** Watts that a piece draws where nobody says, and a band's player (common practice, no source). */
const WATTS: Readonly<Partial<Record<Item["kind"], number>>> = { dj: 1500, band: 1000, "photo-booth": 500 };
const PLAYER = 400;
/** Regions whose sockets give 100 to 127 volts; the others give 220 to 240 (common practice, no source). */
const LOW = new Set(["US", "CA", "MX", "JP", "TW", "CO", "VE", "EC", "CU", "PR", "GT", "HN", "SV", "NI", "CR", "PA", "DO", "HT", "JM"]);

const voltsOf = (venue: Venue): number => (LOW.has(/-([A-Z]{2})\b/.exec(venue.locale)?.[1] ?? "") ? 120 : 230);

/** Watts of a piece at a part of the day; 0 where it needs no power. */
function wattsOf(v: SceneView, c: Context, i: Item): number {
  const said = c.brief?.music.more?.find((m) => m.scene === v.scene.id && m.by === i.kind)?.watts;
  if (said !== undefined) return said;
  if ("brought" in i.from) {
    const known = c.brief?.brought?.find((b) => i.label.toLowerCase().includes(b.what.toLowerCase()))?.watts;
    if (known !== undefined) return known;
  }
  const players = c.brief?.music.by === "band" ? c.brief.music.players : 0;
  return i.kind === "band" ? Math.max(WATTS.band ?? 0, players * PLAYER) : (WATTS[i.kind] ?? 0);
}

type Draw = { readonly item: Item; readonly watts: number; readonly socket: { readonly at: Point; readonly circuit?: string; readonly amps?: number } };

/** Each piece that draws power, on the nearest socket of its room. */
function drawsOf(v: SceneView, c: Context): readonly Draw[] {
  return v.scene.items.flatMap((item): readonly Draw[] => {
    const watts = wattsOf(v, c, item);
    const sockets = v.site.rooms.get(item.room)?.room.sockets ?? [];
    const nearest = [...sockets].sort((a, b) => distance(socketAt(a), item.at) - distance(socketAt(b), item.at))[0];
    if (watts === 0 || !nearest) return [];
    return [{ item, watts, socket: { at: socketAt(nearest), ...("at" in nearest && !Array.isArray(nearest) ? circuitOf(nearest) : {}) } }];
  });
}
const circuitOf = (s: object): { readonly circuit?: string; readonly amps?: number } => ({
  ...("circuit" in s && typeof s.circuit === "string" ? { circuit: s.circuit } : {}), ...("amps" in s && typeof s.amps === "number" ? { amps: s.amps } : {}),
});

/** The load on each circuit against what it carries: watts by volts and amperes. A circuit without a figure is not judged. */
export function circuitLoad(v: SceneView, c: Context): readonly Raw[] {
  const by = new Map<string, Draw[]>();
  for (const d of drawsOf(v, c)) if (d.socket.amps !== undefined) {
    const key = d.socket.circuit ?? d.socket.at.join();
    by.set(key, [...(by.get(key) ?? []), d]);
  }
  return [...by].flatMap(([circuit, draws]): readonly Raw[] => {
    const watts = draws.reduce((n, d) => n + d.watts, 0);
    const limit = Math.floor(voltsOf(c.venue) * Math.min(...draws.map((d) => d.socket.amps ?? Infinity)));
    const first = draws[0];
    return watts <= limit || !first ? [] : [{
      code: "circuit-load", level: "should", source: "volts times amperes; watts by common practice, no source, where nobody says", scene: v.scene.id,
      items: draws.map((d) => d.item.id), at: placed(first.socket.at), measured: watts, limit, unit: "W", data: { circuit, watts, limit, a: first.item.id },
    }];
  });
}

/** The point of a ring's boundary nearest to a point, as its distance along the ring. */
function alongRing(ring: Polygon, p: Point): number {
  let best = Infinity, at = 0, run = 0;
  ring.forEach((a, i) => {
    const b = ring[(i + 1) % ring.length] ?? a;
    const d = pointSegmentDistance(p, [a, b]);
    if (d < best) { best = d; at = run + distance(a, nearestOnSegment(p, [a, b])); }
    run += distance(a, b);
  });
  return at;
}

/** A piece's cable runs from its socket along the walls, whichever way round is shorter; across a door or an opening it is a finding. */
export function cables(v: SceneView, c: Context): readonly Raw[] {
  return drawsOf(v, c).flatMap(({ item, socket }): readonly Raw[] => {
    const room = v.site.rooms.get(item.room);
    if (!room || distance(socket.at, item.at) < SHORT) return [];
    const ring = room.outline;
    const round = ring.reduce((n, a, i) => n + distance(a, ring[(i + 1) % ring.length] ?? a), 0);
    const from = alongRing(ring, socket.at), to = alongRing(ring, item.at);
    const ways = ([1, -1] as const).map((sense) => {
      const length = ((((to - from) * sense) % round) + round) % round;
      const doors = room.gates.filter((g) => { const d = (((alongRing(ring, g.at) - from) * sense) % round + round) % round; return d > 0 && d < length; });
      return { length, doors };
    }).sort((a, b) => a.length - b.length);
    const short = ways[0], free = ways.find((w) => w.doors.length === 0);
    const door = short?.doors[0];
    // Going the long way round is what the crew do where it is not much longer.
    if (!short || !door || (free && free.length <= LONG_WAY)) return [];
    return [{
      code: "cable-door", level: "should", source: "common practice, no source", scene: v.scene.id, items: [item.id], at: placed(door.at), measured: Math.round(short.length), unit: "mm",
      data: { a: item.id, length: Math.round(short.length), room: item.room, door: door.door.id },
    }];
  });
}
/** A socket this near needs no cable along the walls, and a cable may be this long, mm. */
const SHORT = 2000, LONG_WAY = 25_000;
