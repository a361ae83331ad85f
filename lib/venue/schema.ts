import { z } from "zod";
import { angle, freeText, id, label, lengthOf, LIMITS, mailAddress, outline, point, record, shape, timeText } from "../base/schema";
import { layoutSchema } from "../layout/schema";

export const USES = ["ceremony", "dining", "dancing", "buffet", "plating", "drinks", "lounge"] as const;
export const STOCK_KINDS = [
  "table", "chair", "bar", "dance-panel", "stage", "cocktail-table", "lounge", "screen", "arch", "other",
] as const;
export const OBSTACLE_KINDS = ["column", "fixed", "stair", "hearth", "other"] as const;
export const PROFILES = ["model-code", "uk-guide", "house"] as const;
export const PER = ["event", "piece", "guest", "hour", "table", "unit"] as const;

const segment = { from: point, to: point };
const figure = z.int().min(0).max(100_000);
const minutes = z.number().min(0).max(600);

export const obstacleSchema = record({
  id, kind: z.enum(OBSTACLE_KINDS), outline, height: lengthOf(1).optional(),
});
export const doorSchema = record({
  id, ...segment,
  leads: id,
  exit: z.boolean(),
  for: z.array(z.enum(["guests", "service"])).min(1).readonly(),
  swing: z.enum(["in", "out", "both", "none"]),
  steps: z.int().min(0).max(100).optional(),
});
export const standingSchema = record({
  id, name: label, kind: z.enum(["table", "chair", "bar", "lounge", "screen", "arch", "cocktail-table", "stage", "other"]),
  shape, at: point, angle, move: id.nullable(),
});
const postedSchema = record({ rows: figure.optional(), tables: figure.optional(), standing: figure.optional() });

export const roomSchema = record({
  id, name: label, level: z.int().min(-20).max(200).default(0), outline,
  obstacles: z.array(obstacleSchema).max(500).readonly().default([]),
  keepClear: z.array(record({ id, outline, why: label })).max(500).readonly().default([]),
  doors: z.array(doorSchema).max(200).readonly(),
  windows: z.array(record({ ...segment, sill: z.int().min(0).max(20_000) })).max(500).readonly().default([]),
  sockets: z.array(z.union([
    point, record({ at: point, circuit: label.optional(), amps: z.number().min(0).max(1_000).optional() }),
  ])).max(500).readonly().default([]),
  walls: z.array(record({ ...segment, is: z.enum(["plain", "feature", "mirror"]) })).max(500).readonly().default([]),
  standing: z.array(standingSchema).max(500).readonly().default([]),
  uses: z.array(z.enum(USES)).readonly(),
  posted: postedSchema.optional(),
  outdoor: z.boolean().optional(),
});

export const stockSchema = record({
  id, name: label, kind: z.enum(STOCK_KINDS), shape,
  height: lengthOf(1).optional(),
  count: z.int().min(0).max(LIMITS.stock),
  seats: record({ comfort: z.int().min(0).max(200), most: z.int().min(0).max(200) })
    .refine((s) => s.comfort <= s.most, { path: ["most"], message: "at least as many as comfort" }).optional(),
  ends: z.boolean().default(false),
  joins: z.boolean().default(false),
});

export const packageSchema = record({
  id, name: label, coordinator: z.boolean(), rooms: z.array(id).min(1).max(LIMITS.rooms).readonly(), turnover: z.boolean(),
  dueDays: z.int().min(0).max(3_650), included: z.array(id).max(500).readonly().default([]),
  hours: z.union([z.number().min(0).max(240), record({ from: timeText, to: timeText })]).optional(),
  finalNumbersDays: z.int().min(0).max(3_650).optional(),
});
export const chargeSchema = record({
  id, name: label, per: z.enum(PER), amount: z.int().min(0).max(1_000_000_000).describe("minor units of the currency"), taxed: z.boolean(),
  of: id.optional(), when: z.array(id).max(50).readonly().optional(),
});
const gapSchema = record({
  tableGap: lengthOf(0).optional(), wallGap: lengthOf(0).optional(), rowPitch: lengthOf(300).optional(),
});
export const rulesSchema = record({
  profile: z.enum(PROFILES).default("model-code"),
  comfort: gapSchema.optional(),
  most: gapSchema.optional(),
  house: z.array(record({ rule: id, limit: z.number() })).max(200).readonly().optional(),
});
const spotSchema = z.union([record({ wall: z.string().max(80), room: id.optional() }), record({ at: point, room: id.optional() })]);

const canonicalLocale = (text: string): boolean => { try { return Intl.getCanonicalLocales(text).length === 1; } catch { return false; } };
const knownZone = (zone: string): boolean => {
  try { new Intl.DateTimeFormat("en", { timeZone: zone }); return true; } catch { return false; }
};

/** The venue's file, `marquetry.venue/1`: shape and ranges. What its parts say of one another is judged by `venueFacts`. */
export const venueSchema = record({
  format: z.literal("marquetry.venue/1"),
  id, name: label,
  locale: z.string().max(60).refine(canonicalLocale, "a BCP 47 language tag such as en-GB").describe("a BCP 47 language tag such as en-GB"),
  currency: z.string().regex(/^[A-Z]{3}$/, "three capital letters of ISO 4217 such as GBP").describe("three capital letters of ISO 4217 such as GBP"),
  timeZone: z.string().max(80).refine(knownZone, "a zone of the IANA database such as Europe/London").describe("a zone of the IANA database such as Europe/London"),
  lengths: z.enum(["metric", "imperial"]),
  north: angle.optional(),
  rooms: z.array(roomSchema).min(1).max(LIMITS.rooms).readonly(),
  drapes: z.array(record({
    id, name: label, grows: id, from: id, area: outline, charge: id.nullable(), posted: postedSchema.optional(),
  })).max(50).readonly().default([]),
  stock: z.array(stockSchema).max(500).readonly(),
  packages: z.array(packageSchema).min(1).max(100).readonly(),
  charges: z.array(chargeSchema).max(500).readonly(),
  tax: record({
    name: label, basisPoints: z.int().min(0).max(10_000), of: z.enum(["line", "total"]), included: z.boolean(),
  }),
  rules: rulesSchema.optional(),
  crew: record({
    size: z.int().min(1).max(500),
    minutes: record({
      table: minutes.optional(), chair: minutes.optional(), panel: minutes.optional(), heavy: minutes.optional(),
      cover: minutes.optional(), cloth: minutes.optional(),
    }).optional(),
  }).optional(),
  store: id.optional(),
  places: z.record(id, z.array(spotSchema).max(50).readonly()).optional(),
  standardLayout: layoutSchema.optional(),
  contact: record({
    name: label.optional(), email: mailAddress.optional(), phone: z.string().max(60).optional(), text: freeText.optional(),
  }).optional(),
  texts: z.record(z.string().max(80), freeText).optional(),
});

export type Venue = z.output<typeof venueSchema>;
export type VenueFile = z.input<typeof venueSchema>;
export type Room = z.output<typeof roomSchema>;
export type Door = z.output<typeof doorSchema>;
export type Obstacle = z.output<typeof obstacleSchema>;
export type Standing = z.output<typeof standingSchema>;
export type Stock = z.output<typeof stockSchema>;
export type Package = z.output<typeof packageSchema>;
export type Charge = z.output<typeof chargeSchema>;
export type Use = (typeof USES)[number];
export type Drape = Venue["drapes"][number];
export type Posted = z.output<typeof postedSchema>;
