import { planSvg } from "@/lib/service";
import { whoLooks } from "@/app/_server/who-looks";
import { chosenWords } from "@/app/_server/words";

/** One part of the day as a drawing by itself. */
export async function GET(request: Request): Promise<Response> {
  const query = new URL(request.url).searchParams;
  const reference = query.get("ref") ?? "";
  const number = query.get("number");
  const since = query.get("since");
  const missing = new Response(null, { status: 404, headers: { "Cache-Control": "no-store" } });
  if (!reference || ![number, since].every((n) => n === null || /^\d{1,6}$/.test(n))) return missing;
  const { house, actor } = await whoLooks(request, reference);
  const drawn = await planSvg(house, actor, {
    reference, scene: query.get("scene") ?? undefined, layout: query.get("layout") ?? undefined, number: number === null ? undefined : Number(number),
    set: query.has("set"), late: query.has("late"), wet: query.has("wet"), words: actor.kind === "desk" ? undefined : await chosenWords(), since: since === null ? undefined : Number(since), sheet: true,
  });
  if (!drawn.ok) return missing;
  return new Response(drawn.value, { headers: { "Content-Type": "image/svg+xml; charset=utf-8", "Cache-Control": "no-store", "X-Content-Type-Options": "nosniff" } });
}
