import type { ReactNode } from "react";
import type { BookingView } from "@/lib/service";
import { catalogueOf } from "@/lib/words/pages";
import { speechFor } from "@/app/_server/words";
import { IN_THE_BROWSER } from "@/components/words/in-the-browser";
import { Speaking } from "@/components/words/speaking";
import { Frame } from "@/components/ui/frame";
import { sayClock } from "@/components/ui/say";
import { TitleBlock } from "@/components/ui/title-block";
import { namesText } from "@/components/ui/names";

type Props = {
  readonly booking: Pick<BookingView, "venue" | "names" | "date" | "reference">;
  readonly back?: { readonly href: string; readonly text: string }; readonly savedAt?: string; readonly home?: string; readonly children: ReactNode;
};

/** The couple's pages: their venue above, when it was last saved beside it. */
export async function CoupleFrame({ booking, back, savedAt, home = "/request", children }: Props) {
  const { venue } = booking;
  const { language, say } = await speechFor(venue);
  return (
    <Speaking language={language} entries={language === "en-GB" ? {} : catalogueOf(language, IN_THE_BROWSER)}>
      <Frame
        house={{ name: venue.name, contact: venue.contact }} home={home} back={back} say={say} choose={`/words?from=${encodeURIComponent(home)}`}
        aside={savedAt ? <span role="status">{say("Saved {time}", { time: sayClock(savedAt, venue) })}</span> : undefined}
      >
        {children}
        <TitleBlock cells={[
          { name: say("For"), value: namesText(booking.names, venue.locale) }, { name: say("Day"), value: booking.date }, { name: say("Reference"), value: booking.reference }, { name: say("Venue"), value: venue.name },
        ]} />
      </Frame>
    </Speaking>
  );
}
