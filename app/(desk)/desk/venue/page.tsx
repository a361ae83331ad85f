import type { Metadata } from "next";
import type { Venue } from "@/lib/venue";
import { roomArea } from "@/lib/venue";
import { listVenues } from "@/lib/service";
import { asked, desk, type Search } from "@/app/_server/asking";
import { face } from "@/app/_server/face";
import { heldFor } from "@/app/_server/kept";
import { DeskFrame } from "@/app/_parts/desk-frame";
import { Scroll } from "@/components/ui/scroll";
import { ErrorSummary } from "@/components/ui/errors";
import { sayLength, sayMoney } from "@/components/ui/say";

type Props = { readonly searchParams: Search };

export async function generateMetadata({ searchParams }: Props): Promise<Metadata> {
  const { actor } = await desk();
  const kept = heldFor(await asked(searchParams, "kept"), "venue", actor.person);
  return { title: `${kept ? "Error: " : ""}Venue – ${(await face()).name}` };
}

const areaOf = (mm2: number, venue: Venue): string =>
  venue.lengths === "metric" ? `${(mm2 / 1e6).toFixed(1)} m²` : `${Math.round(mm2 / 92_903.04)} sq ft`;

function Facts({ venue, version }: { readonly venue: Venue; readonly version: number }) {
  const size = (s: Venue["stock"][number]["shape"]): string => ("diameter" in s ? `round, ${sayLength(s.diameter, venue.lengths)}` : `${sayLength(s.width, venue.lengths)} by ${sayLength(s.depth, venue.lengths)}`);
  return (
    <section className="section" aria-labelledby={`venue-${venue.id}`}>
      <h2 id={`venue-${venue.id}`}>{venue.name}</h2>
      <p className="small sec mt-3">Version {version}; {venue.locale}, {venue.currency}, {venue.timeZone}, rules “{venue.rules?.profile ?? "model-code"}”. Agreed layouts keep the version that they were agreed with.</p>
      <h3 className="mt-6">Rooms</h3>
      <Scroll label="Rooms"><table>
        <thead><tr><th scope="col">Room</th><th scope="col" className="figures">Floor</th><th scope="col">Used for</th><th scope="col" className="figures">Doors</th><th scope="col">Posted: rows, tables, standing</th></tr></thead>
        <tbody>{venue.rooms.map((r) => <tr key={r.id}><th scope="row">{r.name}</th><td className="figures">{areaOf(roomArea(r), venue)}</td><td>{r.uses.join(", ")}</td><td className="figures">{r.doors.length}</td><td>{[r.posted?.rows, r.posted?.tables, r.posted?.standing].map((n) => n ?? "–").join(", ")}</td></tr>)}</tbody>
      </table></Scroll>
      <h3 className="mt-6">Stock</h3>
      <Scroll label="Stock"><table>
        <thead><tr><th scope="col">Piece</th><th scope="col">Size</th><th scope="col" className="figures">How many</th><th scope="col" className="figures">Seats</th></tr></thead>
        <tbody>{venue.stock.map((s) => <tr key={s.id}><th scope="row">{s.name}</th><td>{size(s.shape)}</td><td className="figures">{s.count}</td><td className="figures">{s.seats ? `${s.seats.comfort} to ${s.seats.most}` : ""}</td></tr>)}</tbody>
      </table></Scroll>
      <div className="two-up">
        <div><h3 className="mt-6">Packages</h3><Scroll label="Packages"><table>
          <thead><tr><th scope="col">Package</th><th scope="col">Coordinator</th><th scope="col" className="figures">Due before</th></tr></thead>
          <tbody>{venue.packages.map((p) => <tr key={p.id}><th scope="row">{p.name}</th><td>{p.coordinator ? "yes" : "no"}</td><td className="figures">{p.dueDays} days</td></tr>)}</tbody>
        </table></Scroll></div>
        <div><h3 className="mt-6">Charges</h3><Scroll label="Charges"><table>
          <thead><tr><th scope="col">Charge</th><th scope="col">Per</th><th scope="col" className="figures">Amount</th></tr></thead>
          <tbody>{venue.charges.map((c) => <tr key={c.id}><th scope="row">{c.name}</th><td>{c.per}</td><td className="figures">{sayMoney(c.amount, venue)}</td></tr>)}</tbody>
        </table></Scroll></div>
      </div>
    </section>
  );
}

export default async function VenuePage({ searchParams }: Props) {
  const { house, actor } = await desk();
  const kept = heldFor(await asked(searchParams, "kept"), "venue", actor.person);
  const done = await asked(searchParams, "done");
  const seen = await listVenues(house, actor, {});
  return (
    <DeskFrame person={actor.person} here="venue">
      <ErrorSummary errors={(kept?.errors ?? []).map((e) => ({ field: "file", message: e.message }))} />
      <h1 className="mt-4">Venue</h1>
      {done && <p className="lead mt-3" role="status">Read in as version {done}. New bookings use it; agreed layouts keep theirs.</p>}
      {(seen.ok ? seen.value : []).map((v) => <Facts key={v.id} venue={v.venue} version={v.version} />)}
      <section className="section max-w-[44rem]"><h2>Read in a venue file</h2>
        <p className="small sec mt-3 measure">A JSON file in the form “marquetry.venue/1”, 5 MB at the most. Its facts are checked; one that fails changes nothing. A file with an id that is here already becomes its next version.</p>
        <form method="post" action="/desk/venue/import" encType="multipart/form-data" noValidate>
          <div className={kept ? "field amiss" : "field"}><label htmlFor="file">Venue file</label><input id="file" name="file" type="file" accept=".json,application/json" aria-invalid={kept ? true : undefined} /></div>
          <div className="go-row"><button className="btn" type="submit">Read it in</button></div>
        </form>
      </section>
    </DeskFrame>
  );
}
