import { calendarFor, currentActor, theHouse } from "@/lib/service";

const refuse = (status: number): Response => new Response(null, { status, headers: { "Cache-Control": "no-store" } });

/** The calendar file of a booking, for the desk. */
export async function GET(request: Request): Promise<Response> {
  const reference = new URL(request.url).searchParams.get("ref") ?? "";
  if (!reference) return refuse(404);
  const house = await theHouse();
  const actor = await currentActor(house, { cookie: request.headers.get("cookie"), side: "desk" });
  const made = await calendarFor(house, actor, { reference });
  if (!made.ok) return refuse(made.error.code === "incomplete" || made.error.code === "wrong-state" ? 409 : 404);
  const plain = made.value.fileName.replace(/[^\w.-]+/g, "-");
  return new Response(made.value.text, {
    headers: {
      "Content-Type": "text/calendar; charset=utf-8", "Cache-Control": "no-store", "X-Content-Type-Options": "nosniff",
      "Content-Disposition": `attachment; filename="${plain}"`,
    },
  });
}
