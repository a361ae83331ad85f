import { capacityFor, currentActor, getBooking, theHouse } from "@/lib/service";
import { venueIn } from "@/app/_server/spoken";
import { speechFor } from "@/app/_server/words";
import { hereOf, soon } from "@/app/_server/soon";
import type { LiveFacts } from "@/components/form/live/messages";

/** The counts are there at once, or nearly: they are worked out ahead for every venue. */
const PATIENCE_MS = 2_000;

/** What a page needs to show by itself what an answer does: the venue, the couple's answers so far, and how many fit. */
export async function GET(request: Request): Promise<Response> {
  const house = await theHouse();
  const actor = await currentActor(house, { cookie: request.headers.get("cookie"), side: "couple" });
  const headers = { "Cache-Control": "no-store" };
  if (actor.kind !== "couple") return new Response(null, { status: 404, headers });
  const { reference } = actor;
  const seen = await getBooking(house, actor, { reference });
  if (!seen.ok) return new Response(null, { status: 404, headers });
  const { draft, date, package: pack } = seen.value;
  const speech = await speechFor(seen.value.venue);
  const venue = venueIn(seen.value.venue, speech);
  const counts = hereOf(await soon(capacityFor(house, actor, { reference }), PATIENCE_MS));
  // The arrangements behind the counts are not shown; their figures are enough.
  const bare = counts && { ...counts, rooms: counts.rooms.map((room) => ({
    ...room, styles: Object.fromEntries(Object.entries(room.styles).map(([style, fits]) => [style, fits && { ...fits, comfort: { ...fits.comfort, items: [] }, most: { ...fits.most, items: [] } }])),
  })) };
  const facts: LiveFacts = { venue, draft, capacity: bare, booking: { package: pack.id, date, couple: [], reference }, language: speech.language };
  return Response.json(facts, { headers });
}
