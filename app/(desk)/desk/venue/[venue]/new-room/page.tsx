import type { Metadata } from "next";
import { asked, type Search } from "@/app/_server/asking";
import { heldFor } from "@/app/_server/kept";
import { venueAsked } from "@/app/_server/venue-asked";
import { DeskFrame } from "@/app/_parts/desk-frame";
import { FilledFrom } from "@/app/_parts/venue-form";
import { Checked } from "@/components/form/page/checked";
import { oneOf } from "@/components/form/values";
import { TextField } from "@/components/ui/field";

type Props = { readonly params: Promise<{ readonly venue: string }>; readonly searchParams: Search };

export async function generateMetadata({ params, searchParams }: Props): Promise<Metadata> {
  const { venue, actor } = await venueAsked((await params).venue);
  const kept = heldFor(await asked(searchParams, "kept"), "venue-room", actor.person);
  return { title: `${kept ? "Error: " : ""}Add a room – ${venue.name}` };
}

/** A room more, as a rectangle first: its outline, doors and all else are typed on its own page. */
export default async function NewRoomPage({ params, searchParams }: Props) {
  const { id, venue, version, draft, actor } = await venueAsked((await params).venue);
  const kept = heldFor(await asked(searchParams, "kept"), "venue-room", actor.person);
  const values = kept?.values ?? {}, errors = kept?.errors ?? [];
  return (
    <DeskFrame person={actor.person} here="venue" back={{ href: "/desk/venue", text: "Venue" }}>
      <Checked errors={errors}>
        <h1 className="mt-2">Add a room to {venue.name}</h1>
        <p className="lead measure mt-4">As a rectangle first, put to the right of the others. Its outline, its place on the plan and its doors are the next page.</p>
        <form method="post" action={`/desk/venue/${id}/add-room`} noValidate className="max-w-[34rem]">
          <FilledFrom version={version} draft={draft?.number} />
          <TextField name="name" label="Name" value={oneOf(values, "name")} errors={errors} maxLength={200} />
          <TextField name="width" label="Width" size="middling" value={oneOf(values, "width")} errors={errors} />
          <TextField name="depth" label="Depth" size="middling" value={oneOf(values, "depth")} errors={errors} />
          <div className="go-row"><button className="btn btn-go" type="submit" id="save">Add the room</button></div>
        </form>
      </Checked>
    </DeskFrame>
  );
}
