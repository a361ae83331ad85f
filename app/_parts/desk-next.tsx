import type { BookingView, FieldError } from "@/lib/service";
import { NumberField } from "@/components/ui/field";
import { counted, sayDay, sayLeft, sayMoment } from "@/components/ui/say";

const ASKED = { change: "They ask for a change", draft: "They ask for a draft", erase: "They ask for their data to be erased" } as const;

/** What the couple asked of the desk, in their words, and the way to answer it. */
export function Asked({ booking }: { readonly booking: BookingView }) {
  const { asked, venue } = booking;
  if (!asked) return null;
  return (
    <section className="section" aria-labelledby="asked-head">
      <h2 id="asked-head">{ASKED[asked.what]}</h2>
      {asked.words !== "" && <blockquote className="their-words mt-3">{asked.words}</blockquote>}
      <p className="note sec mt-2">{sayMoment(asked.at, venue)}</p>
      {asked.what === "erase" && booking.state !== "closed" && (
        <form method="post" action={`/desk/bookings/${encodeURIComponent(booking.reference)}/erase`}>
          <p className="small mt-3">The booking is closed and its links end. Names, addresses, notes and mails go for good; numbers, layouts, prices and fingerprints stay. Note down elsewhere what the law or your contract has you keep.</p>
          <button className="btn mt-4" type="submit">Close it and erase them for good</button>
        </form>
      )}
    </section>
  );
}

/** What else the desk may do with a booking as it stands. */
export function NextSteps({ booking }: { readonly booking: BookingView }) {
  const base = `/desk/bookings/${encodeURIComponent(booking.reference)}`;
  const open = booking.state === "invited" || booking.state === "started" || booking.state === "returned";
  if (open) return <p className="mt-5"><a className="btn w-full" href={`${base}/draft`}>Draft for them</a></p>;
  if (booking.state === "agreed") return <p className="mt-5"><a className="btn w-full" href={`${base}/change`}>Late change of numbers</a></p>;
  return null;
}

/** How many sit down in the end: due on a day of its own, told by the couple or put in here. */
export function FinalNumbers({ booking, typed, errors }: { readonly booking: BookingView; readonly typed: Readonly<Record<string, string>>; readonly errors: readonly FieldError[] }) {
  const { finalNumbers: final, venue } = booking;
  if (!final || (booking.state !== "agreed" && booking.state !== "sent")) return null;
  const agreed = booking.revisions.findLast((r) => r.agreedAt !== undefined)?.brief.guests;
  const differs = final.told !== undefined && agreed !== undefined && (final.told.adults !== agreed.adults || final.told.children !== agreed.children);
  const text = (name: "adults" | "children" | "suppliers"): string => typed[name] ?? String(final.told?.[name] ?? agreed?.[name] ?? "");
  return (
    <section className="section" id="numbers"><h2>Final numbers</h2>
      <p className="mt-3">{final.told
        ? <><b>{counted(final.told.adults, "adult", "adults")}, {counted(final.told.children, "child", "children")}</b>{final.told.suppliers === undefined ? "" : `, ${counted(final.told.suppliers, "supplier", "suppliers")} who eat`}; told {final.toldAt ? sayMoment(final.toldAt, venue) : ""}.</>
        : <>Due {sayDay(final.dueDate, venue.locale)}, {sayLeft(final.daysLeft)}. Not told yet.</>}</p>
      {differs && booking.state === "agreed" && <p className="mt-3">The agreed layout is for {agreed.adults + agreed.children}. <a href={`/desk/bookings/${encodeURIComponent(booking.reference)}/change`}>Work the change out</a></p>}
      <details className="act mt-3" open={errors.length > 0}><summary>{final.told ? "Change them" : "Put them in"}</summary>
        <form method="post" action={`/desk/bookings/${encodeURIComponent(booking.reference)}/numbers`} noValidate className="pb-4">
          <div className="fields-row"><NumberField name="adults" label="Adults" value={text("adults")} errors={errors} /><NumberField name="children" label="Children" value={text("children")} errors={errors} /><NumberField name="suppliers" label="Suppliers who eat" value={text("suppliers")} errors={errors} /></div>
          <button className="btn mt-4" type="submit">Keep these numbers</button>
        </form>
      </details>
    </section>
  );
}
