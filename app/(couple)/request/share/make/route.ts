import { makeLookLink } from "@/lib/service";
import { see, textOf } from "@/app/_server/form";
import { keep } from "@/app/_server/kept";
import { post } from "@/app/_server/post";

/** Makes a look-only link. Its address is shown once on the page that follows, held on the server meanwhile and never in an address. */
export async function POST(request: Request): Promise<Response> {
  return post(request, "couple", async ({ house, actor, values }) => {
    if (actor.kind !== "couple") return see("/open?why=ended");
    const owner = actor.reference;
    const typed = { label: textOf(values, "label"), email: textOf(values, "email") };
    const made = await makeLookLink(house, actor, { reference: owner, ...typed });
    if (made.ok) return see(`/request/share?made=${keep({ form: "look-link", owner, values: { ...typed, href: made.value.href }, errors: [] })}`);
    if (made.error.code === "invalid") return see(`/request/share?kept=${keep({ form: "share", owner, values: typed, errors: made.error.errors })}`);
    return see("/request?why=closed");
  });
}
