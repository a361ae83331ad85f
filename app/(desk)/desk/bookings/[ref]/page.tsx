import type { Metadata } from "next";
import { asked, deskBooking, type Search } from "@/app/_server/asking";
import { heldFor, type Kept } from "@/app/_server/kept";
import type { FieldError } from "@/lib/service";
import { DeskFrame } from "@/app/_parts/desk-frame";
import { Asked, FinalNumbers, NextSteps } from "@/app/_parts/desk-next";
import { Decide, doneWords, MailPart } from "@/app/_parts/review-forms";
import { StandardNow } from "@/app/_parts/standard-now";
import { PapersOf } from "@/app/_parts/papers-of";
import { BriefInWords, History, reviewFacts } from "@/app/_parts/review";
import { layoutShown, ReviewPlan } from "@/app/_parts/review-plan";
import { Fees } from "@/components/desk/fees";
import { Findings } from "@/components/desk/findings";
import { Caution } from "@/components/plan/caution";
import { Checked } from "@/components/form/page/checked";
import { manyOf } from "@/components/form/values";
import { Names, namesText } from "@/components/ui/names";

/** The forms that stand on this page, by what is kept of them. */
const FORMS = ["return", "numbers", "address", "mailed", "reminded", "standard"] as const;
type Form = (typeof FORMS)[number];
async function keptOf(search: Search, owner: string): Promise<Kept | null> {
  const key = await asked(search, "kept");
  return FORMS.map((form) => heldFor(key, form, owner)).find((one) => one !== null) ?? null;
}

type Props = { readonly params: Promise<{ readonly ref: string }>; readonly searchParams: Search };

export async function generateMetadata({ params, searchParams }: Props): Promise<Metadata> {
  const { booking, actor } = await deskBooking((await params).ref);
  const kept = await keptOf(searchParams, actor.person);
  return { title: `${kept && kept.errors.length > 0 ? "Error: " : ""}${namesText(booking.names, booking.venue.locale)} – ${booking.venue.name}` };
}

export default async function ReviewPage({ params, searchParams }: Props) {
  const { ref } = await params;
  const { house, actor, booking } = await deskBooking(ref);
  const { venue } = booking;
  const kept = await keptOf(searchParams, actor.person);
  const of = (form: Form): readonly FieldError[] => (kept?.form === form ? kept.errors : []);
  const typed = (form: Form): Readonly<Record<string, string>> => (kept?.form === form ? Object.fromEntries(Object.entries(kept.values).map(([k, v]) => [k, typeof v === "string" ? v : (v?.[0] ?? "")])) : {});
  const works = actor.role !== "desk-look";
  const wanted = Number(await asked(searchParams, "revision"));
  const revision = booking.revisions.find((r) => r.number === wanted) ?? booking.revisions.at(-1);
  const layout = layoutShown(booking, revision);
  const part = await asked(searchParams, "part");
  const findings = revision?.findings ?? layout?.findings ?? [];
  const quote = revision?.quote ?? layout?.quote;
  const titleOf = (id: string): string => layout?.scenes.find((s) => s.id === id)?.title ?? id;
  const done = doneWords(await asked(searchParams, "done"), { booking, by: await asked(searchParams, "by"), rooms: await asked(searchParams, "rooms") });
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
          <Asked booking={booking} />
          {works && <Decide booking={booking} revision={revision} reason={typed("return").reason ?? ""} pieces={kept?.form === "return" ? manyOf(kept.values, "piece") : []} errors={of("return")} />}
          {works && <StandardNow booking={booking} />}
          {works && <NextSteps booking={booking} />}
          {works && <FinalNumbers booking={booking} typed={typed("numbers")} errors={of("numbers")} />}
          <PapersOf booking={booking} revision={revision} />
          <Caution />
          {works && <MailPart booking={booking} email={typed("address").email ?? ""} errors={of("address")} />}
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
