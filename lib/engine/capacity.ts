import { add, area, scale } from "../geometry";
import { footprintPolygon, STYLES, type Capacity, type Fit, type Item, type Style } from "../layout";
import { gapsBetween, ruleValues, standingItem } from "../rules";
import { axisOf, gatesToKeep, siteOf, type Room, type Venue } from "../venue";
import { ceilingOf, type Ceiling } from "./bounds";
import { cleanOf } from "./capacity/clean";
import type { CapacityOptions, Place } from "./capacity/place";
import { chairFor, familiesFor } from "./capacity/families";
import { numberTables } from "./number";
import { roomFloor } from "./place";
import { seatRows } from "./rows";
import { entryOf } from "./stages/relations";
import { seatTables, type FormWanted, type SeatingAsk, type SeatingSpace, type TablesWanted } from "./seating";

const EMPTY: Fit = { seats: 0, tables: 0, items: [] };
type Ease = "comfort" | "most";

/** How tables are asked for in each style. */
const TABLES: Readonly<Partial<Record<Style, { readonly tables: TablesWanted; readonly form: FormWanted }>>> = {
  rounds: { tables: "rounds", form: "any" }, long: { tables: "long", form: "any" }, mixed: { tables: "mixed", form: "any" },
  u: { tables: "long", form: "u" }, e: { tables: "long", form: "e" }, t: { tables: "long", form: "t" }, "hollow-square": { tables: "long", form: "hollow-square" },
};

/** Gaps between the least (0) and those of comfort (1) that full tables are tried at besides. */
const SLACKS = [0.5, 1];

/** Floor a person standing in comfort: 10 ft2, standing receptions (common practice, no source). */
const STANDING_COMFORT = 10 * 0.09290304;

function suits(room: Room, style: Style): boolean {
  const has = (...uses: readonly Room["uses"][number][]): boolean => uses.some((u) => room.uses.includes(u));
  if (style === "rows") return has("ceremony");
  if (style === "standing") return has("ceremony", "drinks", "dancing", "lounge");
  return has("dining");
}

/**
 * How many fit: for each room, drape and style that suits it the places in comfort, at most, and a ceiling that no layout passes.
 * comfort <= most <= ceiling; each fit is an arrangement without a `must` finding on its geometry.
 */
export function capacity(venue: Venue, options: CapacityOptions = {}): Capacity {
  const styles = STYLES.filter((s) => options.style === undefined || s === options.style);
  const rooms = venue.rooms.filter((r) => (options.room === undefined || r.id === options.room) && r.uses.length > 0);
  return {
    format: "marquetry.capacity/1",
    rooms: rooms.flatMap((room) => [null, ...venue.drapes.filter((d) => d.grows === room.id).map((d) => d.id)].map((drape) => {
      const site = siteOf(venue, drape === null ? [] : [drape]);
      const standing = options.bare ? [] : room.standing.map((s) => standingItem(room.id, s));
      const place: Place = { venue, site, room, drape, standing, options };
      const found: Capacity["rooms"][number]["styles"] = {};
      for (const style of styles) if (suits(room, style)) {
        const fits = fitsOf(place, style);
        if (fits) found[style] = fits;
      }
      return { room: room.id, drape, styles: found };
    })),
  };
}

type Fits = { comfort: Fit; most: Fit; ceiling: Ceiling };

function fitsOf(place: Place, style: Style): Fits | null {
  const ceiling = ceilingOf(place.venue, place.room, place.drape, style, place.options);
  if (style === "standing") return standingFits(place, ceiling);
  const tables = TABLES[style];
  if (tables && familiesFor(place, style).length === 0) return null;
  const lay = (ease: Ease, slack = ease === "comfort" ? 1 : 0): Fit => (ceiling.seats === 0 ? EMPTY : tables ? tableFit(place, style, { perTable: ease, slack }, ceiling.seats) : rowFit(place, ease, ceiling.seats));
  const comfort = lay("comfort");
  if (comfort.seats >= ceiling.seats) return { comfort, most: comfort, ceiling };
  // Fuller tables a little farther apart can be more places than close ones: long ways between close tables must be wide again.
  const tight = [lay("most"), ...(tables ? SLACKS.map((k) => lay("most", k)) : [])];
  // What stands in comfort stands with less too: most is never under it.
  return { comfort, most: [comfort, ...tight].reduce((a, b) => (b.seats >= a.seats ? b : a)), ceiling };
}

