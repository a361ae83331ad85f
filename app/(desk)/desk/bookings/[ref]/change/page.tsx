import type { Metadata } from "next";
import { redirect } from "next/navigation";
import { lateChangeOf, lateWorkOf, type BookingView, type LateChange } from "@/lib/service";
import { asked, deskBooking, type Search } from "@/app/_server/asking";
import { heldFor } from "@/app/_server/kept";
import { drawn } from "@/app/_server/plans";
import { DeskFrame } from "@/app/_parts/desk-frame";
import { StillWorking } from "@/app/_parts/still-working";
import { Changes } from "@/components/desk/changes";
import { Fees } from "@/components/desk/fees";
import { Findings } from "@/components/desk/findings";
import { Checked } from "@/components/form/page/checked";
import { oneOf } from "@/components/form/values";
import { Caution } from "@/components/plan/caution";
import { PlanView } from "@/components/plan/plan-view";
import { NumberField } from "@/components/ui/field";
import { Names, namesText } from "@/components/ui/names";
import { counted } from "@/components/ui/say";

type Props = { readonly params: Promise<{ readonly ref: string }>; readonly searchParams: Search };

export async function generateMetadata({ params, searchParams }: Props): Promise<Metadata> {
  const { booking, actor } = await deskBooking((await params).ref);
  const kept = heldFor(await asked(searchParams, "kept"), "worked", actor.person);
  return { title: `${kept ? "Error: " : ""}Late change – ${namesText(booking.names, booking.venue.locale)}` };
}

/** What the form begins with: what was typed, else what was last worked out, else their final numbers, else what is agreed. */
function counts(booking: BookingView, change: LateChange | null, typed: Readonly<Record<string, string | readonly string[] | undefined>> | undefined): Readonly<Record<string, string>> {
  const agreed = change?.numbers ?? booking.revisions.findLast((r) => r.agreedAt !== undefined)?.brief.guests, told = booking.finalNumbers?.told;
  const text = (n: number | undefined): string => (n === undefined || n === 0 ? "" : String(n));
  return Object.fromEntries((["adults", "children", "highChairs", "wheelchairs", "suppliers"] as const).map((name) => {
    const final = change !== null ? undefined : name === "adults" || name === "children" || name === "suppliers" ? told?.[name] : undefined;
    return [name, typed ? oneOf(typed, name) : text(final ?? agreed?.[name])];
  }));
}

/** A new number of guests on what is agreed: the smallest change that works, looked at before it is taken. */
export default async function LateChangePage({ params, searchParams }: Props) {
  const { ref } = await params;
  const { house, actor, booking } = await deskBooking(ref);
  const seen = await lateChangeOf(house, actor, { reference: booking.reference });
  if (!seen.ok) redirect(`/desk/bookings/${encodeURIComponent(ref)}?done=moved`);
  const waits = await lateWorkOf(house, actor, { reference: booking.reference }), work = waits.ok ? waits.value : null;
  const kept = heldFor(await asked(searchParams, "kept"), "worked", actor.person);
  const change = seen.value, base = `/desk/bookings/${encodeURIComponent(ref)}`, value = counts(booking, change, kept?.values), errors = kept?.errors ?? [];
  return (
    <DeskFrame person={actor.person} back={{ href: base, text: namesText(booking.names, booking.venue.locale) }}>
      <Checked errors={errors}>
        <h1 className="mt-2">Late change</h1>
        <p className="sec mt-2"><Names names={booking.names} locale={booking.venue.locale} />, {booking.reference}</p>
        <p className="lead measure mt-4">What is agreed stays as it is while you look. The change moves as little as it can, and becomes a revision of its own only when you take it.</p>
        {booking.asked?.what === "change" && <blockquote className="their-words measure mt-4">{booking.asked.words}</blockquote>}
        {work?.state === "working" && <StillWorking what={`The change to ${work.guests} guests is`} again={`${base}/change`} />}
        {work?.state === "failed" && <p className="lead mt-8" role="status">The change to {work.guests} guests could not be worked out. Ask for it again below; what is agreed is as it was.</p>}
        {change && work === null && <Found booking={booking} change={change} part={await asked(searchParams, "part")} base={base} svg={change.layout ? await drawn(house, actor, { reference: booking.reference, scene: sceneOf(change, await asked(searchParams, "part"))?.id ?? "meal", late: true, since: change.from }, 760) : { wide: "", narrow: "" }} />}
        <section className="section max-w-[44rem]"><h2>{change ? "Other numbers" : "How many come now"}</h2>
          <form method="post" action={`${base}/change/work`} noValidate>
            <div className="fields-row">
              <NumberField name="adults" label="Adults" value={value.adults} errors={errors} /><NumberField name="children" label="Children" value={value.children} errors={errors} />
              <NumberField name="highChairs" label="High chairs" value={value.highChairs} errors={errors} /><NumberField name="wheelchairs" label="Wheelchairs" value={value.wheelchairs} errors={errors} /><NumberField name="suppliers" label="Suppliers who eat" value={value.suppliers} errors={errors} />
            </div>
            <div className="go-row"><button className={change?.layout ? "btn" : "btn btn-go"} type="submit">Work the change out</button></div>
            <p className="note sec mt-3">This takes some seconds; you may go elsewhere meanwhile.</p>
          </form>
        </section>
      </Checked>
    </DeskFrame>
  );
}

