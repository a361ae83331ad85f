import { currentActor, sheetsPdfFor, theHouse } from "@/lib/service";

const refuse = (status: number): Response => new Response(null, { status, headers: { "Cache-Control": "no-store" } });

/** The day's sheets of a booking as PDF, for the desk. */
export async function GET(request: Request): Promise<Response> {
  const query = new URL(request.url).searchParams;
  const reference = query.get("ref") ?? "";
  const number = query.get("number");
  if (!reference || (number !== null && !/^\d{1,6}$/.test(number))) return refuse(404);
  const house = await theHouse();
  const actor = await currentActor(house, { cookie: request.headers.get("cookie"), side: "desk" });
  const made = await sheetsPdfFor(house, actor, { reference, number: number === null ? undefined : Number(number) });
  if (!made.ok) return refuse(made.error.code === "incomplete" || made.error.code === "wrong-state" ? 409 : 404);
  const { bytes, fileName } = made.value;
  const plain = fileName.replace(/[^\w.-]+/g, "-");
  return new Response(new Uint8Array(bytes), {
    headers: {
      "Content-Type": "application/pdf", "Cache-Control": "no-store", "X-Content-Type-Options": "nosniff",
      "Content-Disposition": `inline; filename="${plain}"; filename*=UTF-8''${encodeURIComponent(fileName)}`,
    },
  });
}
