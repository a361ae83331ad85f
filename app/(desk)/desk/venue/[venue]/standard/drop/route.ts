import { dropStandard } from "@/lib/service";
import { see } from "@/app/_server/form";
import { post } from "@/app/_server/post";
import { filledFrom, venueSaved } from "@/app/_server/venue-asked";

type Context = { readonly params: Promise<{ readonly venue: string }> };

export async function POST(request: Request, { params }: Context): Promise<Response> {
  const { venue } = await params;
  return post(request, "desk", async ({ house, actor, values }) => {
    if (actor.kind !== "desk") return see("/desk/open");
    const outcome = await dropStandard(house, actor, { venue, ...filledFrom(values) });
    return venueSaved({ outcome, page: `/desk/venue/${encodeURIComponent(venue)}/standard`, owner: actor.person, form: "venue-standard", values });
  });
}
