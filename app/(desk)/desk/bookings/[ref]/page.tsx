import type { Metadata } from "next";
import { asked, deskBooking, type Search } from "@/app/_server/asking";
import { heldFor } from "@/app/_server/kept";
import { DeskFrame } from "@/app/_parts/desk-frame";
import { Decide, DONE, MailPart } from "@/app/_parts/review-forms";
import { PapersOf } from "@/app/_parts/papers-of";
import { BriefInWords, History, reviewFacts } from "@/app/_parts/review";
import { layoutShown, ReviewPlan } from "@/app/_parts/review-plan";
import { Fees } from "@/components/desk/fees";
import { Findings } from "@/components/desk/findings";
import { Caution } from "@/components/plan/caution";
import { Checked } from "@/components/form/page/checked";
import { Names, namesText } from "@/components/ui/names";

type Props = { readonly params: Promise<{ readonly ref: string }>; readonly searchParams: Search };

export async function generateMetadata({ params, searchParams }: Props): Promise<Metadata> {
  const { booking, actor } = await deskBooking((await params).ref);
  const kept = heldFor(await asked(searchParams, "kept"), "return", actor.person);
  return { title: `${kept && kept.errors.length > 0 ? "Error: " : ""}${namesText(booking.names, booking.venue.locale)} – ${booking.venue.name}` };
}

export default async function ReviewPage({ params, searchParams }: Props) {
  const { ref } = await params;
  const { house, actor, booking } = await deskBooking(ref);
  const { venue } = booking;
  const kept = heldFor(await asked(searchParams, "kept"), "return", actor.person);
  const wanted = Number(await asked(searchParams, "revision"));
  const revision = booking.revisions.find((r) => r.number === wanted) ?? booking.revisions.at(-1);
  const layout = layoutShown(booking, revision);
  const part = await asked(searchParams, "part");
  const findings = revision?.findings ?? layout?.findings ?? [];
  const quote = revision?.quote ?? layout?.quote;
  const titleOf = (id: string): string => layout?.scenes.find((s) => s.id === id)?.title ?? id;
  const done = DONE[(await asked(searchParams, "done")) ?? ""];
  return (
    <DeskFrame person={actor.person} back={{ href: "/desk", text: "Queue" }}>
      <Checked errors={kept?.errors ?? []}>
      <h1 className="mt-2"><Names names={booking.names} locale={venue.locale} /></h1>
      {reviewFacts(booking)}
      {done && <p className="lead mt-4" role="status">{done}</p>}
      <div className="review-grid">
        <div>
          <ReviewPlan house={house} actor={actor} booking={booking} revision={revision} part={part} plain={(await asked(searchParams, "plan")) === "plain"} />
          <div className="two-up">
            {quote && <section className="section"><h2>Fee summary</h2><Fees quote={quote} locale={venue.locale} tax={venue.tax} /></section>}
            <section className="section"><h2>Their words</h2>
              {(revision?.brief.notes ?? booking.draft.extras?.notes)
                ? <blockquote className="their-words mt-3">{revision?.brief.notes ?? booking.draft.extras?.notes}</blockquote>
                : <p className="small sec mt-3">They left no note.</p>}
            </section>
          </div>
        </div>
        <div className="rail">
          {layout && (revision || !booking.setByVenue) && <section className="section"><h2>Findings</h2><Findings findings={findings} sceneWord={titleOf} /></section>}
          <Decide booking={booking} revision={revision} reason={kept ? String(kept.values.reason ?? "") : ""} errors={kept?.errors ?? []} />
          <PapersOf booking={booking} revision={revision} />
          <Caution />
          <MailPart booking={booking} />
        </div>
        <div className="review-rest">
          <BriefInWords booking={booking} />
          <History booking={booking} />
        </div>
      </div>
      </Checked>
    </DeskFrame>
  );
}
