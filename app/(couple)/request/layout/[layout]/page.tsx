import type { Metadata } from "next";
import { notFound, redirect } from "next/navigation";
import { arrangeFor } from "@/lib/service";
import { couple } from "@/app/_server/asking";
import { answerIn } from "@/app/_server/spoken";
import { plansOf } from "@/app/_server/plans";
import { Rain } from "@/app/_parts/rain";
import { CoupleFrame } from "@/app/_parts/couple-frame";
import { Findings } from "@/components/desk/findings";
import { Fees } from "@/components/desk/fees";
import { Caution } from "@/components/plan/caution";
import { Day } from "@/components/plan/day";
import { givesUpWords } from "@/components/plan/gives-up";
import { foundOf } from "@/lib/words/rain";

type Props = { readonly params: Promise<{ readonly layout: string }> };

export async function generateMetadata(): Promise<Metadata> {
  const { booking, say } = await couple();
  return { title: `${say("One layout in full")} – ${booking.venue.name}` };
}

/** One of the layouts offered: every part of the day, drawn and in words. */
export default async function LayoutInFull({ params }: Props) {
  const { house, actor, booking, say } = await couple();
  if (!booking.brief) redirect("/request/guests?why=guests");
  const arranged = await arrangeFor(house, actor, { reference: booking.reference, waitMs: 1_200 });
  if (!arranged.ok) redirect(arranged.error.code === "working" ? "/request/layout" : "/request");
  const { layout: id } = await params;
  const { venue } = booking;
  const result = answerIn(arranged.value.result, { venue, say });
  const layout = result.layouts.find((l) => l.id === id);
  if (!layout) notFound();
  const plans = await plansOf(house, actor, { reference: booking.reference, layout, offered: true });
  const givesUp = givesUpWords(layout, say);
  const titleOf = (scene: string): string => layout.scenes.find((s) => s.id === scene)?.title ?? scene;
  return (
    <CoupleFrame booking={booking} back={{ href: "/request/layout", text: say("Your layout") }}>
      <h1 className="mt-3">{layout.title}</h1>
      <div className="prose mt-4">{layout.why.map((w) => <p key={w}>{w}</p>)}</div>
      {givesUp && <p className="measure mt-3"><b>{say("It gives up:")}</b> {givesUp}</p>}
      <Day layout={layout} venue={venue} plans={plans} words query={`ref=${encodeURIComponent(booking.reference)}&layout=${encodeURIComponent(id)}`} say={say} />
      <Rain layout={layout} venue={venue} reference={booking.reference} offered />
      {layout.quote && <section className="section max-w-[50rem]"><h2>{say("Fee summary")}</h2><Fees quote={layout.quote} locale={venue.locale} tax={venue.tax} say={say} /></section>}
      <section className="section max-w-[50rem]"><h2>{say("What the checks found")}</h2><Findings findings={foundOf(layout, say)} sceneWord={titleOf} say={say} /></section>
      {booking.open && (
        <form method="post" action="/request/layout/choose" className="go-row" noValidate>
          <input type="hidden" name="revision" value={booking.revision} />
          <input type="hidden" name="layout" value={layout.id} />
          <button className="btn btn-go" type="submit" name="then" value="next">{say("Choose this layout")}</button>
          <a href="/request/layout">{say("Back to all layouts")}</a>
        </form>
      )}
      <Caution say={say} />
    </CoupleFrame>
  );
}
