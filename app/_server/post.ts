import { currentActor, sameOrigin, theHouse, type Actor, type FormValues, type House } from "@/lib/service";
import { see, told, valuesOf } from "./form";

type Post = { readonly house: House; readonly actor: Actor; readonly values: FormValues; readonly form: FormData };

/**
 * A form sent by hand, from our own pages only. Forms post to fixed addresses rather than to server actions: a page that was
 * left open over a new version still saves, and the browser goes to the answer in the same way with scripts on and off.
 */
export async function post(request: Request, side: "couple" | "desk" | "look" | "either", answer: (p: Post) => Promise<Response>): Promise<Response> {
  const house = await theHouse();
  if (!sameOrigin(house, request)) return new Response("This form did not come from our own page.", { status: 403, headers: { "Content-Type": "text/plain; charset=utf-8" } });
  const form = await request.formData().catch(() => null);
  if (!form) return see("/");
  const actor = await currentActor(house, { cookie: request.headers.get("cookie"), side });
  const answered = await answer({ house, actor, values: valuesOf(form), form });
  return request.headers.get("accept") === "application/json" ? told(answered) : answered;
}
