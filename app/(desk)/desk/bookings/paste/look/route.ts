import { lookAtPasted } from "@/lib/service";
import { keep } from "@/app/_server/kept";
import { see, textOf } from "@/app/_server/form";
import { post } from "@/app/_server/post";

/** Shows what a pasted list would add. Nothing is added yet. */
export async function POST(request: Request): Promise<Response> {
  return post(request, "desk", async ({ house, actor, values }) => {
    if (actor.kind !== "desk") return see("/desk/open");
    const seen = await lookAtPasted(house, actor, { text: textOf(values, "list") });
    const errors = seen.ok ? [] : seen.error.code === "invalid" ? seen.error.errors : [{ field: "list", message: "The list was not read." }];
    return see(`/desk/bookings/paste?kept=${keep({ form: "paste", owner: actor.person, values, errors })}`);
  });
}
