import type { FormValues, StepId } from "@/lib/brief/draft";
import type { Say } from "@/lib/words/pages";
import type { Venue } from "@/lib/venue";
import { saidIn } from "./said";
import { manyOf } from "./values";

/** A field of which two versions are there: as it stands saved, and as it was typed meanwhile. */
export type Apart = { readonly field: string; readonly name: string; readonly theirs: string; readonly mine: string; /** Both can be had: a list of boxes. */ readonly joins: boolean };
export type Taken = "theirs" | "mine" | "both";
export const isTaken = (text: string): text is Taken => text === "theirs" || text === "mine" || text === "both";
const LISTS: readonly string[] = ["displays", "wishes", "extras"];

type Two = { readonly stands: FormValues; readonly typed: FormValues };
type How = Two & { readonly step: StepId; readonly venue: Venue; readonly say: Say };

/** The fields in which two versions of a step differ, in the order of its page. */
export function apartIn({ step, stands, typed, venue, say }: How): readonly Apart[] {
  const theirs = new Map(saidIn(step, stands, venue, say).map((one) => [one.field, one.said]));
  return saidIn(step, typed, venue, say).flatMap(({ field, name, said }): readonly Apart[] => {
    const other = theirs.get(field) ?? "";
    if (other === said) return [];
    const joins = LISTS.includes(field) && manyOf(stands, field).length > 0 && manyOf(typed, field).length > 0;
    return [{ field, name, theirs: other, mine: said, joins }];
  });
}

/** One version out of two: each field as it was decided; those that do not differ as they stand. */
export function joined({ stands, typed }: Two, taken: Readonly<Record<string, Taken>>): FormValues {
  const fields = [...new Set([...Object.keys(stands), ...Object.keys(typed)])];
  return Object.fromEntries(fields.map((field) => {
    const how = taken[field] ?? "theirs";
    if (how === "both") return [field, [...new Set([...manyOf(stands, field), ...manyOf(typed, field)])]];
    return [field, how === "mine" ? typed[field] : stands[field]];
  }));
}
