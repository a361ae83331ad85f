import { arrangingOf, currentActor, theHouse } from "@/lib/service";

/** How far the engine is with the couple's answers. */
export async function GET(request: Request): Promise<Response> {
  const house = await theHouse();
  const actor = await currentActor(house, { cookie: request.headers.get("cookie"), side: "couple" });
  const headers = { "Cache-Control": "no-store" };
  if (actor.kind !== "couple") return new Response(null, { status: 404, headers });
  const seen = await arrangingOf(house, actor, { reference: actor.reference });
  return seen.ok ? Response.json(seen.value, { headers }) : new Response(null, { status: 404, headers });
}
