import type { z } from "zod";
import type {
  capacitySchema, findingSchema, insteadSchema, itemSchema, layoutSchema, moveSchema, quoteLineSchema, quoteSchema,
  resultSchema, sceneSchema, seatSchema, STYLES, toldSchema, turnoverSchema, wetTwinSchema,
} from "./schema";

export type SceneId = "ceremony" | "drinks" | "meal" | "dancing";
export type Style = (typeof STYLES)[number];
export type Seat = z.output<typeof seatSchema>;
export type Item = z.output<typeof itemSchema>;
export type ItemKind = Item["kind"];
export type ItemShape = Item["shape"];
export type Finding = z.output<typeof findingSchema>;
export type Level = Finding["level"];
export type Scene = z.output<typeof sceneSchema>;
export type Move = z.output<typeof moveSchema>;
export type Turnover = z.output<typeof turnoverSchema>;
export type QuoteLine = z.output<typeof quoteLineSchema>;
export type Quote = z.output<typeof quoteSchema>;
export type Layout = z.output<typeof layoutSchema>;
export type WetTwin = z.output<typeof wetTwinSchema>;
/** A sentence before it is words. */
export type Told = z.output<typeof toldSchema>;
export type Instead = z.output<typeof insteadSchema>;
export type ArrangeResult = z.output<typeof resultSchema>;
export type Capacity = z.output<typeof capacitySchema>;
export type Fit = { readonly seats: number; readonly tables: number; readonly items: readonly Item[] };
