import { removeRoom } from "@/lib/service";
import { see } from "@/app/_server/form";
import { post } from "@/app/_server/post";
import { venueSaved, filledFrom } from "@/app/_server/venue-asked";

type Context = { readonly params: Promise<{ readonly venue: string; readonly room: string }> };

export async function POST(request: Request, { params }: Context): Promise<Response> {
  const { venue, room } = await params;
  return post(request, "desk", async ({ house, actor, values }) => {
    if (actor.kind !== "desk") return see("/desk/open");
    const outcome = await removeRoom(house, actor, { venue, ...filledFrom(values), room });
    return venueSaved({ outcome, page: `/desk/venue/${encodeURIComponent(venue)}/rooms/${encodeURIComponent(room)}`, owner: actor.person, form: `room-${room}`, values: {}, done: "/desk/venue" });
  });
}
