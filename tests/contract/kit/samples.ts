import type { BriefFile } from "../../../lib/brief";
import { tidewheel } from "../../../lib/demo";
import type { VenueFile } from "../../../lib/venue";

const rooms = tidewheel.rooms.slice(0, 2).map((r, i) => ({
  ...r, extra: { note: "free" },
  doors: r.doors.filter((d) => ["grain-floor", "wheel-room", "outside"].includes(d.leads)).map((d) => ({ ...d, steps: 0 })),
  obstacles: (r.obstacles ?? []).slice(0, 1).map((o) => ({ ...o, height: 2600 })),
  keepClear: i === 0 ? [{ id: "hatch", outline: [[100, 8000], [900, 8000], [900, 9000]] as const, why: "Floor hatch" }] : [],
  windows: (r.windows ?? []).slice(0, 1), walls: (r.walls ?? []).slice(0, 1), standing: (r.standing ?? []).slice(0, 1),
  sockets: [[0, 3300], { at: [0, 6100], circuit: "G1", amps: 13 }] as const,
}));
const kitchen = { id: "kitchen", from: [200, 9400], to: [1200, 9400], leads: "back-of-house", exit: false, for: ["service"], swing: "in", steps: 0 } as const;

/** A venue that holds every field the schema knows, each list as short as may be. */
export const fullVenue: VenueFile = {
  ...tidewheel,
  rooms: rooms.map((r, i) => (i === 0
    ? { ...r, outdoor: false, doors: [...r.doors, kitchen] }
    : { ...r, outdoor: false, sockets: [[24000, 3300]] as const, standing: r.standing })),
  stock: tidewheel.stock.slice(0, 2).map((s) => ({ ...s, ends: false, joins: false })),
  packages: [
    { id: "dry-hire", name: "Dry hire", coordinator: false, rooms: ["grain-floor"], turnover: false, dueDays: 42, included: ["light-piece"], hours: 8, finalNumbersDays: 14 },
    { id: "hosted-day", name: "Hosted day", coordinator: true, rooms: ["grain-floor", "wheel-room"], turnover: true, dueDays: 28, included: [], hours: { from: "09:00", to: "23:00" } },
  ],
  charges: [
    ...tidewheel.charges.slice(0, 3),
    { id: "long-table", name: "Long tables", per: "unit", of: "long", amount: 100, taxed: true, when: ["always"] },
  ],
  rules: { profile: "house", comfort: { tableGap: 1500, wallGap: 1000, rowPitch: 950 }, most: { tableGap: 1372, wallGap: 790, rowPitch: 850 }, house: [{ rule: "route", limit: 1000 }] },
  crew: { size: 4, minutes: { table: 3, chair: 0.4, panel: 1.5, heavy: 6, cover: 0.4, cloth: 1 } },
  store: "kitchen",
  places: { cake: [{ at: [350, 4700], room: "grain-floor" }, { wall: "feature", room: "grain-floor" }] },
  standardLayout: undefined,
  extra: { anything: [1, { goes: "here" }] },
};

/** A brief that holds every field the schema knows. */
export const fullBrief: BriefFile = {
  format: "marquetry.brief/1", package: "hosted-day", date: "2027-06-12", couple: ["Ines", "Theo"], reference: "TM-101", today: "2027-04-01",
  guests: { adults: 50, children: 6, highChairs: 2, wheelchairs: 1, suppliers: 4, ceremony: 40, evening: 60, quiet: 5 },
  ceremony: { here: true, room: "any", seating: "rows", aisle: "centre" },
  meal: { service: "buffet", tables: "mixed", form: "any", top: "pair", perTable: "comfort", room: "grain-floor", topPlaces: 2, familyTables: 1 },
  music: { by: "dj", players: 0, dancing: 0.4, atCeremony: true, more: [{ scene: "drinks", by: "band", players: 4, watts: 900 }] },
  displays: ["welcome", "cake"], extras: ["lounge"], turnover: true, drape: "any",
  wishes: [{ put: "cake", near: "window" }, { put: "dj", "away-from": "door" }, { put: "top", "in-sight-of": "feature" }],
  brought: [{ what: "Arch", width: 2000, depth: 600, watts: 0, scene: "ceremony" }],
  times: { access: "08:00", ceremony: "13:00", drinks: "14:00", meal: "16:00", dancing: "19:30", clear: "23:30" },
  notes: "None.", extra: { seen: true },
};
