import type { Metadata } from "next";
import { redirect } from "next/navigation";
import { arrangeFor, arrangingOf, planSvg, type Actor, type House } from "@/lib/service";
import { asked, deskBooking, type Search } from "@/app/_server/asking";
import { heldFor } from "@/app/_server/kept";
import { mealRooms } from "@/app/_server/one-scale";
import { soon } from "@/app/_server/soon";
import { DeskFrame } from "@/app/_parts/desk-frame";
import { StillWorking } from "@/app/_parts/still-working";
import { Checked } from "@/components/form/page/checked";
import { oneOf } from "@/components/form/values";
import { Caution } from "@/components/plan/caution";
import { DrawingSheet } from "@/components/plan/drawing";
import { seatsAt } from "@/components/plan/layouts";
import { AreaField, NumberField } from "@/components/ui/field";
import { Names, namesText } from "@/components/ui/names";
import { Pairs } from "@/components/ui/pairs";
import { sayMoney } from "@/components/ui/say";

type Props = { readonly params: Promise<{ readonly ref: string }>; readonly searchParams: Search };
/** How long the page waits for the engine; it goes on meanwhile, and the page asks again by itself. */
const PATIENCE_MS = 2_500;

export async function generateMetadata({ params, searchParams }: Props): Promise<Metadata> {
  const { booking, actor } = await deskBooking((await params).ref);
  const kept = heldFor(await asked(searchParams, "kept"), "counted", actor.person);
  return { title: `${kept ? "Error: " : ""}Draft – ${namesText(booking.names, booking.venue.locale)}` };
}

async function progressOf(house: House, actor: Actor, reference: string): Promise<{ readonly done: number; readonly of: number } | undefined> {
  const far = await arrangingOf(house, actor, { reference });
  return far.ok && far.value.state === "working" ? far.value : undefined;
}

/** A first draft for a couple, from what they have answered so far: a number of guests is enough. */
export default async function DraftPage({ params, searchParams }: Props) {
  const { ref } = await params;
  const { house, actor, booking } = await deskBooking(ref);
  const base = `/desk/bookings/${encodeURIComponent(ref)}`;
  if (!booking.open || actor.role === "desk-look") redirect(`${base}?done=moved`);
  const keptAt = await asked(searchParams, "kept");
  const kept = heldFor(keptAt, "counted", actor.person) ?? heldFor(keptAt, "drafted", actor.person);
  const arranged = booking.brief ? await soon(arrangeFor(house, actor, { reference: booking.reference }), PATIENCE_MS) : null;
  const errors = kept?.errors ?? [], guests = booking.draft.guests, { venue } = booking;
  const result = arranged?.kind === "here" ? arranged.value.result : null;
  const rooms = mealRooms(result?.layouts ?? [], venue);
  const offered = await Promise.all((result?.layouts ?? []).map(async (layout) => {
    const scene = layout.scenes.find((s) => s.id === "meal")?.id ?? layout.scenes[0]?.id;
    const svg = await planSvg(house, actor, { reference: booking.reference, layout: layout.id, scene, pixelWidth: 330, rooms });
    return { layout, svg: svg.ok ? svg.value : "" };
  }));
  return (
    <DeskFrame person={actor.person} back={{ href: base, text: namesText(booking.names, venue.locale) }}>
      <Checked errors={errors}>
        <h1 className="mt-2">Draft for them</h1>
        <p className="sec mt-2"><Names names={booking.names} locale={venue.locale} />, {booking.reference}</p>
        <p className="lead measure mt-4">From what they have answered so far; where they were not sure, the usual is taken. They get it by mail and may change all of it. Nothing is sent or agreed by it.</p>
        <form method="post" action={`${base}/draft/count`} noValidate className="max-w-[44rem]">
          <input type="hidden" name="revision" value={booking.revision} />
          <div className="fields-row items-end">
            <NumberField name="adults" label="Adults" value={kept ? oneOf(kept.values, "adults") : String(guests?.adults ?? "")} errors={errors} />
            <NumberField name="children" label="Children" value={kept ? oneOf(kept.values, "children") : String(guests?.children ?? "")} errors={errors} />
            <div className="mt-6"><button className={booking.brief ? "btn" : "btn btn-go"} type="submit">{booking.brief ? "Count anew" : "Work drafts out"}</button></div>
          </div>
        </form>
        {arranged?.kind === "working" && <StillWorking what="Drafts are" again={`${base}/draft`} progress={await progressOf(house, actor, booking.reference)} />}
        {arranged?.kind === "failed" && <p className="lead mt-8" role="status">Drafts could not be worked out just now. <a href={`${base}/draft`}>Try again</a></p>}
        {result && offered.length === 0 && <section className="section"><h2>No layout was found</h2><ul className="findings mt-3">{result.reasons.map((f, i) => <li key={i}>{f.text}</li>)}</ul>{result.instead.length > 0 && <ul className="findings">{result.instead.map((one) => <li key={one.text}>{one.text}</li>)}</ul>}</section>}
        {offered.length > 0 && (
          <form method="post" action={`${base}/draft/offer`} noValidate className="section">
            <input type="hidden" name="revision" value={booking.revision} />
            <h2>Which one</h2>
            <fieldset className="mt-4"><legend className="hidden-words">Which layout to draft</legend>
              <div className={`layouts layouts-${offered.length}`}>{offered.map(({ layout, svg }, i) => (
                <section key={layout.id} aria-labelledby={`layout-${layout.id}`}>
                  <h3 id={`layout-${layout.id}`}>{layout.title}</h3>
                  <p className="why">{layout.why[0]}</p>
                  <DrawingSheet svg={svg} />
                  <Pairs pairs={[{ name: "Places", value: <b>{seatsAt(layout)}</b> }, { name: "Extra cost", value: layout.quote ? sayMoney(layout.quote.total, venue) : "not priced" }, { name: "Findings", value: `${layout.findings.filter((f) => f.level === "should").length} should` }]} />
                  <label className="pick"><input type="radio" name="layout" value={layout.id} defaultChecked={i === 0} aria-describedby={`layout-${layout.id}`} /><span className="when-chosen">This one</span><span className="when-open">Take this one</span></label>
                </section>
              ))}</div>
            </fieldset>
            <div className="max-w-[44rem]"><AreaField name="words" label="A word with it, if you like" value={kept ? oneOf(kept.values, "words") : ""} errors={errors} rows={3} /></div>
            <div className="go-row"><button className="btn btn-go" type="submit">Give them this draft</button></div>
            <Caution />
          </form>
        )}
      </Checked>
    </DeskFrame>
  );
}
