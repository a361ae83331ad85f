import { people, type Brief, type Wish } from "../../brief";
import type { ItemKind, ItemShape } from "../../layout";
import type { Package, Stock, Use, Venue } from "../../venue";
import { BAR_AROUND, BROUGHT, BUFFET_AROUND, bandSize, DANCER_AREA, DISPLAY_AROUND, DJ, GUESTS_A_BUFFET_LINE, PANEL } from "./catalogue";
import type { Around } from "../place";

/** One piece that must find a place: what it is, its size, the rooms that suit it in their order. */
export type Spec = {
  readonly id: string;
  readonly kind: ItemKind;
  readonly role?: string;
  readonly also?: readonly string[];
  readonly label: string;
  readonly from: { readonly stock: string; readonly count?: number } | { readonly brought: true };
  readonly shape: ItemShape;
  readonly around: Around;
  /** Room uses that suit it, best first; any room of the package where none is left. */
  readonly uses: readonly Use[];
  /** What the brief calls it, in wishes, charges and findings. */
  readonly word: string;
  /** Other stock that would serve, when the first has run out. */
  readonly others: readonly Stock[];
  /** Where the venue has it stand, the first choice first. */
  readonly places?: NonNullable<Venue["places"]>[string];
  readonly wishes?: readonly Wish[];
  /** Rooms outdoors, where a wish names the terrace. */
  readonly terraces?: readonly string[];
};

export type Demand = {
  readonly guests: number;
  readonly ceremonyGuests: number;
  readonly eveningGuests: number;
  readonly wheelchairs: number;
  readonly bar: Spec | null;
  readonly secondBar: Spec | null;
  readonly buffet: Spec | null;
  readonly music: Spec | null;
  readonly floor: Spec | null;
  /** Why there is no floor although one is asked for: the panels' area against what is needed, sq m. */
  readonly floorShort: { readonly owned: number; readonly needed: number } | null;
  readonly displays: readonly Spec[];
};

const width = (s: ItemShape): number => ("diameter" in s ? s.diameter : s.width);
const depth = (s: ItemShape): number => ("diameter" in s ? s.diameter : s.depth);

/** The least rectangle of panels that holds the dancers, no longer than one and three quarters of its width. */
export function danceFloor(panel: { readonly width: number; readonly depth: number }, count: number, areaNeeded: number): { readonly columns: number; readonly rows: number } | null {
  let best: { columns: number; rows: number; cost: number } | null = null;
  for (let columns = 1; columns <= Math.min(count, 60); columns++) for (let rows = 1; rows <= Math.min(columns, Math.floor(count / columns)); rows++) {
    const w = columns * panel.width, d = rows * panel.depth;
    if ((w * d) / 1e6 < areaNeeded) continue;
    const ratio = Math.max(w, d) / Math.min(w, d);
    const cost = columns * rows * (ratio > 1.75 ? 1 + (ratio - 1.75) : 1) + (ratio - 1) * 0.5;
    if (!best || cost < best.cost - 1e-9) best = { columns, rows, cost };
  }
  return best && { columns: best.columns, rows: best.rows };
}

/**
 * brief -> what must be placed. Pre: brief and venue parsed. Post: each display and extra of the brief is in exactly one spec
 * (as its word or among `also`), or is carried by a piece that stands already.
 */
export function demandOf(venue: Venue, pack: Package, brief: Brief): Demand {
  const guests = people(brief);
  const eveningGuests = Math.max(guests, brief.guests.evening ?? guests);
  const of = (kind: Stock["kind"]): readonly Stock[] => venue.stock.filter((s) => s.kind === kind && s.count > 0);
  const bars = of("bar");
  const bar = (id: string, word: string): Spec | null => bars[0]
    ? { id, kind: "bar", label: id === "bar" ? "Bar" : "Second bar", from: { stock: bars[0].id }, shape: bars[0].shape, around: BAR_AROUND, uses: ["drinks", "dancing", "lounge", "dining"], word, others: bars }
    : null;
  return known(venue, brief, {
    guests, eveningGuests,
    ceremonyGuests: brief.guests.ceremony ?? guests,
    wheelchairs: brief.guests.wheelchairs,
    bar: bar("bar", "bar"),
    // An extra that the venue does not own gives way, and the check says so.
    secondBar: brief.extras.includes("second-bar") && bars.reduce((n, s) => n + s.count, 0) > 1 ? bar("bar-2", "second-bar") : null,
    buffet: buffetOf(venue, brief, guests),
    music: musicOf(brief),
    ...floorOf(of("dance-panel"), brief, eveningGuests),
    displays: displaysOf(venue, brief, guests),
  });
}

