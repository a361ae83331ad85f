import type { Actor, BookingView, House, RevisionView } from "@/lib/service";
import type { Layout, Scene } from "@/lib/layout";
import { drawn } from "@/app/_server/plans";
import { Changes } from "@/components/desk/changes";
import { SceneInWords } from "@/components/plan/in-words";
import { sayTurnovers } from "@/components/plan/layouts";
import { PlanView } from "@/components/plan/plan-view";
import { counted, sayMoment } from "@/components/ui/say";

type Props = {
  readonly house: House; readonly actor: Actor; readonly booking: BookingView; readonly revision: RevisionView | undefined;
  /** Which part of the day; and whether the plan is wanted without what changed. */
  readonly part: string | undefined; readonly plain: boolean;
};

/** The layout that speaks for a booking now: a revision, else what the venue set, else what the couple have chosen and not sent. */
export const layoutShown = (booking: BookingView, revision: RevisionView | undefined): Layout | undefined =>
  revision?.layout ?? booking.setByVenue?.layout ?? booking.chosen?.layout;

const sceneOf = (layout: Layout, wanted: string | undefined): Scene | undefined =>
  layout.scenes.find((s) => s.id === wanted) ?? layout.scenes.find((s) => s.id === "meal") ?? layout.scenes[0];

/** The plan under review: one part of the day, with what changed since the revision before it, drawn and in words. */
export async function ReviewPlan({ house, actor, booking, revision, part, plain }: Props) {
  const layout = layoutShown(booking, revision);
  const scene = layout && sceneOf(layout, part);
  if (!layout || !scene) return <p className="lead">They have not chosen a layout yet. What they have answered so far stands below.</p>;
  const { reference, venue } = booking;
  const earlier = revision && booking.revisions.findLast((r) => r.number < revision.number);
  const since = earlier && !plain ? earlier.number : undefined;
  const set = !revision && booking.setByVenue !== undefined;
  const svg = await drawn(house, actor, { reference, scene: scene.id, number: revision?.number, set, since }, 760);
  const ref = encodeURIComponent(reference);
  const newest = revision === booking.revisions.at(-1);
  const theirs = booking.state === "sent" || (booking.open && booking.chosen !== undefined && !booking.chosen.outdated);
  const adjustable = newest && !set && theirs && actor.kind === "desk" && actor.role !== "desk-look";
  const hrefOf = (id: string, asPlain = plain): string =>
    `/desk/bookings/${ref}?part=${id}${revision && !newest ? `&revision=${revision.number}` : ""}${asPlain ? "&plan=plain" : ""}`;
  const query = `ref=${ref}&scene=${scene.id}${revision ? `&number=${revision.number}` : ""}${set ? "&set" : ""}${since ? `&since=${since}` : ""}`;
  return (
    <>
      {set && <SetByVenue booking={booking} />}
      <nav className="scenes-of" aria-label="Parts of the day">
        {layout.scenes.map((s) => <a key={s.id} href={hrefOf(s.id)} aria-current={s.id === scene.id ? "true" : undefined}>{s.title}</a>)}
      </nav>
      <PlanView
        name={scene.title} svg={svg} source={{ kind: "saved", query }}
        caption={scene.seats > 0 ? `${layout.title}: ${counted(scene.seats, "place", "places")}` : layout.title}
        aside={earlier && <a href={hrefOf(scene.id, !plain)}>{plain ? `Show what changed since revision ${earlier.number}` : "Show it without the changes"}</a>}
      />
      {adjustable && <p className="mt-3"><a href={`/desk/bookings/${ref}/adjust?part=${scene.id}`}>Adjust it on the plan</a></p>}
      {since !== undefined && <p className="note sec mt-2">Was: revision {since}. Now: revision {revision?.number}. The numbers on the plan are those of the list.</p>}
      {earlier && <Changes venue={venue} was={earlier.layout} now={layout} scene={scene} since={earlier.number} hrefOf={hrefOf} />}
      <details className="act mt-5"><summary>{scene.title} in words</summary><div className="pb-4"><SceneInWords scene={scene} venue={venue} /></div></details>
      <p className="small sec mt-3">Turnover: {sayTurnovers(layout.turnovers)}.</p>
    </>
  );
}

/** Nothing came in time: what holds now, whose it is, and that nobody agreed it. */
function SetByVenue({ booking }: { readonly booking: BookingView }) {
  const { setByVenue, chosen, venue } = booking;
  if (!setByVenue) return null;
  return (
    <section className="mb-6" aria-labelledby="set-head">
      <h2 id="set-head">Set by the venue, not agreed</h2>
      <p className="mt-3">Nothing had come by the due date, so the standard layout “{setByVenue.layout.title}” was put down {sayMoment(setByVenue.at, venue)}. The couple can still send theirs.</p>
      <p className="small sec mt-2">It stands as it is in the venue’s file and was not checked against this couple’s answers.</p>
      {chosen && <p className="small sec mt-2">They have chosen “{chosen.layout.title}” and not sent it.</p>}
    </section>
  );
}
