import { takeChange } from "@/lib/service";
import { deskAct } from "@/app/_server/desk-post";
import { textOf } from "@/app/_server/form";

type Context = { readonly params: Promise<{ readonly ref: string }> };

export async function POST(request: Request, { params }: Context): Promise<Response> {
  const { ref: reference } = await params;
  return deskAct({ request, reference, done: "changed", page: "change", run: ({ house, actor, values }) => takeChange(house, actor, { reference, seen: textOf(values, "seen") }) });
}
