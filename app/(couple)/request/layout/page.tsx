import type { Metadata } from "next";
import { redirect } from "next/navigation";
import { arrangeFor, arrangingOf, planSvg } from "@/lib/service";
import { people } from "@/lib/brief";
import type { Say } from "@/lib/words/pages";
import { asked, couple, type Search } from "@/app/_server/asking";
import { answerIn } from "@/app/_server/spoken";
import { chosenWords } from "@/app/_server/words";
import { mealRooms } from "@/app/_server/one-scale";
import { soon } from "@/app/_server/soon";
import { CoupleFrame } from "@/app/_parts/couple-frame";
import { Arranging } from "@/components/plan/arranging";
import { Caution } from "@/components/plan/caution";
import { Layouts } from "@/components/plan/layouts";
import { NoLayout } from "@/components/plan/instead";
import { capital, inWords } from "@/components/ui/say";
import { ErrorSummary } from "@/components/ui/errors";

const LETTERS = ["A", "B", "C"];
type Props = { readonly searchParams: Search };

export async function generateMetadata({ searchParams }: Props): Promise<Metadata> {
  const { booking, say } = await couple();
  const wrong = (await asked(searchParams, "why")) === "none";
  return { title: `${wrong ? say("Error: ") : ""}${say("Step {n} of {of}: {title}", { n: 7, of: 8, title: say("Your layout") })} – ${booking.venue.name}` };
}

/** How long the page waits for the engine before it says so, and shows how far it is. */
const PATIENCE_MS = 1_200;

function Waiting({ failed, say }: { readonly failed: boolean; readonly say: Say }) {
  return (
    <>
      {!failed && <noscript><meta httpEquiv="refresh" content="4;url=/request/layout" /></noscript>}
      <p className="step-line">{say("Step {n} of {of}", { n: 7, of: 8 })}</p>
      <h1>{say("Your layout")}</h1>
      <p className="lead measure mt-4" role="status">{failed ? say("Your layouts could not be worked out just now. Your answers are kept.") : say("Your layouts are being worked out: different ways of laying the day are tried, one after another.")}</p>
      {failed ? <p className="go-row"><a className="btn btn-go" href="/request/layout">{say("Try again")}</a></p> : (
        <>
          <p className="small sec measure mt-3">{say("They stand here as soon as they are there. You may also close the page; your answers are kept.")}</p>
          <form method="post" action="/request/layout/stop" className="go-row">
            <button className="btn" type="submit">{say("Stop and show what there is")}</button>
            <a href="/request/layout">{say("Look again")}</a>
          </form>
          <Arranging />
          <Caution say={say} />
        </>
      )}
    </>
  );
}

/** The search was ended by hand: what stands may not be all there is. */
function Stopped({ found, say }: { readonly found: number; readonly say: Say }) {
  return (
    <form method="post" action="/request/layout/stop" className="stopped">
      <p className="small">{say("You stopped the search.")} {found > 0 ? say("There may be others than these.") : say("Nothing had been found by then.")} <button className="leave" type="submit" name="then" value="again">{say("Work them all out")}</button></p>
    </form>
  );
}

export default async function LayoutPage({ searchParams }: Props) {
  const { house, actor, booking, say } = await couple();
  if (!booking.open) redirect("/request?why=closed");
  if (!booking.brief) redirect("/request/guests?why=guests");
  const reference = booking.reference;
  const arranged = await soon(arrangeFor(house, actor, { reference }), PATIENCE_MS);
  if (arranged.kind !== "here") {
    return <CoupleFrame booking={booking} back={{ href: "/request/extras", text: say("Extras") }} savedAt={booking.savedAt}><Waiting failed={arranged.kind === "failed"} say={say} /></CoupleFrame>;
  }
  const { venue } = booking;
  const result = answerIn(arranged.value.result, { venue, say });
  // All are drawn with the rooms that any of them seats guests in at the meal: at one scale, side by side.
  const rooms = mealRooms(result.layouts.slice(0, 3), venue);
  const offered = await Promise.all(result.layouts.slice(0, 3).map(async (layout, i) => {
    const scene = layout.scenes.find((s) => s.id === "meal")?.id ?? layout.scenes[0]?.id;
    const svg = await planSvg(house, actor, { reference, layout: layout.id, scene, pixelWidth: 330, rooms, words: await chosenWords() });
    return { layout, svg: svg.ok ? svg.value : "", letter: LETTERS[i] ?? String(i + 1) };
  }));
  const standing = await arrangingOf(house, actor, { reference });
  const why = await asked(searchParams, "why");
  const chosen = booking.chosen && !booking.chosen.outdated ? booking.chosen.layout.id : null;
  const byHand = chosen !== null && !result.layouts.some((l) => l.id === chosen);
  const guests = people(booking.brief);
  return (
    <CoupleFrame booking={booking} back={{ href: "/request/extras", text: say("Extras") }} savedAt={booking.savedAt}>
      {why === "none" && <ErrorSummary errors={[{ field: "layout-a", message: say("Choose one of the layouts before you go on.") }]} saved />}
      <p className="step-line">{say("Step {n} of {of}", { n: 7, of: 8 })}</p>
      <h1>{say("Your layout")}</h1>
      {why === "changed" && <p className="lead measure mt-4" role="status">{say("Your answers have changed since you chose. These are the layouts for them as they stand now.")}</p>}
      {standing.ok && standing.value.stopped && <Stopped found={offered.length} say={say} />}
      {offered.length === 0 ? (
        <>
          <NoLayout result={result} say={say} />
          <Caution say={say} />
        </>
      ) : (
        <form method="post" action="/request/layout/choose" noValidate>
          <input type="hidden" name="revision" value={booking.revision} />
          <p className="lead max-w-[40rem] mt-3 mb-7">
            {offered.length > 1 ? say("{count} ways to seat your {guests}. They differ in kind; look at what each gives up.", { count: capital(inWords(offered.length, say)), guests }) : say("One way to seat your {guests} that the checks we make let stand.", { guests })}
          </p>
          {byHand && <p className="stopped small mb-6">{say("You have moved things by hand:")} <b>{booking.chosen?.layout.title}</b>. <a href="/request/layout/adjust">{say("Go on moving things")}</a> · <a href="/request/send">{say("Go on with it as it is")}</a></p>}
          <Layouts offered={offered} chosen={chosen} venue={venue} guests={guests} say={say} />
          <div className="go-row">
            <button className="btn btn-go" type="submit" name="then" value="next">{say("Save and continue")}</button>
            <button className="btn" type="submit" name="then" value="adjust">{say("Choose it and move things by hand")}</button>
            <button className="btn-quiet" type="submit" name="then" value="later">{say("Save and come back later")}</button>
          </div>
          <Caution say={say} />
        </form>
      )}
    </CoupleFrame>
  );
}
