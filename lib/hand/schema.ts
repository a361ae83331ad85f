import { z } from "zod";
import { freeText, id, label, point, record } from "../base/schema";
import { itemSchema, SCENES } from "../layout/schema";

const piece = z.string().min(1).max(120);
const scene = z.enum(SCENES);
/** Degrees clockwise, of any sign and size; kept in [0, 360). */
const turned = z.number().min(-3_600).max(3_600);
/** `only`: in this part of the day alone; left out, wherever in the day the piece stands as it stands here. */
const where = { scene, piece, only: z.boolean().optional() };
/** `run`: with the tables that are joined to it and bear its number, which stay joined. */
const whole = { ...where, run: z.boolean().optional() };

export const additionSchema = z.union([
  record({ kind: z.literal("stock"), id }),
  record({ kind: z.literal("standing"), id }),
  /** One of the things that the answers say are brought, by its place in that list. */
  record({ kind: z.literal("brought"), what: label, width: z.int().min(50).max(100_000), depth: z.int().min(50).max(100_000) }),
]);

export const editSchema = z.discriminatedUnion("do", [
  record({ do: z.literal("place"), ...whole, room: id, at: point, angle: turned.optional() }),
  record({ do: z.literal("turn"), ...whole, angle: turned }),
  /** The two change places. */
  record({ do: z.literal("swap"), ...where, with: piece }),
  /** Another kind of table at the same spot. */
  record({ do: z.literal("exchange"), ...where, stock: id }),
  record({ do: z.literal("lay"), ...where, places: z.int().min(0).max(400) }),
  record({ do: z.literal("remove"), ...whole }),
  record({ do: z.literal("add"), scene, what: additionSchema, room: id, at: point.optional(), angle: turned.optional(), only: z.boolean().optional() }),
  record({ do: z.literal("hold"), piece, on: z.boolean(), with: z.array(piece).max(60).readonly().optional() }),
  record({ do: z.literal("note"), ...where, text: freeText }),
]);

/** A run of a list replaced by another: `was` stood from `from` on, `now` stands there. */
const splice = record({ from: z.int().min(0), was: z.array(itemSchema).readonly(), now: z.array(itemSchema).readonly() });
const ofScene = record({
  scene, wet: z.boolean(), items: splice,
  seats: z.tuple([z.int(), z.int()]).readonly(),
  numbers: z.tuple([z.array(piece).readonly(), z.array(piece).readonly()]).readonly().optional(),
});
export const patchSchema = record({
  scenes: z.array(ofScene).readonly(),
  held: z.tuple([z.array(piece).readonly(), z.array(piece).readonly()]).readonly().optional(),
});
export const entrySchema = record({
  /** What was asked; "mend": the engine put the plan right round what is held. */
  edit: z.union([editSchema, record({ do: z.literal("mend"), moved: z.int().min(0) })]),
  /** It in words, as of when it was done. */
  said: z.string().max(400),
  patch: patchSchema,
});
