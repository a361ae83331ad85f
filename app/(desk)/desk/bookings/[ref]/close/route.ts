import { closeBooking } from "@/lib/service";
import { deskAct } from "@/app/_server/desk-post";
import { textOf } from "@/app/_server/form";

type Context = { readonly params: Promise<{ readonly ref: string }> };

export async function POST(request: Request, { params }: Context): Promise<Response> {
  const { ref: reference } = await params;
  return deskAct({ request, reference, done: "closed", run: ({ house, actor, values }) => closeBooking(house, actor, { reference, reason: textOf(values, "closing") }) });
}
