import { saveVenuePage } from "@/lib/service";
import { see } from "@/app/_server/form";
import { post } from "@/app/_server/post";
import { venueSaved, filledFrom } from "@/app/_server/venue-asked";
import { isSection } from "@/app/_server/venue-pages";

type Context = { readonly params: Promise<{ readonly venue: string; readonly page: string }> };

export async function POST(request: Request, { params }: Context): Promise<Response> {
  const { venue, page } = await params;
  return post(request, "desk", async ({ house, actor, values }) => {
    if (actor.kind !== "desk") return see("/desk/open");
    if (!isSection(page)) return see("/desk/venue");
    const outcome = await saveVenuePage(house, actor, { venue, ...filledFrom(values), place: { section: page }, values });
    return venueSaved({ outcome, page: `/desk/venue/${encodeURIComponent(venue)}/${page}`, owner: actor.person, form: `venue-${page}`, values });
  });
}
