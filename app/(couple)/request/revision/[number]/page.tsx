import type { Metadata } from "next";
import { notFound } from "next/navigation";
import { couple } from "@/app/_server/asking";
import { plansOf } from "@/app/_server/plans";
import { CoupleFrame } from "@/app/_parts/couple-frame";
import { Fees } from "@/components/desk/fees";
import { Findings } from "@/components/desk/findings";
import { Caution } from "@/components/plan/caution";
import { Day } from "@/components/plan/day";
import { sayFingerprint, sayMoment } from "@/components/ui/say";

type Props = { readonly params: Promise<{ readonly number: string }> };

export async function generateMetadata({ params }: Props): Promise<Metadata> {
  const { booking, say } = await couple();
  return { title: `${say("Revision {number}", { number: (await params).number })} – ${booking.venue.name}` };
}

/** One revision as it was sent: it never changes. */
export default async function RevisionPage({ params }: Props) {
  const { house, actor, booking, say } = await couple();
  const { number } = await params;
  const revision = booking.revisions.find((r) => String(r.number) === number);
  if (!revision) notFound();
  const { venue } = booking;
  const { layout } = revision;
  const plans = await plansOf(house, actor, { reference: booking.reference, layout, number: revision.number });
  return (
    <CoupleFrame booking={booking} back={{ href: "/request", text: say("Your day") }}>
      <h1 className="mt-3">{say("Revision {number}", { number: revision.number })}: {layout.title}</h1>
      <p className="mt-3 sec">{say("Sent {time}.", { time: sayMoment(revision.sentAt, venue) })} {say("Fingerprint")} <span className="fingerprint">{sayFingerprint(revision.fingerprint)}</span>.</p>
      <Day layout={layout} venue={venue} plans={plans} words query={`ref=${encodeURIComponent(booking.reference)}&number=${number}`} say={say} />
      <Caution say={say} />
      <div className="two-up max-w-[70rem]">
        <section className="section"><h2>{say("Fee summary")}</h2><Fees quote={revision.quote} locale={venue.locale} tax={venue.tax} say={say} /></section>
        <section className="section"><h2>{say("What the checks found")}</h2><Findings findings={revision.findings} sceneWord={(id) => layout.scenes.find((s) => s.id === id)?.title ?? id} say={say} /></section>
      </div>
    </CoupleFrame>
  );
}
