import type { Metadata } from "next";
import { redirect } from "next/navigation";
import { adjusting } from "@/lib/service";
import { asked, couple, type Search } from "@/app/_server/asking";
import { heldFor } from "@/app/_server/kept";
import { AdjustPage } from "@/app/_parts/adjust-page";
import { CoupleFrame } from "@/app/_parts/couple-frame";

type Props = { readonly searchParams: Search };

export async function generateMetadata({ searchParams }: Props): Promise<Metadata> {
  const { booking } = await couple();
  const kept = heldFor(await asked(searchParams, "kept"), "adjust", booking.reference);
  return { title: `${kept && kept.errors.length > 0 ? "Error: " : ""}Your layout, by hand – ${booking.venue.name}` };
}

/** The couple move their chosen layout about before they send it. */
export default async function AdjustOwn({ searchParams }: Props) {
  const { house, actor, booking } = await couple();
  const { reference } = booking;
  const view = await adjusting(house, actor, { reference });
  if (!view.ok) redirect(view.error.code === "incomplete" ? "/request/layout?why=changed" : "/request?why=closed");
  return (
    <CoupleFrame booking={booking} back={{ href: "/request/layout", text: "Your layout" }}>
      <h1 className="mt-3">Your layout, by hand</h1>
      <p className="lead max-w-[40rem] mt-3">{view.value.layout.title}. Move what you like; the checks run as you go, and every step can be undone.</p>
      <AdjustPage house={house} actor={actor} view={view.value} search={searchParams} side="couple" page="/request/layout/adjust" owner={reference} />
    </CoupleFrame>
  );
}
