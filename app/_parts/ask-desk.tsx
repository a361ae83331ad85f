import type { BookingView } from "@/lib/service";
import type { Say } from "@/lib/words/pages";
import type { Kept } from "@/app/_server/kept";
import { oneOf } from "@/components/form/values";
import { AreaField } from "@/components/ui/field";
import { sayMoment } from "@/components/ui/say";

type Props = { readonly booking: BookingView; readonly kept: Kept | null; readonly say: Say };

/** What they asked of the desk, and when: until it is answered. */
export function AskedOfDesk({ booking, say }: Omit<Props, "kept">) {
  const { asked, venue } = booking;
  if (!asked) return null;
  const time = sayMoment(asked.at, venue);
  return (
    <section className="section max-w-[50rem]" aria-labelledby="asked-head">
      <h2 id="asked-head">{asked.what === "change" ? say("You asked for a change") : say("You asked for a draft")}</h2>
      {asked.words !== "" && <blockquote className="their-words measure mt-3">{asked.words}</blockquote>}
      <p className="note sec mt-2">{time}. {asked.what === "change" ? say("The venue has it. What is agreed stands until the venue answers.") : say("The venue has it, and mails you when something is there. You may go on meanwhile.")}</p>
    </section>
  );
}

/** After agreement: what should change, in the couple's words. The agreed layout is not touched by asking. */
export function AskForChange({ kept, say }: Omit<Props, "booking">) {
  const errors = (kept?.errors ?? []).map((one) => ({ ...one, message: say.given(one.message) }));
  return (
    <form method="post" action="/request/ask" noValidate className="section max-w-[50rem]">
      <h2>{say("Something must change?")}</h2>
      <input type="hidden" name="what" value="change" />
      <AreaField name="words" label={say("What should change")} hint={say("More or fewer guests, another table, a piece that comes after all. What is agreed stands as it is until the venue answers.")} value={kept ? oneOf(kept.values, "words") : ""} errors={errors} />
      <div className="go-row"><button className="btn" type="submit">{say("Ask for this change")}</button></div>
    </form>
  );
}

/** Before a layout is chosen: those with a coordinator may leave the first draft to them. */
export function AskForDraft({ booking, say }: Omit<Props, "kept">) {
  if (!booking.package.coordinator || booking.asked?.what === "draft") return null;
  return (
    <form method="post" action="/request/ask" className="section max-w-[50rem]">
      <h2>{say("Rather begin from a draft?")}</h2>
      <input type="hidden" name="what" value="draft" />
      <p className="mt-3 measure">{say("Your package includes a coordinator. Answer what you know and ask for a draft: you need not choose a layout yourselves.")}</p>
      <div className="go-row"><button className="btn" type="submit">{say("Ask for a draft")}</button></div>
    </form>
  );
}
