import type { ReactNode } from "react";
import type { FieldError, FormValues } from "@/lib/brief/draft";
import type { Capacity } from "@/lib/layout";
import type { Venue } from "@/lib/venue";

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
};
/** The first question stands beside its effect; the rest follow below (on a phone, after the effect). */
export type Asked = { readonly first: ReactNode; readonly rest: ReactNode };

export const UNSURE = { value: "unsure", name: "Not sure yet" } as const;
