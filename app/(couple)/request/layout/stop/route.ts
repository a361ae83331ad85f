import { stopArranging } from "@/lib/service";
import { see, textOf } from "@/app/_server/form";
import { post } from "@/app/_server/post";

/** Ends the search, to see what there is so far; or has it worked out in full after all. */
export async function POST(request: Request): Promise<Response> {
  return post(request, "couple", async ({ house, actor, values }) => {
    if (actor.kind !== "couple") return see("/open?why=ended");
    await stopArranging(house, actor, { reference: actor.reference, again: textOf(values, "then") === "again" });
    return see("/request/layout");
  });
}
