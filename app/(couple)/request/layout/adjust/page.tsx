import type { Metadata } from "next";
import { redirect } from "next/navigation";
import { adjusting } from "@/lib/service";
import { asked, couple, type Search } from "@/app/_server/asking";
import { heldFor } from "@/app/_server/kept";
import { AdjustPage } from "@/app/_parts/adjust-page";
import { CoupleFrame } from "@/app/_parts/couple-frame";
import { handIn } from "@/app/_server/spoken";
import { handVoice } from "@/lib/words/hand";

type Props = { readonly searchParams: Search };

export async function generateMetadata({ searchParams }: Props): Promise<Metadata> {
  const { booking, say } = await couple(), by = handVoice(say.language);
  const kept = heldFor(await asked(searchParams, "kept"), "adjust", booking.reference);
  return { title: `${kept && kept.errors.length > 0 ? by("Error: ") : ""}${by("Your layout, by hand")} – ${booking.venue.name}` };
}

/** The couple move their chosen layout about before they send it. */
export default async function AdjustOwn({ searchParams }: Props) {
  const { house, actor, booking, speech, say } = await couple();
  const { reference } = booking;
  const view = await adjusting(house, actor, { reference });
  if (!view.ok) redirect(view.error.code === "incomplete" ? `/request/layout?why=${booking.chosen ? "changed" : "none"}` : "/request?why=closed");
  const by = handVoice(say.language), seen = handIn(view.value, speech);
  return (
    <CoupleFrame booking={booking} back={{ href: "/request/layout", text: by("Your layout") }}>
      <h1 className="mt-3">{by("Your layout, by hand")}</h1>
      <p className="lead max-w-[40rem] mt-3">{by("{title}. Move what you like; the checks run as you go, and every step can be undone.", { title: seen.layout.title })}</p>
      <AdjustPage house={house} actor={actor} view={seen} search={searchParams} side="couple" page="/request/layout/adjust" owner={reference} />
    </CoupleFrame>
  );
}
