import type { Metadata } from "next";
import { arrangeStandard, standardSources, standardSvg, type StandardSource, type VenueToEdit } from "@/lib/service";
import type { Layout } from "@/lib/layout";
import { asked, type Search } from "@/app/_server/asking";
import { heldFor } from "@/app/_server/kept";
import { mealRooms } from "@/app/_server/one-scale";
import { soon } from "@/app/_server/soon";
import { savedWords, venueAsked } from "@/app/_server/venue-asked";
import { pagesOf } from "@/app/_server/venue-pages";
import { DeskFrame } from "@/app/_parts/desk-frame";
import { Worked } from "@/app/_parts/standard-worked";
import { DraftNote, FilledFrom, VenueRooms, VersionLine } from "@/app/_parts/venue-form";
import { StillWorking } from "@/app/_parts/still-working";
import { Checked } from "@/components/form/page/checked";
import { oneOf } from "@/components/form/values";
import { Caution } from "@/components/plan/caution";
import { DrawingSheet } from "@/components/plan/drawing";
import { NumberField, SelectField, TextField } from "@/components/ui/field";
import { counted, sayDay } from "@/components/ui/say";
import type { FieldError } from "@/components/ui/error-of";

type Props = { readonly params: Promise<{ readonly venue: string }>; readonly searchParams: Search };
const PATIENCE_MS = 2_500;

export async function generateMetadata({ params, searchParams }: Props): Promise<Metadata> {
  const { venue, actor } = await venueAsked((await params).venue);
  const kept = heldFor(await asked(searchParams, "kept"), "venue-standard", actor.person);
  return { title: `${kept ? "Error: " : ""}Standard layout – ${venue.name}` };
}

const bestScene = (layout: Layout): string => layout.scenes.find((s) => s.id === "meal")?.id ?? layout.scenes[0]?.id ?? "";

/** What is set where nothing comes by the due date: chosen from what stands, worked out for a number of guests, or drawn under the hand. */
export default async function StandardPage({ params, searchParams }: Props) {
  const found = await venueAsked((await params).venue), { id, house, actor, venue, version, draft } = found;
  const kept = heldFor(await asked(searchParams, "kept"), "venue-standard", actor.person);
  const errors = kept?.errors ?? [], done = await asked(searchParams, "done"), base = `/desk/venue/${encodeURIComponent(id)}`;
  const guests = Number((await asked(searchParams, "guests")) ?? (kept ? oneOf(kept.values, "guests") : "")) || 0, pack = (await asked(searchParams, "package")) ?? (kept ? oneOf(kept.values, "package") : "");
  const worked = guests > 0 ? await soon(arrangeStandard(house, actor, { venue: id, guests, pack }), PATIENCE_MS) : null;
  const sources = await standardSources(house, actor, { venue: id }), now = venue.standardLayout, part = (await asked(searchParams, "part")) ?? (now ? bestScene(now) : "");
  const drawn = now ? await standardSvg(house, actor, { venue: id, scene: part, pixelWidth: 760 }) : null;
  const rooms = worked?.kind === "here" ? mealRooms(worked.value.layouts, venue) : undefined;
  const offered = worked?.kind === "here" ? await Promise.all(worked.value.layouts.map(async (layout) => {
    const svg = await standardSvg(house, actor, { venue: id, scene: bestScene(layout), pixelWidth: 330, rooms, of: { guests, pack, layout: layout.id } });
    return { layout, svg: svg.ok ? svg.value : "" };
  })) : [];
  const at = <FilledFrom version={version} draft={draft?.number} />;
  return (
    <DeskFrame person={actor.person} here="venue" back={{ href: "/desk/venue", text: "Venue" }}>
      <Checked errors={errors}>
        <h1 className="mt-2">Standard layout</h1>
        <p className="sec mt-2"><VersionLine venue={venue} version={version} /></p>
        <DraftNote id={id} version={version} draft={draft} />
        <VenueRooms venue={id} here="standard" rooms={pagesOf(venue)} />
        {done && <p className="lead mt-4" role="status">{savedWords(done)}</p>}
        <p className="lead measure mt-4">Where nothing has come by a booking’s due date, this is set: by the venue, not agreed. It is kept with the venue’s version.</p>
        {now && drawn?.ok ? (
          <section className="section" aria-labelledby="now-head"><h2 id="now-head">{now.title}</h2>
            <nav className="scenes-of mt-3" aria-label="Parts of the day">{now.scenes.map((s) => <a key={s.id} href={`${base}/standard?part=${s.id}`} aria-current={s.id === part ? "true" : undefined}>{s.title}</a>)}</nav>
            <div className="mt-4 max-w-[50rem]"><DrawingSheet svg={drawn.value} /></div>
            <div className="go-row"><a className="btn" href={`${base}/standard/adjust?part=${part}`}>Adjust it on the plan</a>
              <form method="post" action={`${base}/standard/drop`}>{at}<button className="btn-quiet" type="submit">Take it away</button></form></div>
            <Caution />
          </section>
        ) : <p className="mt-6">There is none yet: where nothing comes, nothing is set, and the desk is told.</p>}
        <section className="section" aria-labelledby="work-head"><h2 id="work-head">Have one worked out</h2>
          <form method="get" action={`${base}/standard`} className="max-w-[44rem]"><div className="fields-row items-end">
            <NumberField name="guests" label="Guests" value={guests > 0 ? String(guests) : ""} errors={errors} />
            <SelectField name="package" label="Package" value={pack || venue.packages[0]?.id} options={venue.packages.map((p) => ({ value: p.id, text: p.name }))} errors={errors} />
            <div className="mt-6"><button className="btn" type="submit">Work it out</button></div>
          </div></form>
          {worked?.kind === "working" && <StillWorking what="Layouts are" again={`${base}/standard?guests=${guests}&package=${encodeURIComponent(pack)}`} />}
          {worked?.kind === "failed" && <p className="lead mt-6" role="status">That could not be worked out just now. <a href={`${base}/standard?guests=${guests}`}>Try again</a></p>}
          {worked?.kind === "here" && <Worked venue={venue} action={`${base}/standard/choose`} at={at} offered={offered} result={worked.value} guests={guests} pack={pack} errors={errors} />}
        </section>
        {sources.ok && sources.value.length > 0 && <FromBookings venue={venue} action={`${base}/standard/choose`} at={at} sources={sources.value} errors={errors} />}
      </Checked>
    </DeskFrame>
  );
}

type From = { readonly venue: VenueToEdit["venue"]; readonly action: string; readonly at: React.ReactNode; readonly sources: readonly StandardSource[]; readonly errors: readonly FieldError[] };
function FromBookings({ venue, action, at, sources, errors }: From) {
  return (
    <section className="section max-w-[44rem]" aria-labelledby="from-head"><h2 id="from-head">Or take one that was laid out here</h2>
      <p className="small sec mt-3 measure">Nobody’s names and nothing that a couple brought stay in it.</p>
      <form method="post" action={action} noValidate>{at}
        <SelectField name="revision" label="Layout" value="" options={sources.map((s) => ({ value: `${s.reference}/${s.number}`, text: `${s.title}, ${counted(s.seats, "place", "places")}: ${s.reference}, ${sayDay(s.date, venue.locale)}${s.agreed ? "" : ", not agreed"}` }))} errors={errors} />
        <TextField name="title" label="What it is called" value={venue.standardLayout?.title ?? "The house’s own"} errors={errors} maxLength={120} />
        <div className="go-row"><button className="btn" type="submit">Make it the standard layout</button></div>
      </form>
    </section>
  );
}