function standingFits({ site, room, standing, venue }: Place, ceiling: Ceiling): Fits {
  const taken = standing.reduce((s, i) => s + areaOf(i), 0) + room.obstacles.reduce((s, o) => s + area(o.outline), 0);
  const net = Math.max(0, (site.rooms.get(room.id)?.area ?? 0) - taken) / 1e6;
  const values = ruleValues(venue);
  const fit = (each: number): Fit => ({ seats: Math.min(ceiling.seats, Math.floor(net / each + 1e-9)), tables: 0, items: [] });
  return { comfort: fit(Math.max(STANDING_COMFORT, values.densest, values.factors.standing)), most: fit(Math.max(values.densest, values.factors.standing)), ceiling };
}

function rowFit(place: Place, ease: Ease, ceiling: number): Fit {
  const { site, room, venue } = place;
  const here = site.rooms.get(room.id);
  if (!here) return EMPTY;
  const chair = chairFor(place);
  const values = ruleValues(venue);
  const plans = seatRows({
    room: room.id, floor: here.floor, solids: [...room.obstacles.map((o) => o.outline), ...place.standing.map(footprintPolygon)],
    zones: zonesOf(place), axis: axisOf(here.outline), gates: here.gates,
    features: room.walls.filter((w) => w.is === "feature"), windows: room.windows,
  }, {
    people: ceiling, wheelchairs: 0, chair: { id: chair.id, width: chair.width, depth: chair.depth }, rowPitch: values[ease].rowPitch,
    aisle: "centre", curve: false, chairsLeft: place.options.anyStock ? ceiling : chair.count, comfortOnly: ease === "comfort",
    frontDepth: values.frontDepth,
  });
  let best = EMPTY;
  for (const p of plans) {
    const items = cleanOf(place, "ceremony", p.items);
    const seats = items.reduce((n, i) => n + i.seats.length, 0);
    if (seats > best.seats) best = { seats, tables: 0, items };
    if (best.seats >= ceiling) break;
  }
  return best;
}

const zonesOf = ({ site, room }: Place): readonly (readonly (readonly [number, number])[])[] => [
  ...room.keepClear.map((k) => k.outline), ...gatesToKeep(site, room.id, [room.id]).map((g) => g.clear),
];

function tableFit(place: Place, style: Style, { perTable, slack }: { readonly perTable: Ease; readonly slack: number }, ceiling: number): Fit {
  const { site, room, venue, options } = place;
  const here = site.rooms.get(room.id), wanted = TABLES[style];
  if (!here || !wanted) return EMPTY;
  const chair = chairFor(place);
  const space: SeatingSpace = {
    room: room.id, floor: here.floor, axis: axisOf(here.outline),
    solids: [...room.obstacles.map((o) => o.outline), ...place.standing.map(footprintPolygon)],
    zones: zonesOf(place).map((polygon) => ({ polygon, tableClear: 0 })),
    exits: here.gates.map((g) => add(g.at, scale(g.inward, 700))),
  };
  const ask: SeatingAsk = {
    places: ceiling, families: familiesFor(place, style), gaps: gapsBetween(ruleValues(venue), slack), perTable, tables: wanted.tables, form: wanted.form,
    chair, wheelchairs: 0, chairsLeft: options.anyStock ? ceiling : chair.count,
  };
  let best = EMPTY;
  for (const seated of seatTables(space, ask, { seed: options.seed ?? 1, effort: options.effort ?? 0.5 })) {
    if (seated.places <= best.seats) continue;
    const items = cleanOf(place, "meal", seated.items);
    const seats = items.reduce((n, i) => n + i.seats.length, 0);
    if (seats > best.seats) best = { seats, tables: items.length, items };
  }
  // Numbered once those that break a rule are out, so that no number is left out; tables end to end share theirs.
  const entry = roomFloor(site, room.id, [room.id]);
  return entry ? { ...best, items: numberTables(best.items, entryOf(entry), { axis: axisOf(here.outline) }).items } : best;
}

const areaOf = (i: Item): number => ("diameter" in i.shape ? (Math.PI * i.shape.diameter ** 2) / 4 : i.shape.width * i.shape.depth);

export type { CapacityOptions };
