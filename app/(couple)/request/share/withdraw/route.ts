import { withdrawLookLink } from "@/lib/service";
import { see, textOf } from "@/app/_server/form";
import { post } from "@/app/_server/post";

export async function POST(request: Request): Promise<Response> {
  return post(request, "couple", async ({ house, actor, values }) => {
    if (actor.kind !== "couple") return see("/open?why=ended");
    await withdrawLookLink(house, actor, { reference: actor.reference, id: textOf(values, "link") });
    return see("/request/share");
  });
}
