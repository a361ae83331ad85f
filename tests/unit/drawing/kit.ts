import { add, scale, turn, type Point } from "../../../lib/geometry";
import type { Item, Layout, Scene, Seat } from "../../../lib/layout";
import { venueSchema, type Venue, type VenueFile } from "../../../lib/venue";

export const venue = (file: VenueFile): Venue => venueSchema.parse(file);

type Rest = Partial<Item> & Pick<Item, "id" | "kind" | "room" | "at" | "shape">;
export const piece = (rest: Rest): Item => ({ label: rest.id, from: { brought: true }, angle: 0, seats: [], ...rest });

/** Places about a round, each chair 120 mm under its edge; the first lies half a step past the bearing 0. */
export function around(at: Point, diameter: number, places: number, wheelchair = -1): readonly Seat[] {
  return Array.from({ length: places }, (_, i) => {
    const bearing = ((i + 0.5) * 360) / places;
    const place = i === wheelchair ? "wheelchair" : "chair";
    const [x, y] = add(at, scale(turn([1, 0], bearing), diameter / 2 + (place === "chair" ? 130 : 500)));
    return { x: Math.round(x), y: Math.round(y), facing: (bearing + 180) % 360, place };
  });
}

/** Places along both sides of a table, and at its ends where asked. */
export function along(at: Point, [width, depth]: readonly [number, number], { angle, places, ends = 0, sides = [-1, 1] }: {
  readonly angle: number; readonly places: number; readonly ends?: -1 | 0 | 1 | 2; readonly sides?: readonly number[];
}): readonly Seat[] {
  const seats: Seat[] = [];
  const put = (local: Point, facing: number): void => {
    const [x, y] = add(at, turn(local, angle));
    seats.push({ x: Math.round(x), y: Math.round(y), facing: (facing + angle + 360) % 360, place: "chair" });
  };
  for (const side of sides) for (let i = 0; i < places; i++) put([((i + 0.5) / places - 0.5) * width, side * (depth / 2 + 130)], side < 0 ? 90 : 270);
  if (ends === -1 || ends === 2) put([-width / 2 - 130, 0], 0);
  if (ends === 1 || ends === 2) put([width / 2 + 130, 0], 180);
  return seats;
}

export const round = (id: string, n: number, at: Point, rest: { readonly room: string; readonly diameter: number; readonly stock: string; readonly places: number; readonly wheelchair?: number }): Item =>
  piece({
    id, kind: "table", role: "dining", label: `Table ${n}`, room: rest.room, from: { stock: rest.stock }, shape: { diameter: rest.diameter }, at,
    seats: around(at, rest.diameter, rest.places, rest.wheelchair),
  });

/** The standing furniture of the rooms, where the venue has it. */
export const standing = (v: Venue, rooms: readonly string[], roles: Readonly<Record<string, string>> = {}): readonly Item[] =>
  v.rooms.filter((r) => rooms.includes(r.id)).flatMap((r) => r.standing.map((s): Item => piece({
    id: s.id, kind: s.kind === "stage" ? "other" : s.kind, label: s.name, room: r.id, from: { standing: s.id }, shape: s.shape, at: s.at, angle: s.angle,
    ...(roles[s.id] === undefined ? {} : { role: roles[s.id] }),
  })));

export const scene = (id: Scene["id"], title: string, rooms: readonly string[], items: readonly Item[]): Scene => ({
  id, title, rooms, drapes: [], items, seats: items.reduce((n, i) => n + i.seats.length, 0),
  numbers: items.filter((i) => i.kind === "table" && i.role === "dining").map((i) => i.id),
});

export const layout = (title: string, scenes: readonly Scene[]): Layout => ({ id: "a", title, why: [], scenes, turnovers: [], findings: [] });
