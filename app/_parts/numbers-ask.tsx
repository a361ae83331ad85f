import type { BookingView } from "@/lib/service";
import type { Say } from "@/lib/words/pages";
import type { Kept } from "@/app/_server/kept";
import { oneOf } from "@/components/form/values";
import { NumberField } from "@/components/ui/field";
import { sayDay, sayLeft } from "@/components/ui/say";

type Props = { readonly booking: BookingView; readonly kept: Kept | null; readonly say: Say };

/** How many sit down in the end: asked later than the layout, by a day of its own. */
export function NumbersAsk({ booking, kept, say }: Props) {
  const { finalNumbers: final, venue, revisions } = booking;
  if (!final) return null;
  const errors = (kept?.errors ?? []).map((one) => ({ ...one, message: say.given(one.message) }));
  const sent = revisions.at(-1)?.brief.guests;
  const value = (name: "adults" | "children"): string => (kept ? oneOf(kept.values, name) : String(final.told?.[name] ?? sent?.[name] ?? ""));
  return (
    <form method="post" action="/request/numbers" noValidate className="section max-w-[50rem]" id="numbers">
      <h2>{say("Final numbers")}</h2>
      <p className="mt-3 measure">{final.told
        ? say("You told us {count}. If that changes, tell us again.", { count: final.told.adults + final.told.children })
        : say("How many sit down to eat in the end? We need it by {day}, {left}.", { day: sayDay(final.dueDate, venue.locale), left: sayLeft(final.daysLeft, say) })} {say("If they differ from your layout, the venue changes it as little as it can.")}</p>
      <div className="fields-row"><NumberField name="adults" label={say("Adults")} value={value("adults")} errors={errors} /><NumberField name="children" label={say("Children")} value={value("children")} errors={errors} /></div>
      <div className="go-row"><button className="btn" type="submit">{say("Give these numbers")}</button></div>
    </form>
  );
}