const sceneOf = ({ layout }: LateChange, part: string | undefined) => layout?.scenes.find((s) => s.id === part) ?? layout?.scenes.find((s) => s.id === "meal") ?? layout?.scenes[0];

type FoundProps = { readonly booking: BookingView; readonly change: LateChange; readonly part: string | undefined; readonly base: string; readonly svg: { readonly wide: string; readonly narrow: string } };
function Found({ booking, change, part, base, svg }: FoundProps) {
  const { layout, result, from } = change, { venue } = booking, scene = sceneOf(change, part);
  const head = `${change.guestsWere} guests agreed, ${change.guests} now`;
  if (!layout || !scene) {
    return (
      <section className="section" aria-labelledby="found-head"><h2 id="found-head">{head}: no change was found</h2>
        <ul className="findings mt-3">{result.reasons.map((f, i) => <li key={i}>{f.text}</li>)}</ul>
        {result.instead.length > 0 && <><p className="mt-4">What would work:</p><ul className="findings">{result.instead.map((one) => <li key={one.text}>{one.text}</li>)}</ul></>}
      </section>
    );
  }
  const moved = result.moved?.length ?? 0, relaid = result.relaid?.length ?? 0;
  const hrefOf = (id: string): string => `${base}/change?part=${id}`;
  return (
    <section className="section" aria-labelledby="found-head">
      <h2 id="found-head">{head}</h2>
      <p className="lead mt-3">{moved === 0 ? "Nothing stands elsewhere" : `${counted(moved, "piece stands", "pieces stand")} elsewhere, ${moved === 1 ? "is" : "are"} new or gone`}{relaid > 0 ? `; ${counted(relaid, "table is", "tables are")} laid for more or fewer` : ""}.</p>
      <nav className="scenes-of mt-4" aria-label="Parts of the day">{layout.scenes.map((s) => <a key={s.id} href={hrefOf(s.id)} aria-current={s.id === scene.id ? "true" : undefined}>{s.title}</a>)}</nav>
      <PlanView name={scene.title} svg={svg} source={{ kind: "saved", query: `ref=${encodeURIComponent(booking.reference)}&scene=${scene.id}&late&since=${from}` }} caption={scene.seats > 0 ? `${layout.title}: ${counted(scene.seats, "place", "places")}` : layout.title} />
      <p className="note sec mt-2">Was: revision {from}, agreed. Now: worked out, not taken.</p>
      <div className="two-up"><div><Changes venue={venue} was={change.was} now={layout} scene={scene} since={from} hrefOf={hrefOf} /></div>
        <div>{layout.quote && <section className="section"><h2>Fee summary</h2><Fees quote={layout.quote} locale={venue.locale} tax={venue.tax} /></section>}</div></div>
      <section className="section max-w-[44rem]"><h2>Findings</h2><Findings findings={layout.findings} sceneWord={(id) => layout.scenes.find((s) => s.id === id)?.title ?? id} /></section>
      <div className="go-row">
        <form method="post" action={`${base}/change/take`}><input type="hidden" name="seen" value={change.madeAt} /><button className="btn btn-go" type="submit">Take it, to be agreed</button></form>
        <form method="post" action={`${base}/change/drop`}><button className="btn" type="submit">Let it go</button></form>
      </div>
      <Caution />
    </section>
  );
}
