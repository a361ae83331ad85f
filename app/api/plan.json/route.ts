import { planDrawing } from "@/lib/service";
import { whoLooks } from "@/app/_server/who-looks";
import { chosenWords } from "@/app/_server/words";

const MISSING = { status: 404, headers: { "Cache-Control": "no-store" } };

/** One part of the day as marks to paint: what the page's own painter needs. */
export async function GET(request: Request): Promise<Response> {
  const query = new URL(request.url).searchParams;
  const reference = query.get("ref") ?? "", number = query.get("number"), since = query.get("since"), width = Number(query.get("width") ?? 640);
  if (!reference || ![number, since].every((n) => n === null || /^\d{1,6}$/.test(n)) || !(width >= 240 && width <= 2_400)) return new Response(null, MISSING);
  const { house, actor } = await whoLooks(request, reference);
  const drawn = await planDrawing(house, actor, {
    reference, scene: query.get("scene") ?? "", layout: query.get("layout") ?? undefined, number: number === null ? undefined : Number(number),
    set: query.has("set"), late: query.has("late"), wet: query.has("wet"), words: actor.kind === "desk" ? undefined : await chosenWords(), since: since === null ? undefined : Number(since),
    pixelWidth: Math.round(width), ways: query.has("ways"), dimensions: query.has("dimensions"), findings: query.has("findings"),
  });
  return drawn.ok ? Response.json(drawn.value, { headers: { "Cache-Control": "no-store" } }) : new Response(null, MISSING);
}
