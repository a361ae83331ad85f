import type { BookingView, FieldError, RevisionView } from "@/lib/service";
import { byRoom, namesIn } from "@/components/plan/hand/pieces";
import { PageForm } from "@/components/form/page/page-form";
import { AreaField, TextField } from "@/components/ui/field";
import { sayFingerprint, sayMoment } from "@/components/ui/say";
import { handVoice } from "@/lib/words/hand";

const DONE: Readonly<Record<string, string>> = {
  added: "The booking is added.", mailed: "A fresh link is on its way. Those mailed before open nothing any more.", returned: "Returned. The couple get your words by mail.",
  agreed: "Agreed. The couple get a mail that names the revision and its fingerprint.", closed: "Closed. Its link no longer opens.",
  reminded: "A reminder is on its way.", address: "The address is changed, and a fresh link goes there. Those mailed before open nothing any more.",
  drafted: "The draft is theirs, and they have a mail.", changed: "The change waits to be agreed, as a revision of its own. What was agreed holds until then.", dropped: "What was worked out is let go.",
  numbers: "Their final numbers are kept.", standard: "The standard layout is set: by the venue, not agreed. The couple have a mail.", erased: "Their names and words are erased.",
};

/** What stands on the booking's page after an act: what was done, or why it was not. */
export function doneWords(done: string | undefined, { booking, by, rooms }: { readonly booking: BookingView; readonly by?: string; readonly rooms?: string }): string | undefined {
  if (done === "moved") return `That could not be done: this booking is ${STATE_WORDS[booking.state]} now. Below is how it stands.`;
  if (done === "taken") return `Not agreed: ${by ?? "another booking"} is agreed for the same time and holds ${rooms ?? "the same rooms"}. Close that one or agree other hours first.`;
  if (done === "mailed" && booking.mails.length <= 1) return "Their link is on its way.";
  if (done === "added" && booking.mails.length === 0) return "The booking is added. Their link is not mailed yet: mail it from here when it is time.";
  return done === undefined ? undefined : DONE[done];
}
const STATE_WORDS: Readonly<Record<BookingView["state"], string>> = { invited: "invited", started: "started", sent: "sent", returned: "returned", agreed: "agreed", closed: "closed" };

type DecideProps = { readonly booking: BookingView; readonly revision: RevisionView | undefined; readonly reason: string; readonly pieces?: readonly string[]; readonly errors: readonly FieldError[] };

/** Tables and pieces that a reason can be tied to, each once, in the order and by the names of the list under the hand; chairs are left out. */
function piecesOf(revision: RevisionView): readonly { readonly id: string; readonly label: string; readonly part: string }[] {
  const seen = new Set<string>();
  // What stands at the meal is told there, though it may stand at the drinks already.
  const scenes = [...revision.layout.scenes].sort((a, b) => Number(b.id === "meal") - Number(a.id === "meal"));
  return scenes.flatMap((scene) => {
    const names = namesIn(scene, handVoice("en-GB"));
    return byRoom(scene).flatMap(({ items }) => items)
      .filter((item) => item.kind !== "chair" && item.role !== "wheelchair-space" && !seen.has(item.id) && seen.add(item.id))
      .map((item) => ({ id: item.id, label: names.get(item.id) ?? item.label, part: scene.title }));
  });
}

function PieceChoice({ revision, chosen }: { readonly revision: RevisionView; readonly chosen: readonly string[] }) {
  const pieces = piecesOf(revision), parts = [...new Set(pieces.map((one) => one.part))];
  return (
    <details className="act mt-4" open={chosen.length > 0}><summary>Pieces that it is about</summary>
      <p className="small sec">Their names stand under your words.</p>
      {parts.map((part) => (
        <fieldset key={part} className="ticks pieces mt-2"><legend className="tick-legend">{part}</legend>
          {pieces.filter((one) => one.part === part).map((one) => <label className="tick" key={one.id} htmlFor={`piece-${one.id}`}><input id={`piece-${one.id}`} type="checkbox" name="piece" value={one.id} defaultChecked={chosen.includes(one.id)} /><span>{one.label}</span></label>)}
        </fieldset>
      ))}
    </details>
  );
}

