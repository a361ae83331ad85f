import type { Metadata } from "next";
import { redirect } from "next/navigation";
import { adjusting } from "@/lib/service";
import { asked, deskBooking, type Search } from "@/app/_server/asking";
import { heldFor } from "@/app/_server/kept";
import { AdjustPage } from "@/app/_parts/adjust-page";
import { DeskFrame } from "@/app/_parts/desk-frame";
import { Names, namesText } from "@/components/ui/names";

type Props = { readonly params: Promise<{ readonly ref: string }>; readonly searchParams: Search };

export async function generateMetadata({ params, searchParams }: Props): Promise<Metadata> {
  const { booking, actor } = await deskBooking((await params).ref);
  const kept = heldFor(await asked(searchParams, "kept"), "adjust", actor.person);
  return { title: `${kept && kept.errors.length > 0 ? "Error: " : ""}Adjust: ${namesText(booking.names, booking.venue.locale)} – ${booking.venue.name}` };
}

/** The coordinator moves a couple's layout about: what they sent, or what they have chosen so far. */
export default async function AdjustTheirs({ params, searchParams }: Props) {
  const { house, actor, booking } = await deskBooking((await params).ref);
  const { reference } = booking;
  const home = `/desk/bookings/${encodeURIComponent(reference)}`;
  const view = await adjusting(house, actor, { reference });
  if (!view.ok) redirect(`${home}?done=moved`);
  return (
    <DeskFrame person={actor.person} back={{ href: home, text: "Their booking" }}>
      <h1 className="mt-3"><Names names={booking.names} locale={booking.venue.locale} /></h1>
      <p className="lead max-w-[40rem] mt-3">{view.value.layout.title}{view.value.sent === undefined ? ", not sent yet." : `, revision ${view.value.sent}.`}</p>
      <AdjustPage house={house} actor={actor} view={view.value} search={searchParams} side="desk" page={`${home}/adjust`} owner={actor.person} />
    </DeskFrame>
  );
}
