import { returnRequest } from "@/lib/service";
import { deskAct } from "@/app/_server/desk-post";
import { textOf, wholeOf } from "@/app/_server/form";

type Context = { readonly params: Promise<{ readonly ref: string }> };

export async function POST(request: Request, { params }: Context): Promise<Response> {
  const { ref: reference } = await params;
  return deskAct({
    request, reference, done: "returned",
    run: ({ house, actor, values }) => {
      const pieces = values.piece === undefined ? [] : typeof values.piece === "string" ? [values.piece] : values.piece;
      return returnRequest(house, actor, { reference, number: wholeOf(values, "number"), reason: textOf(values, "reason").replace(/\r\n/g, "\n").trim(), pieces });
    },
  });
}
