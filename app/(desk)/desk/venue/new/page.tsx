import type { Metadata } from "next";
import { BEGINNING } from "@/lib/venue/edit";
import { asked, desk, type Search } from "@/app/_server/asking";
import { heldFor } from "@/app/_server/kept";
import { DeskFrame } from "@/app/_parts/desk-frame";
import { VenueForm } from "@/app/_parts/venue-form";
import { Checked } from "@/components/form/page/checked";

type Props = { readonly searchParams: Search };

export async function generateMetadata({ searchParams }: Props): Promise<Metadata> {
  const { actor } = await desk();
  const kept = heldFor(await asked(searchParams, "kept"), "venue-new", actor.person);
  return { title: `${kept ? "Error: " : ""}A venue from nothing` };
}

/** A short first form: enough for a first count of what fits. Everything else has a page of its own afterwards. */
export default async function NewVenuePage({ searchParams }: Props) {
  const { actor } = await desk();
  const kept = heldFor(await asked(searchParams, "kept"), "venue-new", actor.person);
  const errors = kept?.errors ?? [];
  return (
    <DeskFrame person={actor.person} here="venue" back={{ href: "/desk/venue", text: "Venue" }}>
      <Checked errors={errors}>
        <h1 className="mt-2">A venue from nothing</h1>
        <p className="lead measure mt-4">One room, its doors, and the tables you own. That is enough to count what fits; columns, windows, prices and the other rooms come after, each on its own page.</p>
        <VenueForm action="/desk/venue/new/begin" version={0} parts={BEGINNING} typed={kept?.values} errors={errors} spare={1} button="Make the venue" />
      </Checked>
    </DeskFrame>
  );
}
