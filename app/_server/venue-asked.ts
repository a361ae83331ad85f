import { notFound } from "next/navigation";
import { venuesToEdit, type VenueToEdit } from "@/lib/service";
import { keep } from "./kept";
import { desk } from "./asking";
import { see, wholeOf } from "./form";
import type { FormValues, Outcome } from "@/lib/service";

/** The venue of an address as its editor shows it, with who asks. */
export async function venueAsked(id: string): Promise<Awaited<ReturnType<typeof desk>> & VenueToEdit> {
  const asking = await desk();
  const seen = await venuesToEdit(asking.house, asking.actor);
  const found = seen.ok ? seen.value.find((v) => v.id === id) : undefined;
  if (!found) notFound();
  return { ...asking, ...found };
}

type Back = { readonly outcome: Outcome<{ readonly version: number; readonly draft?: number }>; readonly page: string; readonly owner: string; readonly form: string; readonly values: FormValues; /** Where to go when it is saved; left out: back to the page. */ readonly done?: string };

/** After a save: on to where it leads, or back to the form with what was typed and what is amiss. */
export function venueSaved({ outcome, page, owner, form, values, done }: Back): Response {
  if (outcome.ok) return see(`${done ?? page}?done=${outcome.value.draft === undefined ? outcome.value.version : "draft"}`);
  if (outcome.error.code === "not-allowed") return see("/desk/venue?done=not-yours");
  const stale = outcome.error.code === "stale";
  const errors = outcome.error.code === "invalid" ? outcome.error.errors
    : [{ field: "save", message: stale ? "Somebody saved a newer version while you typed. Your words are below; look at the newest version before you save over it." : "This was not saved. Try again." }];
  return see(`${page}?kept=${keep({ form, owner, values, errors, stale })}`);
}

/** What the form was filled from: the version, and the draft where there was one; and the version that it may take the place of. */
export const filledFrom = (values: FormValues): { readonly version: number; readonly draft: number; readonly over: number } => ({ version: wholeOf(values, "version"), draft: Math.max(0, wholeOf(values, "draft")), over: wholeOf(values, "over") });

/** What stands over a page of the editor after a save. */
export const savedWords = (done: string): string => (done === "draft" ? "Kept as a draft. No booking uses it until it is whole and saved as a version." : `Saved as version ${done}.`);
