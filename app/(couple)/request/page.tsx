import type { Metadata } from "next";
import { ANSWER_STEPS } from "@/lib/brief/draft";
import type { BookingView } from "@/lib/service";
import { asked, couple, type Search } from "@/app/_server/asking";
import { CoupleFrame } from "@/app/_parts/couple-frame";
import { plansOf } from "@/app/_server/plans";
import { Returned, SetByVenue, Standing } from "@/app/_parts/standing";
import { saidShort } from "@/components/form/said";
import { StepList, type StepLine } from "@/components/form/steps";
import { shownValues } from "@/components/form/values";
import { Names } from "@/components/ui/names";
import { sayDay, sayLeft } from "@/components/ui/say";

export async function generateMetadata(): Promise<Metadata> {
  const { booking } = await couple();
  return { title: `Your day – ${booking.venue.name}` };
}

/** The way through, and how far along it they are. */
function linesOf(b: BookingView): readonly StepLine[] {
  const answers = ANSWER_STEPS.map((id): StepLine => {
    const done = b.answered.includes(id);
    return { id, said: done ? saidShort(id, shownValues(b.draft, id), b.venue) : "", state: done ? "done" : "open" };
  });
  const chosen = b.chosen && !b.chosen.outdated;
  return [
    ...answers,
    { id: "layout", said: b.chosen ? (b.chosen.outdated ? "Your answers have changed since you chose: look again." : b.chosen.layout.title) : b.brief ? "" : "Once we know how many adults you are.", state: chosen ? "done" : b.brief ? "open" : "later" },
    { id: "send", said: chosen ? "" : "Once you have chosen a layout.", state: chosen ? "open" : "later" },
  ];
}

export default async function RequestPage({ searchParams }: { readonly searchParams: Search }) {
  const { house, actor, booking } = await couple();
  const { venue, state, setByVenue } = booking;
  const lines = linesOf(booking);
  const next = lines.find((l) => l.state === "open");
  const saved = (await asked(searchParams, "saved")) === "1";
  const open = state === "invited" || state === "started" || state === "returned";
  return (
    <CoupleFrame booking={booking} savedAt={booking.savedAt}>
      <p className="step-line">{sayDay(booking.date, venue.locale)}, {booking.package.name}</p>
      <h1><Names names={booking.names} locale={venue.locale} /></h1>
      {saved && <p className="lead mt-4" role="status">Saved. The link in your mail brings you back here, on this device or another.</p>}
      {state === "returned" && <Returned booking={booking} />}
      {open ? (
        <>
          <p className="lead measure mt-4">
            {state === "returned" ? "Change what needs it and send it again" : "Eight short steps to the layout of your day"}. {booking.overdue ? "It was due by" : "We need it by"} {sayDay(booking.dueDate, venue.locale)}{booking.overdue ? "" : `, ${sayLeft(booking.daysLeft)}`}.
          </p>
          <p className="small sec measure mt-2">Each step is saved by itself. “Not sure yet” is an answer.</p>
          <div className="section max-w-[50rem]"><h2 className="hidden-words">Steps</h2><StepList lines={lines} /></div>
          {next && <p className="go-row"><a className="btn btn-go" href={`/request/${next.id}`}>{booking.answered.length === 0 ? "Begin with your guests" : "Go on where you left off"}</a></p>}
          {setByVenue && <SetByVenue booking={booking} plans={await plansOf(house, actor, { reference: booking.reference, layout: setByVenue.layout, set: true })} />}
        </>
      ) : <Standing booking={booking} />}
    </CoupleFrame>
  );
}
