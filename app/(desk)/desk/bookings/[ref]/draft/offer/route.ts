import { offerDraft } from "@/lib/service";
import { deskAct } from "@/app/_server/desk-post";
import { textOf, wholeOf } from "@/app/_server/form";

type Context = { readonly params: Promise<{ readonly ref: string }> };

export async function POST(request: Request, { params }: Context): Promise<Response> {
  const { ref: reference } = await params;
  return deskAct({ request, reference, done: "drafted", page: "draft", run: ({ house, actor, values }) => offerDraft(house, actor, { reference, revision: wholeOf(values, "revision"), layout: textOf(values, "layout"), words: textOf(values, "words") }) });
}
