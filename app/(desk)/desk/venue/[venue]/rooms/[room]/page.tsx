import type { Metadata } from "next";
import { notFound } from "next/navigation";
import { partsOf } from "@/lib/venue/edit";
import { asked, type Search } from "@/app/_server/asking";
import { heldFor } from "@/app/_server/kept";
import { savedWords, venueAsked } from "@/app/_server/venue-asked";
import { pagesOf } from "@/app/_server/venue-pages";
import { DeskFrame } from "@/app/_parts/desk-frame";
import { DraftNote, FilledFrom, VenueForm, VenueRooms, VersionLine } from "@/app/_parts/venue-form";
import { RoomSketch } from "@/components/desk/venue/room-sketch";
import { Checked } from "@/components/form/page/checked";

type Props = { readonly params: Promise<{ readonly venue: string; readonly room: string }>; readonly searchParams: Search };

export async function generateMetadata({ params, searchParams }: Props): Promise<Metadata> {
  const { venue: id, room } = await params;
  const { venue, actor } = await venueAsked(id);
  const kept = heldFor(await asked(searchParams, "kept"), `room-${room}`, actor.person);
  return { title: `${kept ? "Error: " : ""}${venue.rooms.find((r) => r.id === room)?.name ?? "Room"} – ${venue.name}` };
}

/** One room: typed on the one side, drawn on the other. */
export default async function RoomPage({ params, searchParams }: Props) {
  const { venue: id, room: roomId } = await params;
  const { venue, version, draft, actor } = await venueAsked(id);
  const room = venue.rooms.find((r) => r.id === roomId);
  if (!room) notFound();
  const kept = heldFor(await asked(searchParams, "kept"), `room-${roomId}`, actor.person);
  const done = await asked(searchParams, "done");
  const errors = kept?.errors ?? [];
  const here = `/desk/venue/${id}/rooms/${roomId}`;
  return (
    <DeskFrame person={actor.person} here="venue" back={{ href: "/desk/venue", text: "Venue" }}>
      <Checked errors={errors}>
        <h1 className="mt-2">{room.name}</h1>
        <p className="sec mt-2"><VersionLine venue={venue} version={version} />. {venue.lengths === "metric" ? "A bare figure means metres; 120 cm and 1200 mm are understood too." : "A bare figure means feet; 5' 6\" is understood, and so is 1.2 m."}</p>
        <DraftNote id={id} version={version} draft={draft} />
        <VenueRooms venue={id} here={`rooms/${roomId}`} rooms={pagesOf(venue)} />
        {done && <p className="lead mt-4" role="status">{savedWords(done)}</p>}
        <div className="room-grid mt-6">
          <div className="room-beside"><div className="sheet"><div><RoomSketch venue={venue} room={room} form="venue-form" /></div></div></div>
          <div className="room-fields">
            <VenueForm action={`${here}/save`} version={version} draft={draft} parts={partsOf(venue, { room: roomId }) ?? []} typed={kept?.values} errors={errors} />
            {venue.rooms.length > 1 && (
              <details className="act mt-8"><summary>Take this room away</summary>
                <form method="post" action={`${here}/remove`} className="pb-4">
                  <FilledFrom version={version} draft={draft?.number} />
                  <p className="small sec measure">Doors that lead to it, drapes that use it and its place in packages go with it. Agreed layouts keep the version that has it.</p>
                  <button className="btn mt-4" type="submit">Take {room.name} away</button>
                </form>
              </details>
            )}
          </div>
        </div>
      </Checked>
    </DeskFrame>
  );
}
