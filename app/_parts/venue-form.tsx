import type { ReactNode } from "react";
import type { FieldError, FormValues } from "@/lib/service";
import type { Part } from "@/lib/venue/edit";
import { PartFields } from "@/components/desk/venue/part-fields";

type Props = { readonly action: string; readonly version: number; readonly parts: readonly Part[]; readonly typed?: FormValues; readonly errors: readonly FieldError[]; readonly spare?: number; readonly button?: string; readonly children?: ReactNode };

/** One page of the editor as a form: with scripts off it saves just the same. */
export function VenueForm({ action, version, parts, typed, errors, spare, button = "Save as a new version", children }: Props) {
  return (
    <form method="post" action={action} id="venue-form" noValidate>
      <input type="hidden" name="version" value={version} />
      {parts.map((part) => <PartFields key={part.id} part={part} typed={typed} errors={errors} spare={spare} />)}
      {children}
      <div className="save-bar"><button className="btn btn-go" type="submit" id="save">{button}</button>{version > 0 && <span className="note sec">Agreed layouts keep the version that they were agreed with.</span>}</div>
    </form>
  );
}

/** The way through a venue's pages. */
export function VenueRooms({ venue, here, rooms }: { readonly venue: string; readonly here: string; readonly rooms: readonly { readonly href: string; readonly text: string }[] }) {
  return (
    <nav className="scenes-of mt-4" aria-label="Pages of the venue">
      {rooms.map((r) => <a key={r.href} href={`/desk/venue/${venue}/${r.href}`} aria-current={r.href === here ? "page" : undefined}>{r.text}</a>)}
    </nav>
  );
}
