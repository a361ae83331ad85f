import { isStep as asksSomething } from "@/lib/brief/draft";
import { getBooking, saveStep, type FormValues } from "@/lib/service";
import { heldFor, keep } from "@/app/_server/kept";
import { see, textOf, wholeOf } from "@/app/_server/form";
import { post } from "@/app/_server/post";
import { isStep, stepAfter } from "@/components/form/steps";
import { tidied } from "@/components/form/tidy";
import { apartIn, isTaken, joined, type Taken } from "@/components/form/two";
import { shownValues } from "@/components/form/values";
import { ENGLISH } from "@/lib/words/pages";

type Context = { readonly params: Promise<{ readonly step: string }> };

/** Which version each field is to have; undefined where one is left open. */
function takenIn(values: FormValues, fields: readonly string[]): Readonly<Record<string, Taken>> | undefined {
  const all = textOf(values, "take");
  if (all === "theirs" || all === "mine") return Object.fromEntries(fields.map((field) => [field, all]));
  const each = fields.flatMap((field) => { const how = textOf(values, field); return isTaken(how) ? [[field, how] as const] : []; });
  return each.length === fields.length ? Object.fromEntries(each) : undefined;
}

/** Saves the version put together out of two, unless a third has come meanwhile. */
export async function POST(request: Request, { params }: Context): Promise<Response> {
  const { step } = await params;
  if (!isStep(step) || !asksSomething(step)) return see("/request");
  return post(request, "couple", async ({ house, actor, values }) => {
    if (actor.kind !== "couple") return see("/open?why=ended");
    const { reference } = actor;
    const key = textOf(values, "kept"), toSend = textOf(values, "back") === "send", back = toSend ? "&back=send" : "";
    const kept = heldFor(key, step, reference);
    const seen = await getBooking(house, actor, { reference });
    if (!kept || !seen.ok) return see(`/request/${step}`);
    const again = (more: string): Response => see(`/request/${step}/both?kept=${key}${back}${more}`);
    // What was compared must still be what stands.
    if (seen.value.revision !== wholeOf(values, "revision")) return again("");
    const two = { stands: shownValues(seen.value.draft, step), typed: tidied(step, kept.values) };
    const apart = apartIn({ step, ...two, venue: seen.value.venue, say: ENGLISH });
    const taken = takenIn(values, apart.map((one) => one.field));
    if (!taken) return again("&why=open");
    const next = see(toSend ? "/request/send" : `/request/${stepAfter(step) ?? "send"}`);
    if (Object.values(taken).every((how) => how === "theirs")) return next;
    const put = joined(two, taken);
    const saved = await saveStep(house, actor, { reference, step, values: put, revision: seen.value.revision });
    if (saved.ok) return next;
    if (saved.error.code === "stale") return again("");
    if (saved.error.code === "invalid") return see(`/request/${step}?kept=${keep({ form: step, owner: reference, values: put, errors: saved.error.errors })}${back}`);
    return see("/request?why=closed");
  });
}
