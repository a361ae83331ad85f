import type { Metadata } from "next";
import { notFound } from "next/navigation";
import { howManyFit, listVenues } from "@/lib/service";
import { asked, desk, type Search } from "@/app/_server/asking";
import { face } from "@/app/_server/face";
import { DeskFrame } from "@/app/_parts/desk-frame";
import { RoomCounts } from "@/components/desk/room-counts";
import { TitleBlock } from "@/components/ui/title-block";
import { Caution } from "@/components/plan/caution";

export async function generateMetadata(): Promise<Metadata> {
  return { title: `How many fit – ${(await face()).name}` };
}

/** Room by room and style by style: for tours, and for the telephone. Prints as it stands. */
export default async function FitsPage({ searchParams }: { readonly searchParams: Search }) {
  const { house, actor } = await desk();
  const wanted = await asked(searchParams, "venue");
  const seen = await howManyFit(house, actor, { venue: wanted });
  if (!seen.ok) notFound();
  const { venue, version, rooms } = seen.value;
  const all = await listVenues(house, actor, {});
  const venues = all.ok ? all.value : [];
  return (
    <DeskFrame person={actor.person} here="fits">
      <h1 className="mt-4">How many fit</h1>
      <p className="lead measure mt-3">{venue.name}, counted with its standing furniture in place and from the tables and chairs it owns.</p>
      {venues.length > 1 && <nav className="scenes-of mt-4" aria-label="Venue">{venues.map((v) => <a key={v.id} href={`/desk/fits?venue=${v.id}`} aria-current={v.venue.id === venue.id ? "true" : undefined}>{v.venue.name}</a>)}</nav>}
      <p className="small sec measure mt-2">Comfort and most differ by the gaps between tables. The ceiling is a bound that no arrangement passes, with the reason that sets it. Venue version {version}.</p>
      {rooms.map((r) => <RoomCounts key={`${r.room}-${r.drape ?? ""}`} counts={r} venue={venue} />)}
      <Caution />
      <TitleBlock cells={[{ name: "Venue", value: venue.name }, { name: "Facts", value: `version ${version}` }, { name: "Counted", value: "with standing furniture in place" }]} />
    </DeskFrame>
  );
}
