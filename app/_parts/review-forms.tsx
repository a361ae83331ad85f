import type { BookingView, FieldError, RevisionView } from "@/lib/service";
import { PageForm } from "@/components/form/page/page-form";
import { AreaField } from "@/components/ui/field";
import { sayFingerprint, sayMoment } from "@/components/ui/say";

export const DONE: Readonly<Record<string, string>> = {
  added: "The booking is added.", mailed: "A fresh link is on its way. Those mailed before open nothing any more.", returned: "Returned. The couple get your words by mail.",
  agreed: "Agreed. The couple get a mail that names the revision and its fingerprint.", closed: "Closed. Its link no longer opens.",
  moved: "That could not be done: the booking has moved on meanwhile. Below is how it stands now.",
};

type DecideProps = { readonly booking: BookingView; readonly revision: RevisionView | undefined; readonly reason: string; readonly errors: readonly FieldError[] };

/** Agree exactly what is shown, or return it with a reason that reaches the couple in these words. */
export function Decide({ booking, revision, reason, errors }: DecideProps) {
  const last = booking.revisions.at(-1);
  const base = `/desk/bookings/${booking.reference}`;
  if (booking.state !== "sent" || !revision) return <Settled booking={booking} />;
  if (revision.number !== last?.number) return <p className="small section">This is revision {revision.number}. <a href={base}>The newest is revision {last?.number}.</a></p>;
  return (
    <section className="section" aria-labelledby="decide-head">
      <h2 id="decide-head">Your answer</h2>
      <form method="post" action={`${base}/agree`} className="mt-4">
        <input type="hidden" name="number" value={revision.number} />
        <input type="hidden" name="fingerprint" value={revision.fingerprint} />
        <button className="btn btn-go w-full" type="submit">Agree revision {revision.number}</button>
        <p className="note sec mt-2">Freezes answers, layout, the venue’s facts and prices as they are here, under the fingerprint <span className="fingerprint">{sayFingerprint(revision.fingerprint)}</span>.</p>
      </form>
      <PageForm form="return" action={`${base}/return`} className="mt-2">
        <input type="hidden" name="number" value={revision.number} />
        <AreaField name="reason" label="Or return it with a reason" hint="The couple read these words. 4,000 characters at the most." value={reason} errors={errors} rows={4} />
        <button className="btn w-full mt-4" type="submit">Return revision {revision.number}</button>
      </PageForm>
    </section>
  );
}

function Settled({ booking }: { readonly booking: BookingView }) {
  const agreed = booking.revisions.findLast((r) => r.agreedAt !== undefined);
  const returned = booking.revisions.findLast((r) => r.reason !== undefined);
  if (booking.state === "agreed" && agreed) {
    return <section className="section"><h2>Agreed</h2><p className="mt-3">Revision {agreed.number}, {sayMoment(agreed.agreedAt ?? agreed.sentAt, booking.venue)}, under the fingerprint <span className="fingerprint">{sayFingerprint(agreed.fingerprint)}</span>.</p></section>;
  }
  if (booking.state === "returned" && returned) {
    return <section className="section"><h2>Returned</h2><blockquote className="their-words mt-3">{returned.reason}</blockquote><p className="note sec mt-2">With them{returned.returnedAt ? ` since ${sayMoment(returned.returnedAt, booking.venue)}` : ""}.</p></section>;
  }
  return null;
}

/** Where their mail stands, and the means to send it again. */
export function MailPart({ booking }: { readonly booking: BookingView }) {
  const mails = [...booking.mails].slice(-5).reverse();
  const base = `/desk/bookings/${booking.reference}`;
  const word = { queued: "waiting to go", sent: "sent", failed: "did not arrive" } as const;
  return (
    <section className="section" id="mail"><h2>Mail</h2>
      <p className="small mt-3 break-all">{booking.email}</p>
      <ul className="history">{mails.map((m) => <li key={m.id}><span>{m.subject}: <b className={m.state === "sent" ? "font-normal" : ""}>{word[m.state]}</b>{m.why ? ` (${m.why})` : ""}</span><span className="by">{sayMoment(m.sentAt ?? m.queuedAt, booking.venue)}</span></li>)}</ul>
      {booking.state !== "closed" && (
        <form method="post" action={`${base}/mail`} className="mt-3"><button className="btn" type="submit">{mails.length === 0 ? "Mail their link" : "Mail a fresh link"}</button></form>
      )}
      {booking.state !== "closed" && (
        <details className="act mt-5"><summary>Close this booking</summary>
          <form method="post" action={`${base}/close`} noValidate className="pb-4">
            <AreaField name="reason" label="Why" hint="Kept in the history. Their link stops opening." errors={[]} rows={2} />
            <button className="btn mt-4" type="submit">Close it</button>
          </form>
        </details>
      )}
    </section>
  );
}
