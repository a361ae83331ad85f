import type { Metadata } from "next";
import { asked, deskBooking, type Search } from "@/app/_server/asking";
import { heldFor } from "@/app/_server/kept";
import { drawn } from "@/app/_server/plans";
import { DeskFrame } from "@/app/_parts/desk-frame";
import { Decide, DONE, MailPart } from "@/app/_parts/review-forms";
import { BriefInWords, History, reviewFacts } from "@/app/_parts/review";
import { Fees } from "@/components/desk/fees";
import { Findings } from "@/components/desk/findings";
import { Caution } from "@/components/plan/caution";
import { PlanView } from "@/components/plan/plan-view";
import { SceneInWords } from "@/components/plan/in-words";
import { sayTurnovers } from "@/components/plan/layouts";
import { Checked } from "@/components/form/page/checked";
import { Names, namesText } from "@/components/ui/names";
import { counted } from "@/components/ui/say";

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
  const layout = revision?.layout ?? booking.chosen?.layout;
  const part = await asked(searchParams, "part");
  const scene = layout?.scenes.find((s) => s.id === part) ?? layout?.scenes.find((s) => s.id === "meal") ?? layout?.scenes[0];
  const svg = layout && scene ? await drawn(house, actor, { reference: ref, scene: scene.id, number: revision?.number }, 760) : undefined;
  const findings = revision?.findings ?? layout?.findings ?? [];
  const quote = revision?.quote ?? layout?.quote;
  const titleOf = (id: string): string => layout?.scenes.find((s) => s.id === id)?.title ?? id;
  const number = revision && revision !== booking.revisions.at(-1) ? `&revision=${revision.number}` : "";
  const done = DONE[(await asked(searchParams, "done")) ?? ""];
  const pdf = `/api/proposal.pdf?ref=${encodeURIComponent(ref)}${revision ? `&number=${revision.number}` : ""}`;
  return (
    <DeskFrame person={actor.person} back={{ href: "/desk", text: "Queue" }}>
      <Checked errors={kept?.errors ?? []}>
      <h1 className="mt-2"><Names names={booking.names} locale={venue.locale} /></h1>
      {reviewFacts(booking)}
      {done && <p className="lead mt-4" role="status">{done}</p>}
      <div className="review-grid">
        <div>
          {layout && scene ? (
            <>
              <nav className="scenes-of" aria-label="Parts of the day">
                {layout.scenes.map((s) => <a key={s.id} href={`/desk/bookings/${ref}?part=${s.id}${number}`} aria-current={s.id === scene.id ? "true" : undefined}>{s.title}</a>)}
              </nav>
              <PlanView name={scene.title} source={{ kind: "saved", query: `ref=${encodeURIComponent(ref)}&scene=${scene.id}${revision ? `&number=${revision.number}` : ""}` }} svg={svg} caption={scene.seats > 0 ? `${layout.title}: ${counted(scene.seats, "place", "places")}` : layout.title} aside={<a href={pdf}>Proposal as PDF</a>} />
              <details className="act"><summary>{scene.title} in words</summary><div className="pb-4"><SceneInWords scene={scene} venue={venue} /></div></details>
              <p className="small sec mt-3">Turnover: {sayTurnovers(layout.turnovers)}.</p>
            </>
          ) : <p className="lead">They have not chosen a layout yet. What they have answered so far stands below.</p>}
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
          {layout && <section className="section"><h2>Findings</h2><Findings findings={findings} sceneWord={titleOf} /></section>}
          <Decide booking={booking} revision={revision} reason={kept ? String(kept.values.reason ?? "") : ""} errors={kept?.errors ?? []} />
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
