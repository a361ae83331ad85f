import type { Metadata } from "next";
import { redirect } from "next/navigation";
import { couple } from "@/app/_server/asking";
import { CoupleFrame } from "@/app/_parts/couple-frame";
import { Standing } from "@/app/_parts/standing";
import { Names } from "@/components/ui/names";
import { sayDay } from "@/components/ui/say";

export async function generateMetadata(): Promise<Metadata> {
  const { booking, say } = await couple();
  return { title: `${say("Sent")} – ${booking.venue.name}` };
}

/** After sending, and at every visit after that. */
export default async function SentPage() {
  const { booking, say } = await couple();
  if (booking.state === "invited" || booking.state === "started" || booking.state === "returned") redirect("/request");
  const { venue } = booking;
  return (
    <CoupleFrame booking={booking} back={{ href: "/request", text: say("Your day") }}>
      <p className="step-line">{sayDay(booking.date, venue.locale)}, {booking.package.name}</p>
      <h1>{booking.state === "agreed" ? say("Your layout is agreed") : say("Your layout is with the venue")}</h1>
      <p className="mt-3"><Names names={booking.names} locale={venue.locale} />, {say("reference {reference}", { reference: booking.reference })}</p>
      <Standing booking={booking} say={say} />
    </CoupleFrame>
  );
}
