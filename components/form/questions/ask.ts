import type { ReactNode } from "react";
import type { FieldError, FormValues } from "@/lib/brief/draft";
import type { Capacity } from "@/lib/layout";
import type { Venue } from "@/lib/venue";
import type { Phrase, Say } from "@/lib/words/pages/say";
import type { Option } from "../../ui/choices";

/** What a step's questions are asked with. */
export type Asking = {
  readonly values: FormValues;
  readonly errors: readonly FieldError[];
  readonly venue: Venue;
  /** The rooms of the couple's package. */
  readonly rooms: Venue["rooms"];
  readonly turnoverInPackage: boolean;
  readonly capacity: Capacity | null;
  /** Guests at the meal; 0 while not known. */
  readonly guests: number;
  readonly say: Say;
};
/** The first question stands beside its effect; the rest follow below (on a phone, after the effect). */
export type Asked = { readonly first: ReactNode; readonly rest: ReactNode };

/** A choice as it stands in the tables: its words are phrases, said when it is shown. */
export type Choice = { readonly value: string; readonly name: Phrase; readonly why?: Phrase };
export const UNSURE = { value: "unsure", name: "Not sure yet" } as const;

/** A question that has "whichever suits" among its answers needs no "not sure yet" beside it: to the layouts they are one. What was left open before stands under it. */
export const orAny = (value: string): string => (value === "unsure" ? "any" : value);

export const spoken = (choice: Choice, say: Say): Option => ({ value: choice.value, name: say(choice.name), why: choice.why && say(choice.why) });
export const spokenAll = (choices: readonly Choice[], say: Say): readonly Option[] => choices.map((one) => spoken(one, say));
