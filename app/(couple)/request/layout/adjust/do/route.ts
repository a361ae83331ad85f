import { adjustPost } from "@/app/_server/adjust-post";
import { see } from "@/app/_server/form";
import { post } from "@/app/_server/post";

export async function POST(request: Request): Promise<Response> {
  return post(request, "couple", async ({ house, actor, values }) => {
    if (actor.kind !== "couple") return see("/open?why=ended");
    const { reference } = actor;
    return adjustPost({ house, actor, reference, values, owner: reference, page: "/request/layout/adjust", then: "/request/send", script: request.headers.get("accept") === "application/json" });
  });
}
