import type { BookingView } from "@/lib/service";
import { Caution } from "@/components/plan/caution";
import { Day } from "@/components/plan/day";
import type { TwoWidths } from "@/components/plan/drawing";
import { Pairs } from "@/components/ui/pairs";
import { capital, sayDay, sayFingerprint, sayMoment, sayMoney } from "@/components/ui/say";

/** The coordinator's words on what was returned, before anything else. */
export function Returned({ booking }: { readonly booking: BookingView }) {
  const last = booking.revisions.findLast((r) => r.reason !== undefined);
  if (!last) return null;
  return (
    <section className="section" aria-labelledby="returned-head">
      <h2 id="returned-head">Returned to you</h2>
      <blockquote className="their-words measure mt-3">{last.reason}</blockquote>
      <p className="note sec mt-2">{booking.venue.contact?.name ?? "Your coordinator"}, about revision {last.number}{last.returnedAt ? `, ${sayMoment(last.returnedAt, booking.venue)}` : ""}.</p>
    </section>
  );
}

/** What holds while nothing has come: the venue's own layout. That it is nobody's agreement is said first. */
export function SetByVenue({ booking, plans }: { readonly booking: BookingView; readonly plans: Readonly<Record<string, TwoWidths>> }) {
  const { setByVenue, venue } = booking;
  if (!setByVenue) return null;
  const { layout } = setByVenue;
  return (
    <section className="section" aria-labelledby="set-head">
      <h2 id="set-head">Set by the venue, not agreed</h2>
      <p className="lead measure mt-3">Nothing had come by {sayDay(booking.dueDate, venue.locale)}, so {venue.name} has put down its standard layout: {layout.title}.</p>
      <p className="measure mt-3">It stands until you send yours. Whether another can still be had is for the venue to say.</p>
      <Day layout={layout} venue={venue} plans={plans} query={`ref=${encodeURIComponent(booking.reference)}&set`} />
      <Caution />
    </section>
  );
}

const NEXT = {
  sent: "{who} looks at it and either agrees it or returns it with a reason. You get a mail either way; nothing is needed from you now.",
  agreed: "This is the layout of your day. If something must change, write to {who}.",
  closed: "This booking is closed. If that surprises you, write to the venue.",
} as const;

/** Where the request stands once it is out of the couple's hands: reference, what happens next, the PDF. */
export function Standing({ booking }: { readonly booking: BookingView }) {
  const { venue, state } = booking;
  const last = booking.revisions.at(-1);
  const head = state === "agreed" ? `Agreed: revision ${last?.number ?? ""}` : state === "closed" ? "Closed" : `Sent: revision ${last?.number ?? ""}`;
  const next = state === "sent" || state === "agreed" || state === "closed" ? capital(NEXT[state].replace("{who}", booking.package.coordinator ? "your coordinator" : "the venue")) : null;
  return (
    <section className="section max-w-[50rem]" aria-labelledby="standing-head">
      <h2 id="standing-head">{head}</h2>
      {next && <p className="lead mt-4">{next}</p>}
      <div className="mt-5"><Pairs pairs={[
        { name: "Reference", value: <b>{booking.reference}</b> },
        { name: "The day", value: sayDay(booking.date, venue.locale) },
        ...(last ? [
          { name: "Sent", value: sayMoment(last.sentAt, venue), more: `revision ${last.number}` },
          { name: "Layout", value: last.layout.title },
          { name: "Extra to pay", value: sayMoney(last.quote.total, venue) },
          { name: "Fingerprint", value: <span className="fingerprint">{sayFingerprint(last.fingerprint)}</span>, more: "The same figures stand on the PDF: that is how you know that both mean the same layout." },
        ] : []),
        ...(last?.agreedAt ? [{ name: "Agreed", value: sayMoment(last.agreedAt, venue) }] : []),
      ]} /></div>
      {last && (
        <p className="go-row">
          <a className="btn" href={`/api/proposal.pdf?ref=${encodeURIComponent(booking.reference)}&number=${last.number}`}>Proposal as PDF</a>
          <a href={`/request/revision/${last.number}`}>What was sent, with its plans</a>
        </p>
      )}
      <Caution />
    </section>
  );
}
