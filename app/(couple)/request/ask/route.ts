import { askDesk, askErasure } from "@/lib/service";
import { see, textOf } from "@/app/_server/form";
import { keep } from "@/app/_server/kept";
import { post } from "@/app/_server/post";

/** Asks the desk for a change of what is agreed, for a draft to begin from, or for what is kept to be erased. */
export async function POST(request: Request): Promise<Response> {
  return post(request, "couple", async ({ house, actor, values }) => {
    if (actor.kind !== "couple") return see("/open?why=ended");
    if (textOf(values, "what") === "erase") {
      await askErasure(house, actor, { reference: actor.reference });
      return see("/request#kept-head");
    }
    const what = textOf(values, "what") === "draft" ? "draft" : "change";
    const words = textOf(values, "words");
    const asked = await askDesk(house, actor, { reference: actor.reference, what, words });
    if (asked.ok) return see(what === "change" ? "/request?asked=change#standing-head" : "/request?asked=draft");
    if (asked.error.code === "invalid") return see(`/request?kept=${keep({ form: "ask", owner: actor.reference, values: { words }, errors: asked.error.errors })}#words`);
    return see("/request");
  });
}
