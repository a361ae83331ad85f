import type { Metadata } from "next";
import { notFound } from "next/navigation";
import { partsOf, SECTION_TITLES } from "@/lib/venue/edit";
import { asked, type Search } from "@/app/_server/asking";
import { heldFor } from "@/app/_server/kept";
import { savedWords, venueAsked } from "@/app/_server/venue-asked";
import { isSection, pagesOf } from "@/app/_server/venue-pages";
import { DeskFrame } from "@/app/_parts/desk-frame";
import { DraftNote, VenueForm, VenueRooms, VersionLine } from "@/app/_parts/venue-form";
import { HouseSketch } from "@/components/desk/venue/house-sketch";
import { Checked } from "@/components/form/page/checked";

type Props = { readonly params: Promise<{ readonly venue: string; readonly page: string }>; readonly searchParams: Search };

export async function generateMetadata({ params, searchParams }: Props): Promise<Metadata> {
  const { venue: id, page } = await params;
  const { venue, actor } = await venueAsked(id);
  const kept = heldFor(await asked(searchParams, "kept"), `venue-${page}`, actor.person);
  return { title: `${kept ? "Error: " : ""}${isSection(page) ? SECTION_TITLES[page] : "Venue"} – ${venue.name}` };
}

/** A section of the venue's facts: what stands, ready to be changed. */
export default async function VenueSectionPage({ params, searchParams }: Props) {
  const { venue: id, page } = await params;
  if (!isSection(page)) notFound();
  const { venue, version, draft, actor } = await venueAsked(id);
  const kept = heldFor(await asked(searchParams, "kept"), `venue-${page}`, actor.person);
  const done = await asked(searchParams, "done");
  const errors = kept?.errors ?? [];
  return (
    <DeskFrame person={actor.person} here="venue" back={{ href: "/desk/venue", text: "Venue" }}>
      <Checked errors={errors}>
        <h1 className="mt-2">{SECTION_TITLES[page]}</h1>
        <p className="sec mt-2"><VersionLine venue={venue} version={version} /></p>
        <DraftNote id={id} version={version} draft={draft} />
        <VenueRooms venue={id} here={page} rooms={pagesOf(venue)} />
        {done && <p className="lead mt-4" role="status">{savedWords(done)}</p>}
        {page === "plan" && <div className="sheet mt-6"><div><HouseSketch venue={venue} form="venue-form" /></div></div>}
        <VenueForm action={`/desk/venue/${id}/${page}/save`} version={version} draft={draft} parts={partsOf(venue, { section: page }) ?? []} typed={kept?.values} errors={errors} />
      </Checked>
    </DeskFrame>
  );
}
