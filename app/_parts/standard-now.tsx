import type { BookingView } from "@/lib/service";
import { sayDay } from "@/components/ui/say";

/** Past the due date with nothing sent: the venue's own layout can be put down by hand. It is nobody's agreement. */
export function StandardNow({ booking }: { readonly booking: BookingView }) {
  const { venue, setByVenue } = booking, standard = venue.standardLayout;
  if (!booking.overdue || booking.revisions.length > 0 || booking.daysLeft >= 0) return null;
  const same = setByVenue !== undefined && standard !== undefined && JSON.stringify(setByVenue.layout) === JSON.stringify(standard);
  if (same) return null;
  return (
    <section className="section" aria-labelledby="standard-head"><h2 id="standard-head">Nothing has come</h2>
      <p className="small mt-3">Their layout was due {sayDay(booking.dueDate, venue.locale)}. {standard ? `“${standard.title}” can be set: by the venue, not agreed. They are told, and can still send theirs.` : "The venue has no standard layout to set."}</p>
      {standard
        ? <form method="post" action={`/desk/bookings/${encodeURIComponent(booking.reference)}/standard`}><button className="btn w-full mt-4" type="submit">Use the standard layout now</button></form>
        : <p className="mt-3"><a href="/desk/venue">Make one on the venue’s pages</a></p>}
    </section>
  );
}
