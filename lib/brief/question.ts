import type { Brief } from "./schema";

/** What the engine is asked: the answers less what cannot move a table, so that a new note does not ask it again. */
export const questionOf = (brief: Brief): Brief => ({ ...brief, couple: undefined, reference: undefined, notes: "" });

/** The seed of every question that a booking asks, and how many layouts it may be offered: the same wherever it is asked. */
export const SEED = 1;
export const LAYOUTS = 3;
