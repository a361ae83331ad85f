import type { ReactNode } from "react";
import type { BookingView } from "@/lib/service";
import { Frame } from "@/components/ui/frame";
import { sayClock } from "@/components/ui/say";
import { TitleBlock } from "@/components/ui/title-block";
import { namesText } from "@/components/ui/names";

type Props = { readonly booking: BookingView; readonly back?: { readonly href: string; readonly text: string }; readonly savedAt?: string; readonly children: ReactNode };

/** The couple's pages: their venue above, when it was last saved beside it. */
export function CoupleFrame({ booking, back, savedAt, children }: Props) {
  const { venue } = booking;
  return (
    <Frame house={{ name: venue.name, contact: venue.contact }} home="/request" back={back} aside={savedAt ? <span role="status">Saved {sayClock(savedAt, venue)}</span> : undefined}>
      {children}
      <TitleBlock cells={[
        { name: "For", value: namesText(booking.names, venue.locale) }, { name: "Day", value: booking.date }, { name: "Reference", value: booking.reference }, { name: "Venue", value: venue.name },
      ]} />
    </Frame>
  );
}
