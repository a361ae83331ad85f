import { giveNumbers } from "@/lib/service";
import { deskAct } from "@/app/_server/desk-post";

type Context = { readonly params: Promise<{ readonly ref: string }> };

export async function POST(request: Request, { params }: Context): Promise<Response> {
  const { ref: reference } = await params;
  return deskAct({ request, reference, done: "numbers", run: ({ house, actor, values }) => giveNumbers(house, actor, { reference, values }) });
}
