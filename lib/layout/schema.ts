import { z } from "zod";
import { angle, freeText, id, label, millimetres, point, record } from "../base/schema";

export const SCENES = ["ceremony", "drinks", "meal", "dancing"] as const;
export const ITEM_KINDS = [
  "table", "chair", "dance-floor", "dj", "band", "bar", "buffet", "lounge", "cocktail-table", "photo-booth",
  "backdrop", "arch", "screen", "easel", "other",
] as const;
export const LEVELS = ["must", "should", "note"] as const;

const itemShape = z.union([
  record({ diameter: z.int().min(1).max(1_000_000) }),
  record({ width: z.int().min(1).max(1_000_000), depth: z.int().min(1).max(1_000_000) }),
]);
const itemId = z.string().min(1).max(120);

export const seatSchema = record({ x: millimetres, y: millimetres, facing: angle, place: z.enum(["chair", "wheelchair"]) });

export const itemSchema = record({
  id: itemId,
  kind: z.enum(ITEM_KINDS),
  role: z.string().max(80).optional(),
  also: z.array(z.string().max(80)).readonly().optional(),
  label: z.string().max(200),
  room: id,
  from: z.union([
    record({ stock: id, count: z.int().min(1).max(10_000).optional() }),
    record({ standing: id }),
    record({ brought: z.literal(true) }),
  ]),
  shape: itemShape,
  at: point,
  angle,
  seats: z.array(seatSchema).max(400).readonly().default([]),
  note: freeText.optional(),
});

export const findingSchema = record({
  code: z.string().max(80),
  level: z.enum(LEVELS),
  source: z.string().max(300),
  scene: z.enum(SCENES).optional(),
  items: z.array(itemId).readonly(),
  at: z.tuple([z.number(), z.number()]).readonly().optional(),
  measured: z.number().optional(),
  limit: z.number().optional(),
  unit: z.string().max(40).optional(),
  text: z.string().max(2_000),
  /** What the words were made from, so that they can be made again in another language. */
  data: z.record(z.string(), z.union([z.string(), z.number(), z.boolean(), z.array(z.string()).readonly()])).optional(),
});

export const sceneSchema = record({
  id: z.enum(SCENES),
  title: label,
  rooms: z.array(id).min(1).max(50).readonly(),
  drapes: z.array(id).max(50).readonly().default([]),
  items: z.array(itemSchema).max(12_000).readonly(),
  seats: z.int().min(0).max(20_000),
  numbers: z.array(itemId).readonly().default([]),
});

export const moveSchema = record({
  item: itemId,
  to: z.string().max(120),
  /** What the crew do: bring it out, put it away, shift it within the rooms, lay it. */
  act: z.enum(["out", "away", "shift", "lay"]).optional(),
  minutes: z.number().min(0).optional().describe("of one person's work"),
  begins: z.number().min(0).optional().describe("minutes after the turnover's start at which the crew begin it"),
  ends: z.number().min(0).optional().describe("minutes after the turnover's start at which it is done"),
});

export const turnoverSchema = record({
  from: z.enum(SCENES),
  to: z.enum(SCENES),
  room: id.optional(),
  minutes: z.number().min(0).max(10_000),
  crew: z.int().min(1).max(1_000),
  leaving: z.number().min(0).optional().describe("minutes from the start until the last guest is out of the room"),
  moves: z.array(moveSchema).readonly(),
  aside: record({ pieces: z.int().min(1), minutes: z.number().min(0), begins: z.number().min(0), ends: z.number().min(0) }).optional()
    .describe("pieces stacked or put aside first and set again later, most of them chairs; setting them is among the moves"),
});

export const quoteLineSchema = record({
  charge: z.string().max(120), text: z.string().max(400), count: z.number().min(0),
  each: z.int(), amount: z.int(), of: z.string().max(200).optional(), included: z.boolean().optional(),
});
export const quoteSchema = record({
  currency: z.string().length(3), lines: z.array(quoteLineSchema).readonly(), net: z.int(), tax: z.int(), total: z.int(),
});

const share = z.number().min(0).max(1);
export const wetTwinSchema = record({
  scenes: z.array(sceneSchema).min(1).max(4).readonly(),
  turnovers: z.array(turnoverSchema).readonly().default([]),
  findings: z.array(findingSchema).readonly().default([]),
  quote: quoteSchema.optional(),
});
/** A sentence before it is words: which one, and what it speaks of (rooms by their ids). */
const toldPart = { code: z.string().max(80), data: z.record(z.string(), z.union([z.string(), z.number(), z.boolean(), z.array(z.string()).readonly()])).optional() };
export const toldSchema = record({ ...toldPart, parts: z.array(record(toldPart)).readonly().optional() });

export const layoutSchema = record({
  id: z.string().min(1).max(80),
  title: z.string().max(200),
  why: z.array(z.string().max(2_000)).readonly().default([]),
  /** What this layout gives up against the others, in words. */
  givesUp: z.array(z.string().max(2_000)).readonly().optional(),
  told: record({ title: toldSchema.optional(), why: z.array(toldSchema).readonly(), givesUp: z.array(toldSchema).readonly() }).optional()
    .describe("title, why and givesUp before they were words, each in its order: to be said in another language"),
  scenes: z.array(sceneSchema).min(1).max(4).readonly(),
  turnovers: z.array(turnoverSchema).readonly().default([]),
  findings: z.array(findingSchema).readonly().default([]),
  score: record({ comfort: share, flow: share, sight: share, tidiness: share, moves: share }).optional(),
  quote: quoteSchema.optional(),
  wet: wetTwinSchema.optional().describe("the same day with every outdoor room shut by rain: where a part of the day is held outdoors"),
});

export const insteadSchema = record({ change: z.record(z.string(), z.unknown()), text: z.string().max(2_000), told: toldSchema.optional() });
export const resultSchema = record({
  format: z.literal("marquetry.result/1"),
  engine: record({ version: z.string(), seed: z.int() }),
  status: z.enum(["arranged", "impossible", "not-found"]),
  reasons: z.array(findingSchema).readonly(),
  instead: z.array(insteadSchema).readonly(),
  /** What was taken where the brief says nothing: field, value. */
  taken: z.array(record({ field: z.string(), value: z.unknown() })).readonly().optional(),
  layouts: z.array(layoutSchema).readonly(),
  closest: layoutSchema.optional(),
  moved: z.array(itemId).readonly().optional(),
  /** Tables that stand where they stood and are laid for another number. */
  relaid: z.array(itemId).readonly().optional(),
  timing: record({ totalMs: z.number(), stages: z.record(z.string(), z.number()) }),
});

const fitSchema = record({ seats: z.int(), tables: z.int(), items: z.array(itemSchema).readonly() });
export const STYLES = ["rounds", "long", "mixed", "rows", "standing", "u", "e", "t", "hollow-square"] as const;
export const capacitySchema = record({
  format: z.literal("marquetry.capacity/1"),
  rooms: z.array(record({
    room: id,
    drape: id.nullable(),
    styles: z.partialRecord(z.enum(STYLES), record({
      comfort: fitSchema, most: fitSchema, ceiling: record({ seats: z.int(), because: z.string() }),
    })),
  })).readonly(),
});
