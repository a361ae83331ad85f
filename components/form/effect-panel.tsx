import type { Venue } from "@/lib/venue";
import { Band, BandKey } from "../plan/band";
import { Caution } from "../plan/caution";
import { DrawingSheet, type TwoWidths } from "../plan/drawing";
import { gapWords, type Effect } from "./effect";

type Props = { readonly id: string; readonly effect: Effect; readonly venue: Venue; readonly guests: number; readonly svg: TwoWidths | null; readonly rows: boolean; readonly working: boolean };

/** What the answers so far do: a sentence, the plan, the measure of places. Computed on the server at each save. */
export function EffectPanel({ id, effect, venue, guests, svg, rows, working }: Props) {
  const scene = effect.layout?.scenes.find((s) => s.id === effect.scene);
  const gaps = gapWords(venue, rows);
  const { seats } = effect;
  return (
    <section className="effect" id="effect" aria-labelledby="effect-head">
      <h2 id="effect-head" className="hidden-words">What this does</h2>
      <p className="lead">{effect.sentence}</p>
      {svg?.wide && scene && effect.layout && (
        <DrawingSheet svg={svg} caption={`${scene.title}: one way to lay your answers so far.`} aside={<a href={`/request/layout/${effect.layout.id}`}>In words</a>} />
      )}
      {working && <p className="small sec mt-3 measure">Your answers are still being laid out. The drawing stands here when you look again: <a href={`/request/${id}#effect`}>look now</a>. Anything typed since is best saved first.</p>}
      {seats && (
        <div className="measure-of">
          <h3>{rows ? "How many the rows seat" : "How many the tables seat"}</h3>
          <Band id={id} seats={seats} guests={guests} />
          <BandKey
            id={id}
            comfort={<><b>{seats.comfort} in comfort.</b> {gaps.comfort}</>}
            most={<><b>{seats.most} at the most.</b> {gaps.most}</>}
            ceiling={<><b>{seats.ceiling} is the ceiling:</b> {seats.because}</>}
          />
          <p className="note sec mt-3">Counted with the {rows ? "chairs" : "tables"} alone, the standing furniture in its place. Carrying pieces out makes room, a dance floor or a buffet takes it; your layout shows what comes of it.</p>
        </div>
      )}
      <Caution />
    </section>
  );
}
