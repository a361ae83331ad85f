import type { Metadata } from "next";
import { redirect } from "next/navigation";
import { adjusting, standardKey } from "@/lib/service";
import type { Search } from "@/app/_server/asking";
import { venueAsked } from "@/app/_server/venue-asked";
import { AdjustPage } from "@/app/_parts/adjust-page";
import { DeskFrame } from "@/app/_parts/desk-frame";

type Props = { readonly params: Promise<{ readonly venue: string }>; readonly searchParams: Search };

export async function generateMetadata({ params }: Props): Promise<Metadata> {
  return { title: `Standard layout under the hand – ${(await venueAsked((await params).venue)).venue.name}` };
}

/** The venue's own layout, moved about by hand; taken, it goes with the venue's next version. */
export default async function AdjustStandard({ params, searchParams }: Props) {
  const { id, house, actor, venue } = await venueAsked((await params).venue);
  const home = `/desk/venue/${encodeURIComponent(id)}/standard`;
  const view = await adjusting(house, actor, { reference: standardKey(id) });
  if (!view.ok) redirect(home);
  return (
    <DeskFrame person={actor.person} here="venue" back={{ href: home, text: "Standard layout" }}>
      <h1 className="mt-3">{view.value.layout.title}</h1>
      <p className="lead max-w-[40rem] mt-3">The standard layout of {venue.name}. What you take is the venue’s next version; a draft stays one.</p>
      <AdjustPage house={house} actor={actor} view={view.value} search={searchParams} side="desk" page={`${home}/adjust`} owner={actor.person} />
    </DeskFrame>
  );
}
