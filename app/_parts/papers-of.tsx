import type { BookingView, RevisionView } from "@/lib/service";

type Props = { readonly booking: BookingView; readonly revision: RevisionView | undefined };

/** The papers of a revision: what the couple have, what crew, caterer and musicians work from, and the day for a calendar. */
export function PapersOf({ booking, revision }: Props) {
  if (!revision) return null;
  const ref = encodeURIComponent(booking.reference);
  const own = `ref=${ref}&number=${revision.number}`;
  const agreed = revision.agreedAt !== undefined;
  const newest = revision.number === booking.revisions.at(-1)?.number;
  return (
    <section className="section" aria-labelledby="papers-head">
      <h2 id="papers-head">Papers of revision {revision.number}</h2>
      <ul className="papers">
        <li><a href={`/api/proposal.pdf?${own}`}>Proposal as PDF</a><span className="note sec">What the couple have.</span></li>
        <li><a href={`/api/sheets.pdf?${own}`}>Sheets for the day as PDF</a><span className="note sec">Crew, caterer and musicians.{agreed ? "" : " Not agreed: a draft."}</span></li>
        {newest && (booking.state === "sent" || booking.state === "agreed") && (
          <li><a href={`/api/calendar.ics?ref=${ref}`}>The day for a calendar</a><span className="note sec">Its parts, its turnovers and the due date.</span></li>
        )}
      </ul>
    </section>
  );
}