/** Every piece with the venue's order of places for it, and the couple's wishes. */
function known(venue: Venue, brief: Brief, d: Demand): Demand {
  const more = (s: Spec): Spec => {
    const words = [s.word, ...(s.also ?? [])];
    const places = venue.places?.[s.word] ?? (s.role === undefined ? undefined : venue.places?.[s.role]);
    const wishes = brief.wishes.filter((w) => words.includes(w.put));
    return { ...s, ...(places ? { places } : {}), ...(wishes.length > 0 ? { wishes, terraces: venue.rooms.filter((r) => r.outdoor === true).map((r) => r.id) } : {}) };
  };
  const or = (s: Spec | null): Spec | null => s && more(s);
  return { ...d, bar: or(d.bar), secondBar: or(d.secondBar), buffet: or(d.buffet), music: or(d.music), floor: or(d.floor), displays: d.displays.map(more) };
}

function musicOf(brief: Brief): Spec | null {
  const { by, players } = brief.music;
  if (by !== "dj" && by !== "band") return null;
  const size = by === "dj" ? DJ : bandSize(players);
  return {
    id: by, kind: by, label: by === "dj" ? "DJ" : "Band", from: { brought: true }, shape: { width: size.width, depth: size.depth },
    around: size.around, uses: ["dancing", "dining", "ceremony", "drinks", "lounge"], word: by, others: [],
  };
}

function floorOf(panels: readonly Stock[], brief: Brief, guests: number): Pick<Demand, "floor" | "floorShort"> {
  const needed = guests * brief.music.dancing * DANCER_AREA;
  if (needed === 0) return { floor: null, floorShort: null };
  const stock = panels[0];
  const panel = stock ? { width: width(stock.shape), depth: depth(stock.shape) } : { width: PANEL, depth: PANEL };
  const laid = danceFloor(panel, stock ? stock.count : 3600, needed);
  if (!laid) return { floor: null, floorShort: { owned: stock ? (stock.count * panel.width * panel.depth) / 1e6 : 0, needed } };
  return {
    floorShort: null,
    floor: {
      id: "dance-floor", kind: "dance-floor", label: "Dance floor", word: "dance-floor", others: [],
      from: stock ? { stock: stock.id, count: laid.columns * laid.rows } : { brought: true },
      shape: { width: laid.columns * panel.width, depth: laid.rows * panel.depth },
      around: { front: 0, back: 0, side: 0 }, uses: ["dancing"],
    },
  };
}

/** Tables that dining can spare: narrow ones first, then the rest by how many the venue owns. */
export function displayTables(venue: Venue): readonly Stock[] {
  return venue.stock.filter((s) => s.kind === "table" && s.count > 0)
    .sort((a, b) => spare(b) - spare(a) || width(a.shape) * depth(a.shape) - width(b.shape) * depth(b.shape) || (a.id < b.id ? -1 : 1));
}
const spare = (s: Stock): number => {
  if (!s.seats || s.seats.most === 0) return 3;
  if ("diameter" in s.shape) return width(s.shape) <= 1000 ? 1 : -1;
  return s.shape.depth <= 500 ? 2 : s.shape.width <= 1300 ? 1 : 0;
};

function buffetOf(venue: Venue, brief: Brief, guests: number): Spec | null {
  if (brief.meal.service !== "buffet" && brief.meal.service !== "stations") return null;
  const lines = Math.ceil(guests / GUESTS_A_BUFFET_LINE);
  const tables = displayTables(venue).filter((s) => !("diameter" in s.shape) && s.shape.width >= 1500 && s.shape.depth >= 600)
    .sort((a, b) => b.count - a.count || (a.id < b.id ? -1 : 1));
  const stock = tables.find((s) => s.count >= 2 * lines) ?? tables[0] ?? displayTables(venue).find((s) => !("diameter" in s.shape));
  const base = { id: "buffet", kind: "buffet" as const, role: "buffet", label: "Buffet", around: BUFFET_AROUND, uses: ["buffet" as const], word: "buffet", others: tables };
  if (!stock || "diameter" in stock.shape) return { ...base, from: { brought: true }, shape: { width: 3660 * lines, depth: 760 } };
  const count = Math.min(2 * lines, stock.count);
  return { ...base, from: { stock: stock.id, count }, shape: { width: count * stock.shape.width, depth: stock.shape.depth } };
}

