import { chooseLayout } from "@/lib/service";
import { see, textOf, wholeOf } from "@/app/_server/form";
import { post } from "@/app/_server/post";

export async function POST(request: Request): Promise<Response> {
  return post(request, "couple", async ({ house, actor, values }) => {
    if (actor.kind !== "couple") return see("/open?why=ended");
    const then = textOf(values, "then"), later = then === "later";
    const layout = textOf(values, "layout");
    if (!layout) return see(later ? "/request" : "/request/layout?why=none");
    const saved = await chooseLayout(house, actor, { reference: actor.reference, layout, revision: wholeOf(values, "revision") });
    if (saved.ok) return see(later ? "/request?saved=1" : then === "adjust" ? "/request/layout/adjust" : "/request/send");
    switch (saved.error.code) {
      case "stale":
      case "incomplete":
      case "not-found": return see("/request/layout?why=changed");
      default: return see("/request?why=closed");
    }
  });
}
