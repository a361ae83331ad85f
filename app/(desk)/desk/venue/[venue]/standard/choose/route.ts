import { chooseStandard } from "@/lib/service";
import { see, textOf, wholeOf } from "@/app/_server/form";
import { post } from "@/app/_server/post";
import { filledFrom, venueSaved } from "@/app/_server/venue-asked";

type Context = { readonly params: Promise<{ readonly venue: string }> };

/** A layout that was sent or agreed (its reference and number in one field), or one that was worked out for so many guests. */
export async function POST(request: Request, { params }: Context): Promise<Response> {
  const { venue } = await params;
  return post(request, "desk", async ({ house, actor, values }) => {
    if (actor.kind !== "desk") return see("/desk/open");
    const at = { venue, ...filledFrom(values), title: textOf(values, "title") }, [reference = "", number = ""] = textOf(values, "revision").split("/");
    const outcome = await chooseStandard(house, actor, textOf(values, "revision") !== ""
      ? { ...at, reference, number: Number(number) || 0 }
      : { ...at, guests: wholeOf(values, "guests"), pack: textOf(values, "package"), layout: textOf(values, "layout") });
    return venueSaved({ outcome, page: `/desk/venue/${encodeURIComponent(venue)}/standard`, owner: actor.person, form: "venue-standard", values });
  });
}
