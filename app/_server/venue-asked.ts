import { notFound } from "next/navigation";
import { listVenues, type VenueView } from "@/lib/service";
import { keep } from "./kept";
import { desk } from "./asking";
import { see, wholeOf } from "./form";
import type { FormValues, Outcome } from "@/lib/service";

/** The venue of an address, as it stands, with who asks. */
export async function venueAsked(id: string): Promise<Awaited<ReturnType<typeof desk>> & VenueView> {
  const asking = await desk();
  const seen = await listVenues(asking.house, asking.actor, {});
  const found = seen.ok ? seen.value.find((v) => v.id === id) : undefined;
  if (!found) notFound();
  return { ...asking, ...found };
}

type Back = { readonly outcome: Outcome<{ readonly version: number }>; readonly page: string; readonly owner: string; readonly form: string; readonly values: FormValues; /** Where to go when it is saved; left out: back to the page. */ readonly done?: string };

/** After a save: on to where it leads, or back to the form with what was typed and what is amiss. */
export function venueSaved({ outcome, page, owner, form, values, done }: Back): Response {
  if (outcome.ok) return see(`${done ?? page}?done=${outcome.value.version}`);
  if (outcome.error.code === "not-allowed") return see("/desk/venue?done=not-yours");
  const stale = outcome.error.code === "stale";
  const errors = outcome.error.code === "invalid" ? outcome.error.errors
    : [{ field: "save", message: stale ? "Somebody saved a newer version while you typed. Your words are below; look at the newest version before you save over it." : "This was not saved. Try again." }];
  return see(`${page}?kept=${keep({ form, owner, values, errors, stale })}`);
}

export const versionOf = (values: FormValues): number => wholeOf(values, "version");
