import { endReminders, theHouse } from "@/lib/service";
import { see } from "@/app/_server/form";

type Context = { readonly params: Promise<{ readonly key: string }> };

/** The address in a reminder's header and text. Looked at, it asks first. */
export async function GET(_request: Request, { params }: Context): Promise<Response> {
  return see(`/quiet/${encodeURIComponent((await params).key)}/ask`);
}

/** Ends the reminders: pressed on our page, or sent by a mail program without a cookie; that one is answered and not led on (RFC 8058, 3.1). */
export async function POST(request: Request, { params }: Context): Promise<Response> {
  const { key } = await params;
  const done = await endReminders(await theHouse(), { key });
  const form = await request.formData().catch(() => null);
  if (form?.get("from") === "page") return see(`/quiet/${encodeURIComponent(key)}/${done.ok ? "ended" : "ask"}`);
  return new Response(done.ok ? "No more reminders will be sent.\n" : "This link opens nothing.\n", { status: done.ok ? 200 : 404, headers: { "Content-Type": "text/plain; charset=utf-8" } });
}
