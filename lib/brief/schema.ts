import { z } from "zod";
import { dateText, freeText, id, label, LIMITS, record, timeText } from "../base/schema";

export const DISPLAYS = ["welcome", "cards", "guest-book", "photographs", "cake", "seating-plan", "favours"] as const;
export const EXTRAS = ["photo-booth", "lounge", "cocktail-tables", "appetisers", "children-corner", "second-bar"] as const;
export const WISH_WHAT = [...DISPLAYS, ...EXTRAS, "top", "dance-floor", "dj", "band", "bar", "buffet"] as const;
export const WISH_WHERE = [...WISH_WHAT, "window", "door", "wall", "feature", "terrace"] as const;

const count = z.int().min(0).max(LIMITS.guests);
const roomOrAny = z.union([z.literal("any"), id]);
const unique = <T>(list: readonly T[]): boolean => new Set(list).size === list.length;

export const guestsSchema = record({
  adults: z.int().min(1).max(LIMITS.guests),
  children: count.default(0), highChairs: count.default(0), wheelchairs: count.default(0), suppliers: count.default(0),
  ceremony: count.optional(), evening: count.optional(), quiet: count.optional(),
}).superRefine((g, ctx) => {
  const all = g.adults + g.children;
  const limits: readonly (readonly [keyof typeof g, number, string])[] = [
    ["children", Math.max(0, LIMITS.guests - g.adults), `with the adults at most ${LIMITS.guests}`],
    ["highChairs", g.children, "at most as many as children"],
    ["wheelchairs", all, "at most as many as adults and children"],
    ["quiet", all, "at most as many as adults and children"],
  ];
  for (const [field, limit, message] of limits) {
    const n = g[field];
    if (typeof n === "number" && n > limit) ctx.addIssue({ code: "custom", path: [field], message, input: n });
  }
});

/** The couple's answers, `marquetry.brief/1`. "Not sure yet" is a field left out: the defaults below are then taken. */
export const briefSchema = record({
  format: z.literal("marquetry.brief/1"),
  package: id,
  date: dateText,
  couple: z.array(label).min(1).max(4).readonly().optional(),
  reference: z.string().max(80).optional(),
  today: dateText.optional(),
  guests: guestsSchema,
  ceremony: record({
    here: z.boolean().default(true),
    room: roomOrAny.default("any"),
    seating: z.enum(["rows", "curve", "standing", "at-tables"]).default("rows"),
    aisle: z.enum(["centre", "sides", "none"]).default("centre"),
  }).prefault({}),
  meal: record({
    service: z.enum(["plated", "buffet", "sharing", "stations", "none"]).default("plated"),
    tables: z.enum(["rounds", "long", "mixed", "any"]).default("any"),
    form: z.enum(["grid", "u", "e", "t", "hollow-square", "spine", "diagonal", "any"]).default("any"),
    top: z.enum(["pair", "one-sided", "round", "none"]).default("pair"),
    perTable: z.union([z.enum(["comfort", "most"]), z.int().min(1).max(100)]).default("comfort"),
    room: roomOrAny.default("any"),
    topPlaces: z.int().min(1).max(60).optional(),
    familyTables: z.int().min(0).max(20).optional(),
  }).prefault({}),
  music: record({
    by: z.enum(["dj", "band", "playlist", "none"]).default("playlist"),
    players: z.int().min(0).max(100).default(0),
    dancing: z.number().min(0).max(1).default(0),
    atCeremony: z.boolean().default(false),
    more: z.array(record({
      scene: z.enum(["ceremony", "drinks", "meal", "dancing"]), by: z.enum(["dj", "band", "playlist"]),
      players: z.int().min(0).max(100).optional(), watts: z.int().min(0).max(100_000).optional(),
    })).max(20).readonly().optional(),
  }).prefault({}),
  displays: z.array(z.enum(DISPLAYS)).refine(unique, "each display once").readonly().default([]),
  extras: z.array(z.enum(EXTRAS)).refine(unique, "each extra once").readonly().default([]),
  turnover: z.boolean().optional(),
  drape: z.enum(["any", "yes", "no"]).optional(),
  wishes: z.array(z.union([
    record({ put: z.enum(WISH_WHAT), near: z.enum(WISH_WHERE) }),
    record({ put: z.enum(WISH_WHAT), "away-from": z.enum(WISH_WHERE) }),
    record({ put: z.enum(WISH_WHAT), "in-sight-of": z.enum(WISH_WHERE) }),
  ])).max(50).readonly().default([]),
  brought: z.array(record({
    what: label, width: z.int().min(50).max(100_000), depth: z.int().min(50).max(100_000),
    watts: z.int().min(0).max(100_000).optional(), scene: z.enum(["ceremony", "drinks", "meal", "dancing"]).optional(),
  })).max(50).readonly().optional(),
  times: record({
    access: timeText.optional(), ceremony: timeText.optional(), drinks: timeText.optional(), meal: timeText.optional(),
    dancing: timeText.optional(), clear: timeText.optional(),
  }).optional(),
  notes: freeText.default(""),
});

export type Brief = z.output<typeof briefSchema>;
export type BriefFile = z.input<typeof briefSchema>;
export type Display = (typeof DISPLAYS)[number];
export type Extra = (typeof EXTRAS)[number];
export type Wish = Brief["wishes"][number];
export const people = (b: Brief): number => b.guests.adults + b.guests.children;
