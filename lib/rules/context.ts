import type { Brief } from "../brief";
import { boxOf, disc, polygonShape, rectangle, type Box, type Point, type Shape } from "../geometry";
import { CHAIR, footprint, guestPlaces, isRound, seatPolygon, shapeAt, WHEELCHAIR_FLOOR, type Finding, type Item, type Layout, type Scene } from "../layout";
import { siteOf, type Site, type Venue } from "../venue";
import { peopleOf } from "./people";
import { poolOf, withKnown, type Pool } from "./pool";
import { ruleValues, type RuleValues } from "./values";

export { guestPlaces as guestSeats };

/** A finding before it has words. */
export type Raw = Omit<Finding, "text">;

/** A body on the floor: a piece, or the floor that a seat of a table takes. */
export type Part = {
  readonly item: Item;
  readonly seat?: number;
  readonly is: "piece" | "chair" | "wheelchair";
  readonly shape: Shape;
  /** The shape drawn in by the millimetre that is let go. */
  readonly slim: Shape;
};

/** A piece with the chairs at it, and the box about them all. */
export type Group = { readonly item: Item; readonly shape: Shape; readonly parts: readonly Part[]; readonly box: Box };

export type SceneView = {
  /** The part as it was given. */
  readonly given: Scene;
  /** The same; a piece that stands as in another part is one object in both, so that what was worked out on it is found again. */
  readonly scene: Scene;
  readonly site: Site;
  readonly groups: readonly Group[];
  readonly parts: readonly Part[];
  readonly chair: { readonly width: number; readonly depth: number };
  /** Rooms of the scene and rooms that hold something of it. */
  readonly rooms: readonly string[];
  /** Guests, and all people, in the rooms then; the places where no brief is given. */
  readonly guests: number;
  readonly people: number;
};

export type Context = {
  readonly venue: Venue;
  readonly layout: Layout;
  readonly brief: Brief | undefined;
  /** True for the wet-weather twin of a day: the rooms outdoors are shut. */
  readonly wet: boolean;
  readonly values: RuleValues;
  readonly scenes: readonly SceneView[];
};

/** The chair of a venue: its commonest stock chair, else 450 x 500 mm. */
export function chairOf(venue: Pick<Venue, "stock">): { readonly width: number; readonly depth: number } {
  const chairs = venue.stock.filter((s) => s.kind === "chair" && s.count > 0).sort((a, b) => b.count - a.count);
  const shape = chairs[0]?.shape;
  if (!shape) return CHAIR;
  return isRound(shape) ? { width: shape.diameter, depth: shape.diameter } : { width: shape.width, depth: shape.depth };
}

function slimPiece(item: Item): Shape {
  const s = item.shape;
  return isRound(s) ? disc(item.at, Math.max(1, s.diameter / 2 - 1))
    : polygonShape(rectangle(item.at, Math.max(1, s.width - 2), Math.max(1, s.depth - 2), item.angle));
}

/** A part whose slim shape is made when it is first asked for: most never are. */
function part(base: Omit<Part, "slim">, slimmed: () => Shape): Part {
  let slim: Shape | null = null;
  return { ...base, get slim() { return (slim ??= slimmed()); } };
}

const groups = new WeakMap<Item, Map<string, Group>>();

/** Items are never changed once made, so what stands on the floor by one is worked out once. */
function groupOf(item: Item, chair: SceneView["chair"]): Group {
  const key = `${chair.width}x${chair.depth}`, known = groups.get(item)?.get(key);
  if (known) return known;
  const group = makeGroup(item, chair);
  groups.set(item, (groups.get(item) ?? new Map<string, Group>()).set(key, group));
  return group;
}

function makeGroup(item: Item, chair: SceneView["chair"]): Group {
  const shape = footprint(item);
  const own = part({ item, is: "piece", shape }, () => slimPiece(item));
  if (item.kind !== "table" || item.seats.length === 0) return { item, shape, parts: [own], box: shape.box };
  const seats = item.seats.map((s, seat): Part => {
    const size = s.place === "wheelchair" ? WHEELCHAIR_FLOOR : chair;
    return part({ item, seat, is: s.place, shape: polygonShape(seatPolygon(s, chair)) }, () => shapeAt({ width: size.width - 2, depth: size.depth - 2 }, [s.x, s.y], s.facing - 90));
  });
  const parts = [own, ...seats];
  const box = parts.reduce((b, { shape: { box: o } }): Box => ({ minX: Math.min(b.minX, o.minX), minY: Math.min(b.minY, o.minY), maxX: Math.max(b.maxX, o.maxX), maxY: Math.max(b.maxY, o.maxY) }), shape.box);
  return { item, shape, parts, box };
}

const sites = new WeakMap<Venue, Map<string, Site>>();

/** The site of a venue with some drapes drawn, remembered by the venue: what is worked out on it is then kept too. */
export function siteFor(venue: Venue, drapes: readonly string[]): Site {
  const key = [...drapes].sort().join(" ");
  const known = sites.get(venue) ?? new Map<string, Site>();
  sites.set(venue, known);
  const site = known.get(key) ?? siteOf(venue, drapes);
  known.set(key, site);
  return site;
}

/** One part of a day as the rules see it. */
function viewOf(venue: Venue, given: Scene, brief: Brief | undefined, { chair, pool }: { readonly chair: SceneView["chair"]; readonly pool: Pool }): SceneView {
  const scene = withKnown(pool, given);
  const site = siteFor(venue, scene.drapes);
  const seats = guestPlaces(scene.items);
  const people = brief ? peopleOf(brief, scene.id) : { guests: seats, all: seats };
  const rooms = [...new Set([...scene.rooms, ...scene.items.map((i) => i.room)])].filter((r) => site.rooms.has(r));
  const groups = scene.items.map((i) => groupOf(i, chair));
  return { given, scene, site, groups, parts: groups.flatMap((g) => g.parts), chair, rooms, guests: people.guests, people: people.all };
}

/** All that rules ask of a day. With an earlier context of the same venue and brief, parts of the day that are the same objects are taken from it. */
export function contextOf(venue: Venue, layout: Layout, brief?: Brief, earlier?: Context): Context {
  const more = { chair: chairOf(venue), pool: poolOf(earlier?.scenes ?? []) };
  const scenes = layout.scenes.map((scene) => earlier?.scenes.find((v) => v.given === scene) ?? viewOf(venue, scene, brief, more));
  return { venue, layout, brief, wet: false, values: earlier?.values ?? ruleValues(venue), scenes };
}

/** A place as findings give it: whole millimetres. */
export const placed = (p: Point): Point => [Math.round(p[0]), Math.round(p[1])];

/** The middle of a body. */
export function middleOf(shape: Shape): Point {
  if (shape.kind === "disc") return placed(shape.at);
  const b = boxOf(shape.points);
  return placed([(b.minX + b.maxX) / 2, (b.minY + b.maxY) / 2]);
}
