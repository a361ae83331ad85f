import type { z } from "zod";
import { BOOKING_FORM, RETURN_FORM } from "@/lib/booking";
import { isStep, STEP_SCHEMAS, type FieldError, type FormValues, type StepId } from "@/lib/brief/draft";
import type { Say } from "@/lib/words/pages/say";
import { named, tidied, type Names } from "../tidy";

export type { Names };
export type FormName = StepId | "booking" | "return";

/** The schema that the server reads the form with. */
export const schemaOf = (form: FormName): z.ZodType<Record<string, unknown>, Record<string, unknown>> =>
  form === "booking" ? BOOKING_FORM : form === "return" ? RETURN_FORM : STEP_SCHEMAS[form];

/** What is typed, as the server takes it before it reads it. */
export const taken = (form: FormName, values: FormValues): FormValues => (isStep(form) ? tidied(form, values) : values);

/** The words of what is amiss, as the server puts them. */
export const worded = (form: FormName, errors: readonly FieldError[], { names, say }: { readonly names: Names; readonly say: Say }): readonly FieldError[] => (isStep(form) ? named(errors, names, say) : errors);
