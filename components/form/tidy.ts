import type { FieldError, FormValues, StepId } from "@/lib/brief/draft";
import type { Say } from "@/lib/words/pages/say";

const COUNTS = new Set(["adults", "children", "highChairs", "wheelchairs", "suppliers", "quiet", "ceremony", "evening", "players"]);
const COUNT = /^(\d{1,3}(?:[\s,.’'\u00a0\u202f]\d{3})+|\d+)\s*[.,]?\s*(?:people|persons|guests|adults|children|players|of us|personas|invitados|adultos|niños|músicos|de nosotros)?\.?$/i;

/** Harmless writing is forgiven: "92 guests", "1,200", "92." become the figures that they mean; anything else stays as typed. */
export function tidied(step: StepId, values: FormValues): FormValues {
  if (step !== "guests" && step !== "music") return values;
  return Object.fromEntries(Object.entries(values).map(([name, value]) => {
    const read = COUNTS.has(name) && typeof value === "string" ? COUNT.exec(value.trim()) : null;
    return [name, read?.[1] ? read[1].replace(/\D/g, "") : value];
  }));
}

/** What each field is called. */
export type Names = Readonly<Record<string, string>>;

/** Each message begins with the name of its field, so that the summary above can be read by itself. */
export function named(errors: readonly FieldError[], names: Names, say: Say): readonly FieldError[] {
  return errors.map((e) => {
    const name = names[e.field];
    const message = say.given(e.message);
    return { field: e.field, message: name && /^(Type|Choose|Keep) /.test(e.message) ? `${name}: ${message.charAt(0).toLowerCase()}${message.slice(1)}` : message };
  });
}
