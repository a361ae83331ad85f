import { setStandard } from "@/lib/service";
import { deskAct } from "@/app/_server/desk-post";

type Context = { readonly params: Promise<{ readonly ref: string }> };

export async function POST(request: Request, { params }: Context): Promise<Response> {
  const { ref: reference } = await params;
  return deskAct({ request, reference, done: "standard", run: ({ house, actor }) => setStandard(house, actor, { reference }) });
}
