import { getBooking, saveStep, sendRequest, type Refusal } from "@/lib/service";
import { keep } from "@/app/_server/kept";
import { see, textOf, wholeOf } from "@/app/_server/form";
import { post } from "@/app/_server/post";

/** Where a refusal leads: to what must be known first, or back to the page with what was typed. */
function refused(refusal: Refusal, owner: string, notes: string): Response {
  switch (refusal.code) {
    case "invalid": return see(`/request/send?kept=${keep({ form: "send", owner, values: { notes }, errors: refusal.errors })}`);
    case "stale": return see(`/request/send?kept=${keep({ form: "send", owner, values: { notes }, errors: [], stale: true })}`);
    case "incomplete": return see(refusal.missing.includes("guests") ? "/request/guests" : "/request/layout?why=changed");
    default: return see("/request/sent");
  }
}

export async function POST(request: Request): Promise<Response> {
  return post(request, "couple", async ({ house, actor, values }) => {
    if (actor.kind !== "couple") return see("/open?why=ended");
    const { reference } = actor;
    const notes = textOf(values, "notes").replace(/\r\n/g, "\n").trim();
    const seen = await getBooking(house, actor, { reference });
    if (!seen.ok) return see("/open?why=ended");
    let revision = wholeOf(values, "revision");
    if (notes !== (seen.value.draft.extras?.notes ?? "")) {
      const saved = await saveStep(house, actor, { reference, step: "extras", values: { extras: seen.value.draft.extras?.extras ?? [], notes }, revision });
      if (!saved.ok) return refused(saved.error, reference, notes);
      revision = saved.value.revision;
    }
    if (textOf(values, "then") === "later") return see("/request?saved=1");
    const sent = await sendRequest(house, actor, { reference, revision });
    return sent.ok ? see("/request/sent") : refused(sent.error, reference, notes);
  });
}
