import { standardKey } from "@/lib/service";
import { adjustPost } from "@/app/_server/adjust-post";
import { see } from "@/app/_server/form";
import { post } from "@/app/_server/post";

type Context = { readonly params: Promise<{ readonly venue: string }> };

export async function POST(request: Request, { params }: Context): Promise<Response> {
  const { venue } = await params;
  return post(request, "desk", async ({ house, actor, values }) => {
    if (actor.kind !== "desk") return see("/desk/open");
    const home = `/desk/venue/${encodeURIComponent(venue)}/standard`;
    return adjustPost({ house, actor, reference: standardKey(venue), values, owner: actor.person, page: `${home}/adjust`, then: home, script: request.headers.get("accept") === "application/json" });
  });
}
