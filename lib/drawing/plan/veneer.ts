import type { Item } from "../../layout";
import type { Stock, Venue } from "../../venue";
import type { Veneer } from "../display";

/** Tables this deep or deeper are the heavy boards: oak, mm (a rule of ours). */
const DEEP = 850;

/**
 * The veneers of a venue's stock of rectangular tables, which must be told apart on the drawing: those that are called oak,
 * or are deep, are oak; where none is, the first kind is long (ash) and all deeper ones than it are oak.
 */
function boards(venue: Venue): ReadonlyMap<string, Veneer> {
  const out = new Map<string, Veneer>();
  for (const s of venue.stock) if (s.kind === "table" && "depth" in s.shape) out.set(s.id, isOak(s) ? "oak" : "long");
  return out;
}
const isOak = (s: Stock): boolean => "depth" in s.shape && (/\boak\b/i.test(`${s.name} ${s.id}`) || s.shape.depth >= DEEP);

const DISPLAY_ROLES = new Set(["cake", "welcome", "cards", "guest-book", "photographs", "favours", "seating-plan"]);
const SERVING_ROLES = new Set(["buffet", "appetisers"]);

/** Which veneer a piece wears; null for what is drawn bare (fixed pieces, wheelchair places). */
export function veneerOf(item: Item, venue: Venue): Veneer | null {
  const role = item.role ?? "";
  switch (item.kind) {
    case "table":
      if (DISPLAY_ROLES.has(role)) return "display";
      if (SERVING_ROLES.has(role)) return "buffet";
      // What always stands in the room and seats nobody (a chest, a console) is drawn bare, as the building is.
      if ("standing" in item.from && item.seats.length === 0) return null;
      if ("stock" in item.from) return boards(venue).get(item.from.stock) ?? ("diameter" in item.shape ? "round" : "long");
      return "diameter" in item.shape ? "round" : item.shape.depth >= DEEP ? "oak" : "long";
    case "chair": return "chair";
    case "dance-floor": return "floor";
    case "dj": case "band": return "music";
    case "bar": return "bar";
    case "buffet": return "buffet";
    case "lounge": return "lounge";
    case "cocktail-table": return "long";
    case "photo-booth": case "backdrop": case "arch": case "screen": case "easel": return "display";
    case "other":
      if (role === "wheelchair-space") return null;
      return "standing" in item.from ? null : DISPLAY_ROLES.has(role) ? "display" : SERVING_ROLES.has(role) ? "buffet" : "display";
  }
}

/** What a family is called in the legend. */
export const FAMILY_NAMES = {
  round: "Round tables", long: "Long tables", oak: "Oak tables", chair: "Chairs", floor: "Dance floor", music: "Music", bar: "Bar",
  buffet: "Buffet", lounge: "Lounge", display: "Displays",
} as const satisfies Readonly<Record<Veneer, string>>;
