import type { ReactNode } from "react";
import type { FieldError, FormValues, VenueToEdit } from "@/lib/service";
import type { Part } from "@/lib/venue/edit";
import { PartFields } from "@/components/desk/venue/part-fields";

type Props = { readonly action: string; readonly version: number; readonly draft?: VenueToEdit["draft"]; readonly parts: readonly Part[]; readonly typed?: FormValues; readonly errors: readonly FieldError[]; readonly spare?: number; readonly button?: string; readonly children?: ReactNode };

/** Tells with a form what it was filled from: a save over something newer is refused. */
export const FilledFrom = ({ version, draft = 0 }: { readonly version: number; readonly draft?: number }) => <><input type="hidden" name="version" value={version} /><input type="hidden" name="draft" value={draft} /></>;

/** Whose page of the editor it is, and of which version. */
export const VersionLine = ({ venue, version }: Pick<VenueToEdit, "venue" | "version">) => <>{venue.name}, {version === 0 ? "no version yet" : `version ${version}`}</>;

/** One page of the editor as a form: with scripts off it saves just the same. */
export function VenueForm({ action, version, draft, parts, typed, errors, spare, button = "Save as a new version", children }: Props) {
  return (
    <form method="post" action={action} id="venue-form" noValidate>
      <FilledFrom version={version} draft={draft?.number} />
      {parts.map((part) => <PartFields key={part.id} part={part} typed={typed} errors={errors} spare={spare} />)}
      {children}
      {draft && draft.base !== version && <TakesThePlace version={version} amiss={errors.some((e) => e.field === "over")} />}
      <div className="save-bar"><button className="btn btn-go" type="submit" id="save">{button}</button><button className="btn" type="submit" name="as" value="draft">Keep as a draft</button>{version > 0 && <span className="note sec">Agreed layouts keep the version that they were agreed with.</span>}</div>
    </form>
  );
}

/** A draft that knows nothing of a newer version takes its place only where that is meant. */
const TakesThePlace = ({ version, amiss }: { readonly version: number; readonly amiss: boolean }) => (
  <div className={amiss ? "field amiss mt-6" : "field mt-6"}>
    <label className="tick" htmlFor="over"><input type="checkbox" id="over" name="over" value={version} aria-invalid={amiss ? true : undefined} /><span>The draft takes the place of version {version}</span></label>
  </div>
);

/** Said over every page of a venue that is being written: what is still amiss, and where it is mended. */
export function DraftNote({ id, version, draft }: Pick<VenueToEdit, "id" | "version" | "draft">) {
  if (!draft) return null;
  return (
    <section className="draft-note" aria-label="Draft">
      <p><b>A draft: no booking uses it.</b> {draft.amiss.length === 0 ? "Nothing is amiss any more: save any page as a new version, and it is in use." : "Still amiss before it can be a version:"}</p>
      {draft.base !== version && <p>It began {draft.base === 0 ? "before there was a version" : `from version ${draft.base}`}; <b>version {version} was read in since, and nothing of it is in the draft.</b></p>}
      {draft.amiss.length > 0 && <ul>{draft.amiss.slice(0, 8).map((one) => <li key={one.message}><a href={`/desk/venue/${id}/${one.page}`}>{one.message}</a></li>)}{draft.amiss.length > 8 && <li>and {draft.amiss.length - 8} more.</li>}</ul>}
      <form method="post" action={`/desk/venue/${id}/draft/drop`}><button className="btn-quiet" type="submit">Let the draft go</button></form>
    </section>
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
