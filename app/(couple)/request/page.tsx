import type { Metadata } from "next";
import { ANSWER_STEPS } from "@/lib/brief/draft";
import type { BookingView } from "@/lib/service";
import type { Say } from "@/lib/words/pages";
import { asked, couple, type Search } from "@/app/_server/asking";
import { CoupleFrame } from "@/app/_parts/couple-frame";
import { plansOf } from "@/app/_server/plans";
import { AskedOfDesk, AskForChange, AskForDraft, KeptOfYou } from "@/app/_parts/ask-desk";
import { NumbersAsk } from "@/app/_parts/numbers-ask";
import { Returned, SetByVenue, Standing } from "@/app/_parts/standing";
import { heldFor } from "@/app/_server/kept";
import { saidShort } from "@/components/form/said";
import { StepList, type StepLine } from "@/components/form/steps";
import { shownValues } from "@/components/form/values";
import { Names } from "@/components/ui/names";
import { sayDay, sayLeft } from "@/components/ui/say";

export async function generateMetadata(): Promise<Metadata> {
  const { booking, say } = await couple();
  return { title: `${say("Your day")} – ${booking.venue.name}` };
}

/** The way through, and how far along it they are. */
function linesOf(b: BookingView, say: Say): readonly StepLine[] {
  const answers = ANSWER_STEPS.map((id): StepLine => {
    const done = b.answered.includes(id);
    return { id, said: done ? saidShort(id, shownValues(b.draft, id), b.venue, say) : "", state: done ? "done" : "open" };
  });
  const chosen = b.chosen && !b.chosen.outdated;
  return [
    ...answers,
    { id: "layout", said: b.chosen ? (b.chosen.outdated ? say("Your answers have changed since you chose: look again.") : b.chosen.layout.title) : b.brief ? "" : say("Once we know how many adults you are."), state: chosen ? "done" : b.brief ? "open" : "later" },
    { id: "send", said: chosen ? "" : say("Once you have chosen a layout."), state: chosen ? "open" : "later" },
  ];
}

export default async function RequestPage({ searchParams }: { readonly searchParams: Search }) {
  const { house, actor, booking, say } = await couple();
  const { venue, state, setByVenue } = booking;
  const lines = linesOf(booking, say);
  const kept = heldFor(await asked(searchParams, "kept"), "ask", actor.reference);
  const why = await asked(searchParams, "why");
  const next = lines.find((l) => l.state === "open");
  const saved = (await asked(searchParams, "saved")) === "1";
  const open = state === "invited" || state === "started" || state === "returned";
  return (
    <CoupleFrame booking={booking} savedAt={booking.answered.length > 0 ? booking.savedAt : undefined}>
      <p className="step-line">{sayDay(booking.date, venue.locale)}, {booking.package.name}</p>
      <h1><Names names={booking.names} locale={venue.locale} /></h1>
      {saved && <p className="lead mt-4" role="status">{say("Saved. The link in your mail brings you back here, on this device or another.")}</p>}
      {state === "returned" && <Returned booking={booking} say={say} />}
      {why === "closed" && <p className="lead measure mt-4" role="status">{say("That cannot be done as your booking stands now. This is how it stands:")}</p>}
      {open ? (
        <>
          <p className="lead measure mt-4">
            {state === "returned" ? say("Change what needs it and send it again.") : say("Eight short steps to the layout of your day.")} {booking.overdue ? say("It was due by {day}.", { day: sayDay(booking.dueDate, venue.locale) }) : say("We need it by {day}, {left}.", { day: sayDay(booking.dueDate, venue.locale), left: sayLeft(booking.daysLeft, say) })}
          </p>
          <p className="small sec measure mt-2">{say("Each step is saved when you press its button. “Not sure yet” is an answer.")} {booking.package.coordinator ? say("Your coordinator reads what you send, and answers it.") : say("With your package you decide yourselves; the venue looks whether it can be laid so.")}</p>
          <div className="section max-w-[50rem]"><h2 className="hidden-words">{say("Steps")}</h2><StepList lines={lines} say={say} /></div>
          {next && <p className="go-row"><a className="btn btn-go" href={`/request/${next.id}`}>{booking.answered.length === 0 ? say("Begin with your guests") : say("Go on where you left off")}</a></p>}
          <AskedOfDesk booking={booking} say={say} />
          {lines.some((l) => l.id === "layout" && l.state === "open") && <AskForDraft booking={booking} say={say} />}
          {setByVenue && <SetByVenue booking={booking} say={say} plans={await plansOf(house, actor, { reference: booking.reference, layout: setByVenue.layout, set: true })} />}
        </>
      ) : (
        <>
          <Standing booking={booking} say={say} />
          <AskedOfDesk booking={booking} say={say} />
          {(state === "agreed" || state === "sent") && <NumbersAsk booking={booking} kept={heldFor(await asked(searchParams, "kept"), "numbers", actor.reference)} say={say} />}
          {state === "agreed" && <AskForChange kept={kept} say={say} />}
        </>
      )}
      {state !== "closed" && booking.answered.length > 0 && <KeptOfYou booking={booking} say={say} />}
      {state !== "closed" && <p className="mt-10"><a href="/request/share">{say("Let someone look")}</a><span className="sec">: {say("family and friends, by a link that changes nothing.")}</span></p>}
    </CoupleFrame>
  );
}
