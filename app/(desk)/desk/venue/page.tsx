import type { Metadata } from "next";
import type { Venue } from "@/lib/venue";
import { roomArea } from "@/lib/venue";
import { SECTION_TITLES, SECTIONS } from "@/lib/venue/edit";
import { venuesToEdit, type VenueToEdit } from "@/lib/service";
import { asked, desk, type Search } from "@/app/_server/asking";
import { face } from "@/app/_server/face";
import { heldFor } from "@/app/_server/kept";
import { savedWords } from "@/app/_server/venue-asked";
import { DraftNote } from "@/app/_parts/venue-form";
import { DeskFrame } from "@/app/_parts/desk-frame";
import { RoomDrawing } from "@/components/desk/venue/room-drawing";
import { Checked } from "@/components/form/page/checked";
import { counted } from "@/components/ui/say";

type Props = { readonly searchParams: Search };

export async function generateMetadata({ searchParams }: Props): Promise<Metadata> {
  const { actor } = await desk();
  const kept = heldFor(await asked(searchParams, "kept"), "venue", actor.person);
  return { title: `${kept ? "Error: " : ""}Venue – ${(await face()).name}` };
}

const areaOf = (mm2: number, venue: Venue): string => (venue.lengths === "metric" ? `${(mm2 / 1e6).toFixed(1)} m²` : `${Math.round(mm2 / 92_903.04)} sq ft`);

/** What a section holds, in a line. */
function heldIn(section: (typeof SECTIONS)[number], v: Venue): string {
  switch (section) {
    case "plan": return `${counted(v.rooms.length, "room", "rooms")} beside one another, their corners drawn and typed`;
    case "places": { const pieces = Object.keys(v.places ?? {}); return pieces.length === 0 ? "no piece has a usual place yet" : `${pieces.map((p) => p.replaceAll("-", " ")).join(", ")}`; }
    case "house": return `${v.locale}, ${v.currency}, ${v.timeZone}${v.contact?.name ? `; ask ${v.contact.name}` : ""}${v.crew ? `; a crew of ${v.crew.size}` : ""}`;
    case "stock": return v.stock.map((s) => `${s.count} × ${s.name}`).join(", ");
    case "packages": return v.packages.map((p) => `${p.name}, due ${p.dueDays} days before`).join("; ");
    case "charges": return `${counted(v.charges.length, "charge", "charges")}; ${v.tax.name} ${v.tax.basisPoints / 100} %`;
    case "drapes": return v.drapes.length === 0 ? "none" : v.drapes.map((d) => d.name).join(", ");
    case "rules": return `profile “${v.rules?.profile ?? "model-code"}”${v.rules?.house?.length ? `, ${counted(v.rules.house.length, "rule", "rules")} of the house` : ""}`;
  }
}

function Facts({ id, venue, version, draft }: VenueToEdit) {
  const base = `/desk/venue/${id}`;
  return (
    <section className="section" aria-labelledby={`venue-${id}`}>
      <h2 id={`venue-${id}`}>{venue.name}</h2>
      {version > 0 && <p className="small sec mt-3">Version {version}. Agreed layouts keep the version that they were agreed with. <a href={`${base}/file`}>The venue as a file</a></p>}
      <DraftNote id={id} version={version} draft={draft} />
      <ul className="room-cards">
        {venue.rooms.map((r) => (
          <li key={r.id}>
            <a href={`${base}/rooms/${r.id}`}><RoomDrawing room={r} venue={venue} bare /><span className="room-name">{r.name}</span></a>
            <span className="small sec">{areaOf(roomArea(r), venue)}, {counted(r.doors.length, "door", "doors")}; {r.uses.join(", ") || "no use given yet"}</span>
          </li>
        ))}
      </ul>
      <ul className="venue-list mt-6">{SECTIONS.map((s) => <li key={s}><a href={`${base}/${s}`}>{SECTION_TITLES[s]}</a><span>{heldIn(s, venue)}</span></li>)}<li><a href={`${base}/standard`}>Standard layout</a><span>{venue.standardLayout ? `“${venue.standardLayout.title}”, set where nothing comes by the due date` : "none yet: where nothing comes by the due date, nothing is set"}</span></li></ul>
      <p className="mt-4"><a href={`${base}/new-room`}>Add a room to {venue.name}</a></p>
    </section>
  );
}

export default async function VenuePage({ searchParams }: Props) {
  const { house, actor } = await desk();
  const kept = heldFor(await asked(searchParams, "kept"), "venue", actor.person);
  const done = await asked(searchParams, "done");
  const seen = await venuesToEdit(house, actor);
  const errors = kept?.errors ?? [];
  const amiss = errors.some((e) => e.field === "file");
  return (
    <DeskFrame person={actor.person} here="venue">
      <Checked errors={errors}>
      <h1 className="mt-4">Venue</h1>
      {done && <p className="lead mt-3" role="status">{done === "not-yours" ? "Only a manager changes the venue." : done === "draft" ? savedWords(done) : done === "let-go" ? "The draft is let go." : `Saved as version ${done}. New bookings use it; agreed layouts keep theirs.`}</p>}
      {(seen.ok ? seen.value : []).map((v) => <Facts key={v.id} {...v} />)}
      <section className="section max-w-[44rem]"><h2>Another venue</h2>
        <p className="mt-3"><a className="btn" href="/desk/venue/new">A venue from nothing</a></p>
        <p className="small sec mt-5 measure">Or read in a venue file: JSON in the form “marquetry.venue/1”, 5 MB at the most. Its facts are checked; one that fails changes nothing. A file with an id that is here already becomes its next version.</p>
        <form method="post" action="/desk/venue/import" encType="multipart/form-data" noValidate>
          <div className={amiss ? "field amiss" : "field"}><label htmlFor="file">Venue file</label><input id="file" name="file" type="file" accept=".json,application/json" aria-invalid={amiss ? true : undefined} /></div>
          <div className="go-row"><button className="btn" type="submit">Read it in</button></div>
        </form>
      </section>
      </Checked>
    </DeskFrame>
  );
}