const ROOMS_FOR: Readonly<Record<string, readonly Use[]>> = {
  cake: ["dining"], appetisers: ["drinks", "dining", "lounge"], "photo-booth": ["dancing", "drinks", "lounge", "dining"],
  lounge: ["lounge", "drinks", "dancing"], "children-corner": ["dining", "lounge"], "cocktail-tables": ["drinks", "dancing", "lounge"],
  "seating-plan": ["dining"], favours: ["dining"],
};
const LABELS: Readonly<Record<string, string>> = {
  welcome: "Welcome", cards: "Cards", "guest-book": "Guest book", photographs: "Photographs", cake: "Cake", "seating-plan": "Seating plan",
  favours: "Favours", "photo-booth": "Photo booth", lounge: "Lounge", "cocktail-tables": "High table", appetisers: "Appetisers",
  "children-corner": "Children's corner",
};

function displaysOf(venue: Venue, brief: Brief, guests: number): readonly Spec[] {
  const out: Spec[] = [];
  const tables = displayTables(venue);
  const table = (word: string, also: readonly string[] = []): Spec => {
    const first = tables[0];
    const words = [word, ...also];
    return {
      id: word, kind: "table", role: word, also: also.length > 0 ? also : undefined,
      label: words.map((w, i) => (i === 0 ? LABELS[w] : (LABELS[w] ?? w).toLowerCase())).join(", "),
      from: first ? { stock: first.id } : { brought: true }, shape: first ? first.shape : { width: BROUGHT.display.width, depth: BROUGHT.display.depth },
      around: DISPLAY_AROUND, uses: ROOMS_FOR[word] ?? [], word, others: tables,
    };
  };
  const brought = (word: keyof typeof BROUGHT, kind: ItemKind, role?: string): Spec => ({
    id: role ?? word, kind, role, label: LABELS[role ?? word] ?? word, from: { brought: true },
    shape: { width: BROUGHT[word].width, depth: BROUGHT[word].depth }, around: BROUGHT[word].around, uses: ROOMS_FOR[role ?? word] ?? [], word: role ?? word, others: [],
  });
  const has = (d: Brief["displays"][number]): boolean => brief.displays.includes(d);
  if (has("cake")) out.push(table("cake"));
  if (has("welcome")) out.push(table("welcome"));
  // Cards and guest book share a table: guests stand there once.
  if (has("cards")) out.push(table("cards", has("guest-book") ? ["guest-book"] : []));
  else if (has("guest-book")) out.push(table("guest-book"));
  if (has("photographs")) out.push(table("photographs"));
  if (has("favours")) out.push(table("favours"));
  if (has("seating-plan")) out.push(brought("easel", "easel", "seating-plan"));
  const wants = (e: Brief["extras"][number]): boolean => brief.extras.includes(e);
  if (wants("photo-booth")) out.push(brought("photo-booth", "photo-booth"));
  if (wants("appetisers")) out.push(table("appetisers"));
  if (wants("children-corner")) out.push(brought("children-corner", "other", "children-corner"));
  if (wants("lounge")) out.push(loungeSpec(venue, brought("lounge", "lounge")));
  if (wants("cocktail-tables")) out.push(...highTables(venue, guests, brought("cocktail-table", "cocktail-table")));
  for (const [i, b] of (brief.brought ?? []).entries()) out.push({
    id: `brought-${i + 1}`, kind: "other", label: b.what, from: { brought: true }, shape: { width: b.width, depth: b.depth },
    around: { front: 600, back: 0, side: 0 }, uses: [], word: `brought-${i + 1}`, others: [],
  });
  return out;
}

function loungeSpec(venue: Venue, fallback: Spec): Spec {
  const own = venue.stock.find((s) => s.kind === "lounge" && s.count > 0);
  return own ? { ...fallback, from: { stock: own.id }, shape: own.shape } : fallback;
}

/** One high table for eight guests (common practice, no source), as many as the venue owns, six at the most in one room's sight. */
function highTables(venue: Venue, guests: number, fallback: Spec): readonly Spec[] {
  const own = venue.stock.find((s) => s.kind === "cocktail-table" && s.count > 0);
  const wanted = Math.max(2, Math.min(8, Math.round(guests / 12)));
  const n = own ? Math.min(own.count, wanted) : 2;
  return Array.from({ length: n }, (_, i): Spec => ({
    ...fallback, id: `high-table-${i + 1}`, word: "cocktail-tables", label: "High table", from: own ? { stock: own.id } : { brought: true },
    shape: own ? own.shape : { diameter: BROUGHT["cocktail-table"].width }, around: { front: 0, back: 0, side: 0 },
  }));
}
