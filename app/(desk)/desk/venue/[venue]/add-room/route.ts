import { addRoom } from "@/lib/service";
import { see } from "@/app/_server/form";
import { post } from "@/app/_server/post";
import { venueSaved, filledFrom } from "@/app/_server/venue-asked";

type Context = { readonly params: Promise<{ readonly venue: string }> };

export async function POST(request: Request, { params }: Context): Promise<Response> {
  const { venue } = await params;
  return post(request, "desk", async ({ house, actor, values }) => {
    if (actor.kind !== "desk") return see("/desk/open");
    const outcome = await addRoom(house, actor, { venue, ...filledFrom(values), values });
    const done = outcome.ok ? `/desk/venue/${encodeURIComponent(venue)}/rooms/${outcome.value.room}` : undefined;
    return venueSaved({ outcome, page: `/desk/venue/${encodeURIComponent(venue)}/new-room`, owner: actor.person, form: "venue-room", values, done });
  });
}
