import type { Brief } from "../../brief";
import type { Finding } from "../../layout";
import type { Venue } from "../../venue";
import { refusal } from "../refusal";
import { FORMS, leastTables } from "../seating/forms";

/**
 * What the brief's own words shut out, whatever the rooms: a form of joined long tables where rounds are asked for or too few tables
 * join; a ceremony at the laid tables of a day without a meal.
 */
export const askedProofs = (venue: Venue, brief: Brief): readonly Finding[] => [...formProof(venue, brief), ...atTablesProof(venue, brief)];

function formProof(venue: Venue, { meal }: Brief): readonly Finding[] {
  const form = meal.service === "none" ? undefined : FORMS.find((f) => f === meal.form);
  if (!form) return [];
  const least = leastTables(form);
  const owned = Math.max(0, ...venue.stock.filter((s) => s.kind === "table" && s.joins && !("diameter" in s.shape) && (s.seats?.most ?? 0) > 0).map((s) => s.count));
  const rounds = meal.tables === "rounds";
  if (!rounds && owned >= least) return [];
  return [refusal(venue, {
    code: "bound-form", level: "must", source: "the venue's tables and how they are asked for", scene: "meal", items: [], measured: owned, limit: least, unit: "tables", data: { form, ...(rounds ? { rounds } : {}) },
  })];
}

function atTablesProof(venue: Venue, { ceremony, meal }: Brief): readonly Finding[] {
  if (!ceremony.here || ceremony.seating !== "at-tables" || meal.service !== "none") return [];
  return [refusal(venue, { code: "bound-at-tables", level: "must", source: "the parts of the day asked for", scene: "ceremony", items: [], measured: 0, limit: 1, unit: "tables", data: {} })];
}
