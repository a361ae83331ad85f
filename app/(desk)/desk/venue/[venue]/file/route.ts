import { currentActor, listVenues, theHouse } from "@/lib/service";
import { see } from "@/app/_server/form";

type Context = { readonly params: Promise<{ readonly venue: string }> };

/** The venue as its file: what `Read in a venue file` takes. */
export async function GET(request: Request, { params }: Context): Promise<Response> {
  const { venue: id } = await params;
  const house = await theHouse();
  const actor = await currentActor(house, { cookie: request.headers.get("cookie"), side: "desk" });
  const seen = await listVenues(house, actor, {});
  if (!seen.ok) return see("/desk/open");
  const found = seen.value.find((v) => v.id === id);
  if (!found) return new Response("No such venue.", { status: 404 });
  return new Response(`${JSON.stringify(found.venue, null, 2)}\n`, {
    headers: { "Content-Type": "application/json; charset=utf-8", "Content-Disposition": `attachment; filename="${found.id}-version-${found.version}.json"`, "Cache-Control": "no-store", "X-Content-Type-Options": "nosniff" },
  });
}
