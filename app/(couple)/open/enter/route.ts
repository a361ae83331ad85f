import { cookies } from "next/headers";
import { keepWords, openLink } from "@/lib/service";
import { heldForm } from "@/app/_server/kept";
import { see, textOf } from "@/app/_server/form";
import { post } from "@/app/_server/post";
import { chosenWords } from "@/app/_server/words";
import { isStep } from "@/components/form/steps";

/** Opens the visit. The key came in the body, so the address that follows does not hold it. */
export async function POST(request: Request): Promise<Response> {
  return post(request, "couple", async ({ house, values }) => {
    const key = textOf(values, "key");
    const opened = await openLink(house, { key });
    if (!opened.ok) return see(/^[\w.~-]{8,200}$/.test(key) ? `/open/${key}` : "/open");
    const { cookie, purpose, reference } = opened.value;
    const jar = await cookies();
    jar.set(cookie.name, cookie.value, cookie.options);
    if (purpose === "desk") return see("/desk");
    if (purpose === "look") return see("/look");
    // What was chosen before the link was opened is kept with the booking from now on.
    const chosen = await chosenWords();
    if (reference && (chosen.language ?? chosen.lengths)) await keepWords(house, { kind: "couple", reference }, { reference, chosen });
    const held = jar.get("held")?.value;
    const form = reference ? heldForm(held, reference) : null;
    if (!form || !isStep(form)) return see("/request");
    jar.delete("held");
    return see(`/request/${form}?kept=${held}`);
  });
}
