import type { BookingView } from "@/lib/service";
import type { Phrase, Say } from "@/lib/words/pages";
import { Caution } from "@/components/plan/caution";
import { Day } from "@/components/plan/day";
import type { TwoWidths } from "@/components/plan/markup";
import { Pairs } from "@/components/ui/pairs";
import { sayDay, sayFingerprint, sayMoment, sayMoney } from "@/components/ui/say";

/** The coordinator's words on what was returned, before anything else. */
export function Returned({ booking, say }: { readonly booking: BookingView; readonly say: Say }) {
  const last = booking.revisions.findLast((r) => r.reason !== undefined);
  if (!last) return null;
  return (
    <section className="section" aria-labelledby="returned-head">
      <h2 id="returned-head">{say("Returned to you")}</h2>
      <blockquote className="their-words measure mt-3">{last.reason}</blockquote>
      {last.pieces && <p className="mt-2">{say("About: {pieces}.", { pieces: last.pieces.join(", ") })}</p>}
      <p className="note sec mt-2">{say("{name}, about revision {number}", { name: booking.venue.contact?.name ?? say("Your coordinator"), number: last.number })}{last.returnedAt ? `, ${sayMoment(last.returnedAt, booking.venue)}` : ""}.</p>
    </section>
  );
}

/** What holds while nothing has come: the venue's own layout. That it is nobody's agreement is said first. */
export function SetByVenue({ booking, plans, say }: { readonly say: Say; readonly booking: BookingView; readonly plans: Readonly<Record<string, TwoWidths>> }) {
  const { setByVenue, venue } = booking;
  if (!setByVenue) return null;
  const { layout } = setByVenue;
  return (
    <section className="section" aria-labelledby="set-head">
      <h2 id="set-head">{say("Set by the venue, not agreed")}</h2>
      <p className="lead measure mt-3">{say("Nothing had come by {day}, so {venue} has put down its standard layout: {layout}.", { day: sayDay(booking.dueDate, venue.locale), venue: venue.name, layout: layout.title })}</p>
      <p className="measure mt-3">{say("It stands until you send yours. Whether another can still be had is for the venue to say.")}</p>
      <Day layout={layout} venue={venue} plans={plans} query={`ref=${encodeURIComponent(booking.reference)}&set`} say={say} />
      <Caution say={say} />
    </section>
  );
}

type Out = "sent" | "agreed" | "closed";
/** What happens next: with a coordinator, and where the couple decide for themselves. */
const NEXT: Readonly<Record<Out, { readonly led: Phrase; readonly alone: Phrase }>> = {
  sent: {
    led: "Your coordinator looks at it and either agrees it or returns it with a reason. You get a mail either way; nothing is needed from you now.",
    alone: "The choice is yours; the venue looks whether it can be laid so, and agrees it or returns it with a reason. You get a mail either way; nothing is needed from you now.",
  },
  agreed: { led: "This is the layout of your day. If something must change, ask your coordinator below.", alone: "This is the layout of your day. If something must change, ask the venue below." },
  closed: { led: "This booking is closed. If that surprises you, write to the venue.", alone: "This booking is closed. If that surprises you, write to the venue." },
};
const isOut = (state: BookingView["state"]): state is Out => state === "sent" || state === "agreed" || state === "closed";
const HEADS: Readonly<Record<Out, Phrase>> = { sent: "Sent: revision {number}", agreed: "Agreed: revision {number}", closed: "Closed" };

/** Where the request stands once it is out of the couple's hands: reference, what happens next, the PDF. */
export function Standing({ booking, say }: { readonly booking: BookingView; readonly say: Say }) {
  const { venue, state } = booking;
  const last = booking.revisions.at(-1);
  if (!isOut(state)) return null;
  return (
    <section className="section max-w-[50rem]" aria-labelledby="standing-head">
      <h2 id="standing-head">{say(HEADS[state], { number: last?.number ?? "" })}</h2>
      <p className="lead mt-4">{say(NEXT[state][booking.package.coordinator ? "led" : "alone"])}</p>
      <div className="mt-5"><Pairs pairs={[
        { name: say("Reference"), value: <b>{booking.reference}</b> },
        { name: say("The day"), value: sayDay(booking.date, venue.locale) },
        ...(last ? [
          { name: say("Sent"), value: sayMoment(last.sentAt, venue), more: say("revision {number}", { number: last.number }) },
          { name: say("Layout"), value: last.layout.title },
          { name: say("Extra to pay"), value: sayMoney(last.quote.total, venue) },
          { name: say("Fingerprint"), value: <span className="fingerprint">{sayFingerprint(last.fingerprint)}</span>, more: say("The same figures stand on the PDF: that is how you know that both mean the same layout.") },
        ] : []),
        ...(last?.agreedAt ? [{ name: say("Agreed"), value: sayMoment(last.agreedAt, venue) }] : []),
      ]} /></div>
      {last && (
        <p className="go-row">
          <a className="btn" href={`/api/proposal.pdf?ref=${encodeURIComponent(booking.reference)}&number=${last.number}`}>{say("Proposal as PDF")}</a>
          <a href={`/request/revision/${last.number}`}>{say("What was sent, with its plans")}</a>
        </p>
      )}
      <Caution say={say} />
    </section>
  );
}
