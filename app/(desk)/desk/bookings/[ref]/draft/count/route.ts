import { countGuests } from "@/lib/service";
import { deskAct } from "@/app/_server/desk-post";
import { wholeOf } from "@/app/_server/form";

type Context = { readonly params: Promise<{ readonly ref: string }> };

export async function POST(request: Request, { params }: Context): Promise<Response> {
  const { ref: reference } = await params;
  return deskAct({ request, reference, done: "counted", page: "draft", then: "draft", run: ({ house, actor, values }) => countGuests(house, actor, { reference, revision: wholeOf(values, "revision"), values }) });
}
