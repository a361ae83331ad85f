import { cookies } from "next/headers";
import { isStep as asksSomething } from "@/lib/brief/draft";
import { saveStep, type FormValues } from "@/lib/service";
import { keep } from "@/app/_server/kept";
import { see, textOf, wholeOf } from "@/app/_server/form";
import { post } from "@/app/_server/post";
import { tidied } from "@/components/form/tidy";
import { isStep, stepAfter, type StepName } from "@/components/form/steps";

type Context = { readonly params: Promise<{ readonly step: string }> };

const OURS = new Set(["revision", "then", "back", "reference"]);
const answersIn = (values: FormValues): FormValues => Object.fromEntries(Object.entries(values).filter(([k]) => !OURS.has(k)));

/** Where a saved step leads: on, back to the list it was opened from, or to the overview for another day. */
function onward(step: StepName, values: FormValues): string {
  const then = textOf(values, "then");
  if (then === "later") return "/request?saved=1";
  if (then === "stay") return `/request/${step}?saved=1#effect`;
  if (textOf(values, "back") === "send") return "/request/send";
  return `/request/${stepAfter(step) ?? "send"}`;
}

export async function POST(request: Request, { params }: Context): Promise<Response> {
  const { step } = await params;
  if (!isStep(step) || !asksSomething(step)) return see("/request");
  return post(request, "couple", async ({ house, actor, values }) => {
    const typed = answersIn(values);
    const back = textOf(values, "back") === "send" ? "&back=send" : "";
    if (actor.kind !== "couple") {
      // The visit has ended: what was typed waits until the link is opened again in this browser.
      const key = keep({ form: step, owner: textOf(values, "reference"), values: typed, errors: [] });
      (await cookies()).set("held", key, { httpOnly: true, sameSite: "lax", secure: house.origin.startsWith("https:"), path: "/", maxAge: 86_400 });
      return see("/open?why=ended");
    }
    const saved = await saveStep(house, actor, { reference: actor.reference, step, values: tidied(step, typed), revision: wholeOf(values, "revision") });
    if (saved.ok) return see(onward(step, values));
    switch (saved.error.code) {
      case "invalid":
        return see(`/request/${step}?kept=${keep({ form: step, owner: actor.reference, values: typed, errors: saved.error.errors })}${back}`);
      case "stale":
        return see(`/request/${step}?kept=${keep({ form: step, owner: actor.reference, values: typed, errors: [], stale: true })}${back}`);
      default:
        return see("/request?why=closed");
    }
  });
}
