import { agreeRevision } from "@/lib/service";
import { deskAct } from "@/app/_server/desk-post";
import { textOf, wholeOf } from "@/app/_server/form";

type Context = { readonly params: Promise<{ readonly ref: string }> };

export async function POST(request: Request, { params }: Context): Promise<Response> {
  const { ref: reference } = await params;
  return deskAct({
    request, reference, done: "agreed",
    run: ({ house, actor, values }) => agreeRevision(house, actor, { reference, number: wholeOf(values, "number"), fingerprint: textOf(values, "fingerprint") }),
  });
}
