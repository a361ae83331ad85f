import { type Path, type Problem } from "../../base";
import type { Stock, Venue } from "../schema";
import { problem } from "./room";

/** Where a venue's parts name one another, or share a name that must be theirs alone. */
export function nameFacts(venue: Venue): readonly Problem[] {
  const rooms = venue.rooms.map((r) => r.id), charges = venue.charges.map((c) => c.id), stock = venue.stock.map((s) => s.id);
  const serviceDoors = venue.rooms.flatMap((r) => r.doors.filter((d) => d.leads === "back-of-house").map((d) => d.id));
  const known = (list: readonly string[], id: string | null, { at, what }: { readonly at: Path; readonly what: string }): readonly Problem[] =>
    id === null || list.includes(id) ? [] : [problem(at, `"${id}" is not ${what} of this venue; allowed: ${listed(list)}`)];
  return [
    ...twice(venue.rooms, (i) => ["rooms", i, "id"]),
    ...venue.rooms.flatMap((r, i) => [
      ...twice(r.doors, (k) => ["rooms", i, "doors", k, "id"]),
      ...twice(r.obstacles, (k) => ["rooms", i, "obstacles", k, "id"]),
      ...twice(r.keepClear, (k) => ["rooms", i, "keepClear", k, "id"]),
      ...r.standing.flatMap((s, k) => known(charges, s.move, { at: ["rooms", i, "standing", k, "move"], what: "a charge" })),
    ]),
    ...standingTwice(venue),
    ...twice(venue.stock, (i) => ["stock", i, "id"]), ...twice(venue.packages, (i) => ["packages", i, "id"]),
    ...twice(venue.charges, (i) => ["charges", i, "id"]), ...twice(venue.drapes, (i) => ["drapes", i, "id"]),
    ...venue.drapes.flatMap((d, i) => [
      ...known(rooms, d.grows, { at: ["drapes", i, "grows"], what: "a room" }), ...known(rooms, d.from, { at: ["drapes", i, "from"], what: "a room" }),
      ...known(charges, d.charge, { at: ["drapes", i, "charge"], what: "a charge" }),
    ]),
    ...venue.packages.flatMap((p, i) => [
      ...p.rooms.flatMap((r, k) => known(rooms, r, { at: ["packages", i, "rooms", k], what: "a room" })),
      ...p.rooms.flatMap((r, k) => (p.rooms.indexOf(r) === k ? [] : [problem(["packages", i, "rooms", k], `"${r}" stands here twice; allowed: each room once`)])),
      ...p.included.flatMap((c, k) => known(charges, c, { at: ["packages", i, "included", k], what: "a charge" })),
    ]),
    ...venue.charges.flatMap((c, i) => [
      ...(c.of === undefined ? [] : known(stock, c.of, { at: ["charges", i, "of"], what: "in the stock" })),
      ...(c.per === "unit" && c.of === undefined ? [problem(["charges", i, "of"], `missing; allowed: ${listed(stock)}, since the charge is per unit`)] : []),
    ]),
    ...(venue.store === undefined ? [] : known([...rooms, ...serviceDoors], venue.store, { at: ["store"], what: "a room or a back-of-house door" })),
    ...Object.entries(venue.places ?? {}).flatMap(([word, spots]) => spots.flatMap((s, i) =>
      s.room === undefined ? [] : known(rooms, s.room, { at: ["places", word, i, "room"], what: "a room" }))),
  ];
}

/** Least length of a table's edge that a place can take, mm: under it the figures of a stock entry contradict its size. */
const LEAST_PLACE = 250;

/** Where a piece of stock, or a pair of rule values, contradicts itself. */
export function stockFacts(venue: Venue): readonly Problem[] {
  return [
    ...venue.stock.flatMap((s, i) => {
      const most = Math.floor(edgeOf(s) / LEAST_PLACE);
      if (s.kind !== "table" || !s.seats || s.seats.most <= most) return [];
      const field = s.seats.comfort > most ? "comfort" : "most";
      return [problem(["stock", i, "seats", field], `${s.seats[field]} places do not go round an edge of ${Math.round(edgeOf(s))} mm; allowed: at most ${most}`)];
    }),
    ...(["tableGap", "wallGap", "rowPitch"] as const).flatMap((g) => {
      const comfort = venue.rules?.comfort?.[g], most = venue.rules?.most?.[g];
      return comfort === undefined || most === undefined || comfort >= most ? []
        : [problem(["rules", "comfort", g], `${comfort} mm is less than the ${most} mm of rules.most; allowed: at least as much`)];
    }),
  ];
}

const edgeOf = ({ shape }: Stock): number => ("diameter" in shape ? Math.PI * shape.diameter : 2 * (shape.width + shape.depth));
const listed = (list: readonly string[]): string => (list.length === 0 ? "none, since the venue has none" : list.map((x) => `"${x}"`).join(", "));

function twice(list: readonly { readonly id: string }[], at: (i: number) => Path): readonly Problem[] {
  return list.flatMap((x, i) => {
    const first = list.findIndex((y) => y.id === x.id);
    return first === i ? [] : [problem(at(i), `"${x.id}" is taken by entry ${first} of the same list; allowed: a name of its own`)];
  });
}

function standingTwice(venue: Venue): readonly Problem[] {
  const seen = new Map<string, string>();
  return venue.rooms.flatMap((r, i) => r.standing.flatMap((s, k) => {
    const before = seen.get(s.id);
    seen.set(s.id, before ?? r.id);
    return before === undefined ? [] : [problem(["rooms", i, "standing", k, "id"], `"${s.id}" is taken by a piece of ${before}; allowed: a name of its own in the whole venue`)];
  }));
}
