import type { Metadata } from "next";
import { notFound, redirect } from "next/navigation";
import { isStep as asksSomething } from "@/lib/brief/draft";
import { asked, couple, type Search } from "@/app/_server/asking";
import { heldFor } from "@/app/_server/kept";
import { CoupleFrame } from "@/app/_parts/couple-frame";
import { TwoVersions } from "@/components/form/two-versions";
import { isStep, stepTitle } from "@/components/form/steps";
import { apartIn } from "@/components/form/two";
import { tidied } from "@/components/form/tidy";
import { shownValues } from "@/components/form/values";
import { ErrorSummary } from "@/components/ui/errors";
import { sayClock } from "@/components/ui/say";

type Props = { readonly params: Promise<{ readonly step: string }>; readonly searchParams: Search };

export async function generateMetadata({ searchParams }: Props): Promise<Metadata> {
  const { booking, say } = await couple();
  const wrong = (await asked(searchParams, "why")) === "open";
  return { title: `${wrong ? say("Error: ") : ""}${say("Two versions of your answers")} – ${booking.venue.name}` };
}

/** Two people, or one in two tabs, answered the same questions: both versions, and nothing overwritten until one is chosen. */
export default async function BothPage({ params, searchParams }: Props) {
  const { step } = await params;
  if (!isStep(step) || !asksSomething(step)) notFound();
  const { booking, actor, say } = await couple();
  const key = await asked(searchParams, "kept");
  const kept = heldFor(key, step, actor.reference);
  if (!kept || !key) redirect(`/request/${step}`);
  const apart = apartIn({ step, stands: shownValues(booking.draft, step), typed: tidied(step, kept.values), venue: booking.venue, say });
  if (apart.length === 0) redirect(`/request/${step}`);
  const last = booking.history.findLast((line) => line.what === "saved" && line.data["step"] === step);
  const time = sayClock(last?.at ?? booking.savedAt, booking.venue);
  const left = (await asked(searchParams, "why")) === "open";
  const first = apart[0];
  return (
    <CoupleFrame booking={booking} back={{ href: `/request/${step}`, text: stepTitle(step, say) }}>
      {left && first && <ErrorSummary errors={[{ field: first.field, message: say("Choose one of the two in every line, or take all of one version.") }]} />}
      <p className="step-line">{stepTitle(step, say)}</p>
      <h1>{say("Two versions of your answers")}</h1>
      <p className="lead measure mt-4">{last?.who.startsWith("desk") ? say("The venue’s desk saved this step at {time}, while you had it open.", { time }) : say("Someone with your link saved this step at {time}, while you had it open; perhaps you yourself, in another window.", { time })}</p>
      <p className="measure mt-3">{say("Nothing of yours is saved yet, and nothing of theirs is lost. Choose line by line which answer is to stand.")}</p>
      <TwoVersions step={step} revision={booking.revision} kept={key} apart={apart} back={(await asked(searchParams, "back")) === "send"} say={say} />
    </CoupleFrame>
  );
}