/** Agree exactly what is shown, or return it with a reason that reaches the couple in these words. */
export function Decide({ booking, revision, reason, pieces = [], errors }: DecideProps) {
  const last = booking.revisions.at(-1);
  const base = `/desk/bookings/${booking.reference}`;
  const holds = booking.revisions.findLast((r) => r.agreedAt !== undefined);
  if (booking.state !== "sent" || !revision) return <Settled booking={booking} />;
  if (revision.number !== last?.number) return <p className="small section">This is revision {revision.number}. <a href={base}>The newest is revision {last?.number}.</a></p>;
  return (
    <section className="section" aria-labelledby="decide-head">
      <h2 id="decide-head">Your answer</h2>
      {holds && <p className="small mt-3">Revision {holds.number} was agreed {sayMoment(holds.agreedAt ?? holds.sentAt, booking.venue)} and holds until you agree this one.</p>}
      <form method="post" action={`${base}/agree`} className="mt-4">
        <input type="hidden" name="number" value={revision.number} />
        <input type="hidden" name="fingerprint" value={revision.fingerprint} />
        <button className="btn btn-go w-full" type="submit">Agree revision {revision.number}</button>
        <p className="note sec mt-2">Freezes answers, layout, the venue’s facts and prices as they are here, under the fingerprint <span className="fingerprint">{sayFingerprint(revision.fingerprint)}</span>.</p>
      </form>
      <PageForm form="return" action={`${base}/return`} className="mt-2">
        <input type="hidden" name="number" value={revision.number} />
        <AreaField name="reason" label="Or return it with a reason" hint="The couple read these words. 4,000 characters at the most." value={reason} errors={errors} rows={4} />
        <PieceChoice revision={revision} chosen={pieces} />
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
    return <section className="section"><h2>Returned</h2><blockquote className="their-words mt-3">{returned.reason}</blockquote>{returned.pieces && <p className="small mt-2">About: {returned.pieces.join(", ")}.</p>}<p className="note sec mt-2">With them{returned.returnedAt ? ` since ${sayMoment(returned.returnedAt, booking.venue)}` : ""}.</p></section>;
  }
  if (booking.state === "closed") {
    return (
      <section className="section"><h2>Closed</h2>
        {booking.closedReason && <p className="their-words mt-3">{booking.closedReason}</p>}
        {booking.erasedAt ? <p className="small mt-3">Names, addresses and words were erased, {sayMoment(booking.erasedAt, booking.venue)}. Layouts, prices and fingerprints stay.</p> : (
          <details className="act mt-3"><summary>Erase their names and words</summary>
            <form method="post" action={`/desk/bookings/${booking.reference}/erase`} className="pb-4">
              <p className="small mt-3">Names, addresses, notes and mails go for good. Numbers, layouts, prices and the history of what happened stay, and each fingerprint still comes out.</p>
              <button className="btn mt-4" type="submit">Erase them for good</button>
            </form>
          </details>
        )}
      </section>
    );
  }
  return null;
}

/** Where their mail stands, and the means to reach them again. */
export function MailPart({ booking, email, errors }: { readonly booking: BookingView; readonly email: string; readonly errors: readonly FieldError[] }) {
  const mails = booking.mails.slice(0, 5);
  const base = `/desk/bookings/${booking.reference}`;
  const word = { queued: "waiting to go", sent: "sent", failed: "did not arrive" } as const;
  const open = booking.state === "invited" || booking.state === "started" || booking.state === "returned";
  return (
    <section className="section" id="mail"><h2>Mail</h2>
      <p className="small mt-3 break-all">{booking.email}</p>
      <ul className="history">{mails.map((m) => <li key={m.id}><span>{m.subject}: <b className={m.state === "sent" ? "font-normal" : ""}>{word[m.state]}</b>{m.why ? ` (${m.why})` : ""}</span><span className="by">{sayMoment(m.sentAt ?? m.queuedAt, booking.venue)}</span></li>)}</ul>
      {booking.state !== "closed" && (
        <>
          <div className="flex flex-wrap gap-3 mt-3">
            {open && <form method="post" action={`${base}/remind`}><button className="btn" type="submit">Remind now</button></form>}
            <form method="post" action={`${base}/mail`}><button className="btn" type="submit">{mails.length === 0 ? "Mail their link" : "Mail a fresh link"}</button></form>
          </div>
          <details className="act mt-5" open={errors.some((e) => e.field === "email")}><summary>Change the address</summary>
            <form method="post" action={`${base}/address`} noValidate className="pb-4">
              <TextField name="email" type="email" inputMode="email" label="Mail address" hint="A fresh link goes there; those mailed before open nothing any more." value={email || booking.email} errors={errors} maxLength={254} />
              <button className="btn mt-4" type="submit">Change it and mail the link</button>
            </form>
          </details>
          <details className="act"><summary>Close this booking</summary>
            <form method="post" action={`${base}/close`} noValidate className="pb-4">
              <AreaField name="closing" label="Why" hint="For the desk. Their link stops opening, and the rooms are free again." errors={[]} rows={2} />
              <button className="btn mt-4" type="submit">Close it</button>
            </form>
          </details>
        </>
      )}
    </section>
  );
}
