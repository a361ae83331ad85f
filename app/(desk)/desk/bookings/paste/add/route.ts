import { addPasted } from "@/lib/service";
import { keep } from "@/app/_server/kept";
import { see, textOf, wholeOf } from "@/app/_server/form";
import { post } from "@/app/_server/post";

export async function POST(request: Request): Promise<Response> {
  return post(request, "desk", async ({ house, actor, values }) => {
    if (actor.kind !== "desk") return see("/desk/open");
    const added = await addPasted(house, actor, { text: textOf(values, "list"), good: wholeOf(values, "good"), mail: textOf(values, "mail") !== "no" });
    if (added.ok) return see(`/desk?added=${added.value.references.length}`);
    const errors = added.error.code === "invalid" ? added.error.errors : [{ field: "list", message: "The list does not read as it did when you looked: nothing was added. Below is how it reads now." }];
    return see(`/desk/bookings/paste?kept=${keep({ form: "paste", owner: actor.person, values, errors })}`);
  });
}
