import { beginVenue } from "@/lib/service";
import { see } from "@/app/_server/form";
import { post } from "@/app/_server/post";
import { venueSaved } from "@/app/_server/venue-asked";

export async function POST(request: Request): Promise<Response> {
  return post(request, "desk", async ({ house, actor, values }) => {
    if (actor.kind !== "desk") return see("/desk/open");
    const outcome = await beginVenue(house, actor, { values });
    return venueSaved({ outcome, page: "/desk/venue/new", owner: actor.person, form: "venue-new", values, done: outcome.ok ? "/desk/venue" : undefined });
  });
}
