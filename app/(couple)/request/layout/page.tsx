import type { Metadata } from "next";
import { redirect } from "next/navigation";
import { arrangeFor, planSvg } from "@/lib/service";
import { people } from "@/lib/brief";
import { asked, couple, type Search } from "@/app/_server/asking";
import { soon } from "@/app/_server/soon";
import { CoupleFrame } from "@/app/_parts/couple-frame";
import { Caution } from "@/components/plan/caution";
import { Layouts } from "@/components/plan/layouts";
import { NoLayout } from "@/components/plan/instead";
import { inWords } from "@/components/ui/say";
import { ErrorSummary } from "@/components/ui/errors";

const LETTERS = ["A", "B", "C"];
type Props = { readonly searchParams: Search };

export async function generateMetadata({ searchParams }: Props): Promise<Metadata> {
  const { booking } = await couple();
  const wrong = (await asked(searchParams, "why")) === "none";
  return { title: `${wrong ? "Error: " : ""}Step 7 of 8: Your layout – ${booking.venue.name}` };
}

/** How long the page waits for the engine before it says so. */
const PATIENCE_MS = 25_000;

function Waiting({ failed }: { readonly failed: boolean }) {
  return (
    <>
      <p className="step-line">Step 7 of 8</p>
      <h1>Your layout</h1>
      <p className="lead measure mt-4" role="status">{failed ? "Your layouts could not be worked out just now. Your answers are kept." : "Your layouts are being worked out. It takes a little longer than usual; your answers are kept."}</p>
      <p className="go-row"><a className="btn btn-go" href="/request/layout">Look again</a></p>
    </>
  );
}

const WAYS: Readonly<Record<number, string>> = { 1: "One way", 2: "Two ways", 3: "Three ways" };

export default async function LayoutPage({ searchParams }: Props) {
  const { house, actor, booking } = await couple();
  if (!["invited", "started", "returned"].includes(booking.state)) redirect("/request?why=closed");
  if (!booking.brief) redirect("/request/guests?why=guests");
  const reference = booking.reference;
  const arranged = await soon(arrangeFor(house, actor, { reference }), PATIENCE_MS);
  if (arranged.kind !== "here") {
    return <CoupleFrame booking={booking} back={{ href: "/request/extras", text: "Extras" }} savedAt={booking.savedAt}><Waiting failed={arranged.kind === "failed"} /></CoupleFrame>;
  }
  const { result, venue } = arranged.value;
  const offered = await Promise.all(result.layouts.slice(0, 3).map(async (layout, i) => {
    const scene = layout.scenes.find((s) => s.id === "meal")?.id ?? layout.scenes[0]?.id;
    const svg = await planSvg(house, actor, { reference, layout: layout.id, scene, pixelWidth: 330 });
    return { layout, svg: svg.ok ? svg.value : "", letter: LETTERS[i] ?? String(i + 1) };
  }));
  const why = await asked(searchParams, "why");
  const chosen = booking.chosen && !booking.chosen.outdated ? booking.chosen.layout.id : null;
  const guests = people(booking.brief);
  return (
    <CoupleFrame booking={booking} back={{ href: "/request/extras", text: "Extras" }} savedAt={booking.savedAt}>
      {why === "none" && <ErrorSummary errors={[{ field: "layout-a", message: "Choose one of the layouts before you go on." }]} saved />}
      <p className="step-line">Step 7 of 8</p>
      <h1>Your layout</h1>
      {why === "changed" && <p className="lead measure mt-4" role="status">Your answers have changed since you chose. These are the layouts for them as they stand now.</p>}
      {offered.length === 0 ? (
        <>
          <NoLayout result={result} />
          <Caution />
        </>
      ) : (
        <form method="post" action="/request/layout/choose" noValidate>
          <input type="hidden" name="revision" value={booking.revision} />
          <p className="lead max-w-[40rem] mt-3 mb-7">
            {WAYS[offered.length] ?? inWords(offered.length)} to seat your {guests}{offered.length > 1 ? ". They differ in kind; look at what each gives up." : " that the checks we make let stand."}
          </p>
          <Layouts offered={offered} chosen={chosen} venue={venue} guests={guests} />
          <div className="go-row">
            <button className="btn btn-go" type="submit" name="then" value="next">Save and continue</button>
            <button className="btn-quiet" type="submit" name="then" value="later">Save and come back later</button>
          </div>
          <Caution />
        </form>
      )}
    </CoupleFrame>
  );
}
