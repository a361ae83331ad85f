import { cookies } from "next/headers";
import { isStep as asksSomething, type StepId } from "@/lib/brief/draft";
import { getBooking, saveStep, setsAside, type Actor, type FormValues, type House } from "@/lib/service";
import { keep } from "@/app/_server/kept";
import { see, textOf, wholeOf } from "@/app/_server/form";
import { post } from "@/app/_server/post";
import { wasOf } from "@/app/_server/was";
import { isStep, stepAfter, type StepName } from "@/components/form/steps";
import { tidied } from "@/components/form/tidy";
import { apartIn } from "@/components/form/two";
import { shownValues } from "@/components/form/values";
import { ENGLISH } from "@/lib/words/pages";

type Context = { readonly params: Promise<{ readonly step: string }> };

const OURS = new Set(["revision", "then", "back", "reference", "was", "sure"]);
const answersIn = (values: FormValues): FormValues => Object.fromEntries(Object.entries(values).filter(([k]) => !OURS.has(k)));

/** Where a saved step leads: on, back to the list it was opened from, or to the overview for another day. */
function onward(step: StepName, values: FormValues): string {
  const then = textOf(values, "then");
  if (then === "later") return "/request?saved=1";
  if (then === "stay") return `/request/${step}?saved=1#effect`;
  if (textOf(values, "back") === "send") return "/request/send";
  return `/request/${stepAfter(step) ?? "send"}`;
}

type Asked = { readonly step: StepId; readonly reference: string; readonly values: FormValues; readonly typed: FormValues };

/**
 * A save that began from an older revision. Where this step is as it was, others alone were saved meanwhile, and it is saved after
 * them; where it says already what was typed there is nothing to save; else both versions are shown, and nothing is overwritten.
 */
async function late(house: House, actor: Actor, { step, reference, values, typed }: Asked): Promise<"saved" | "apart"> {
  const seen = await getBooking(house, actor, { reference });
  if (!seen.ok) return "apart";
  const { draft, venue, revision } = seen.value;
  const mine = tidied(step, typed);
  if (apartIn({ step, stands: shownValues(draft, step), typed: mine, venue, say: ENGLISH }).length === 0) return "saved";
  if (textOf(values, "was") !== wasOf(draft, step)) return "apart";
  return (await saveStep(house, actor, { reference, step, values: mine, revision })).ok ? "saved" : "apart";
}

export async function POST(request: Request, { params }: Context): Promise<Response> {
  const { step } = await params;
  if (!isStep(step) || !asksSomething(step)) return see("/request");
  return post(request, "couple", async ({ house, actor, values }) => {
    const typed = answersIn(values);
    const base = { revision: textOf(values, "revision"), was: textOf(values, "was") };
    const back = textOf(values, "back") === "send" ? "&back=send" : "";
    if (actor.kind !== "couple") {
      // The visit has ended: what was typed waits until the link is opened again in this browser.
      const key = keep({ form: step, owner: textOf(values, "reference"), values: typed, errors: [], base });
      (await cookies()).set("held", key, { httpOnly: true, sameSite: "lax", secure: house.origin.startsWith("https:"), path: "/", maxAge: 86_400 });
      return see("/open?why=ended");
    }
    // That a chosen layout would be set aside is asked about before it is done.
    const aside = textOf(values, "sure") === "1" ? undefined : await setsAside(house, actor, { reference: actor.reference, step, values: tidied(step, typed) });
    if (aside?.ok && aside.value) {
      return see(`/request/${step}?kept=${keep({ form: step, owner: actor.reference, values: typed, errors: [], base })}&sure=1${back}`);
    }
    const saved = await saveStep(house, actor, { reference: actor.reference, step, values: tidied(step, typed), revision: wholeOf(values, "revision") });
    if (saved.ok) return see(onward(step, values));
    switch (saved.error.code) {
      case "invalid":
        return see(`/request/${step}?kept=${keep({ form: step, owner: actor.reference, values: typed, errors: saved.error.errors, base })}${back}`);
      case "stale":
        if ((await late(house, actor, { step, reference: actor.reference, values, typed })) === "saved") return see(onward(step, values));
        return see(`/request/${step}/both?kept=${keep({ form: step, owner: actor.reference, values: typed, errors: [], stale: true })}${back}`);
      default:
        return see("/request?why=closed");
    }
  });
}
