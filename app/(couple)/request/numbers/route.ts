import { giveNumbers } from "@/lib/service";
import { see } from "@/app/_server/form";
import { keep } from "@/app/_server/kept";
import { post } from "@/app/_server/post";

/** The couple's final numbers: kept beside the layout, which they change by nothing. */
export async function POST(request: Request): Promise<Response> {
  return post(request, "couple", async ({ house, actor, values }) => {
    if (actor.kind !== "couple") return see("/open?why=ended");
    const told = await giveNumbers(house, actor, { reference: actor.reference, values });
    if (told.ok) return see("/request#numbers");
    if (told.error.code !== "invalid") return see("/request");
    return see(`/request?kept=${keep({ form: "numbers", owner: actor.reference, values, errors: told.error.errors })}#numbers`);
  });
}
