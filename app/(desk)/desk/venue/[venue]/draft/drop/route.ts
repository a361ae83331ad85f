import { dropVenueDraft } from "@/lib/service";
import { see } from "@/app/_server/form";
import { post } from "@/app/_server/post";

type Context = { readonly params: Promise<{ readonly venue: string }> };

export async function POST(request: Request, { params }: Context): Promise<Response> {
  const { venue } = await params;
  return post(request, "desk", async ({ house, actor }) => {
    if (actor.kind !== "desk") return see("/desk/open");
    const done = await dropVenueDraft(house, actor, { venue });
    return see(`/desk/venue?done=${!done.ok && done.error.code === "not-allowed" ? "not-yours" : "let-go"}`);
  });
}
