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
  if (!asked || asked.what === "erase") return null;
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

/** What is kept of them: to be taken away as a file, or to be erased by the desk. */
export function KeptOfYou({ booking, say }: Omit<Props, "kept">) {
  const { asked, venue } = booking;
  return (
    <section className="section max-w-[50rem]" aria-labelledby="kept-head">
      <h2 id="kept-head">{say("What is kept of you")}</h2>
      <p className="mt-3 measure"><a href="/api/own.json" download>{say("Take your answers with you")}</a><span className="sec">: {say("one file with all that is kept of you, for people and programs alike.")}</span></p>
      {asked?.what === "erase" ? <p className="mt-3 measure" role="status">{say("You asked for it to be erased, {time}. Until the venue has done so, all stands as it is.", { time: sayMoment(asked.at, venue) })}</p> : (
        <details className="act mt-3">
          <summary>{say("Ask for it to be erased")}</summary>
          <form method="post" action="/request/ask" className="pb-4">
            <input type="hidden" name="what" value="erase" />
            <p className="small mt-3 measure">{say("Your names, address, notes and mails then go for good, and your booking here is closed. Numbers, layouts and prices stay with the venue, without your names. The venue is told now and does it; no mail follows, since your address is gone with the rest.")}</p>
            <button className="btn mt-4" type="submit">{say("Ask for it to be erased")}</button>
          </form>
        </details>
      )}
    </section>
  );
}
