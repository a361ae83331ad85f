import type { Layout, Turnover } from "@/lib/layout";
import type { Venue } from "@/lib/venue";
import { Pairs, type Pair } from "../ui/pairs";
import { counted, inWords, sayMoney } from "../ui/say";
import { DrawingSheet } from "./drawing";

type Offered = { readonly layout: Layout; readonly svg: string; readonly letter: string };
type LayoutsProps = { readonly offered: readonly Offered[]; readonly chosen: string | null; readonly venue: Venue; readonly guests: number };

export const seatsAt = (layout: Layout): number => layout.scenes.find((s) => s.id === "meal")?.seats ?? Math.max(0, ...layout.scenes.map((s) => s.seats));

export const sayTurnovers = (all: readonly Turnover[]): string =>
  all.length === 0 ? "None: everything stands from the start" : all.map((t) => `${counted(Math.round(t.minutes), "minute", "minutes")}, crew of ${inWords(t.crew)}`).join("; ");

function cost(layout: Layout, offered: readonly Offered[], venue: Venue): Pair {
  const total = layout.quote?.total ?? 0;
  const all = offered.map((o) => o.layout.quote?.total ?? 0);
  const least = Math.min(...all);
  const more = offered.length < 2 ? undefined : total === least ? (all.filter((t) => t === least).length === 1 ? "the least of them" : undefined) : `${sayMoney(total - least, venue)} more than the least`;
  return { name: "Extra cost", value: <b>{layout.quote ? sayMoney(total, venue) : "not priced"}</b>, more };
}

/** Up to three layouts that differ in kind, compared as drawings; one is chosen. */
export function Layouts({ offered, chosen, venue, guests }: LayoutsProps) {
  return (
    <fieldset>
      <legend className="hidden-words">Choose one layout</legend>
      <div className={`layouts layouts-${offered.length}`}>
        {offered.map(({ layout, svg, letter }) => {
          const seats = seatsAt(layout);
          const should = layout.findings.filter((f) => f.level === "should").length;
          return (
            <section key={layout.id} aria-labelledby={`layout-${layout.id}`}>
              <h2 id={`layout-${layout.id}`}><span className="letter">{letter}</span><span>{layout.title}</span></h2>
              <p className="why">{layout.why[0]}</p>
              <DrawingSheet svg={svg} />
              <Pairs pairs={[
                { name: "Places", value: <b>{seats}</b>, more: seats > guests ? `Room for ${seats - guests} more` : seats === guests ? "One for each of you" : undefined },
                cost(layout, offered, venue),
                { name: "Turnover", value: sayTurnovers(layout.turnovers) },
                { name: "Looked over", value: should === 0 ? "The checks made found nothing that falls short" : counted(should, "thing falls short of what is wanted", "things fall short of what is wanted") },
                { name: "Gives up", value: layout.givesUp && layout.givesUp.length > 0 ? layout.givesUp.join(" ") : "Nothing that the others have" },
                { name: "In full", value: <a href={`/request/layout/${layout.id}`}>Every part of the day, and in words<span className="hidden-words">: layout {letter}</span></a> },
              ]} />
              <label className="pick">
                <input type="radio" name="layout" value={layout.id} defaultChecked={chosen === layout.id} aria-describedby={`layout-${layout.id}`} />
                <span className="when-chosen">{letter} is chosen</span><span className="when-open">Choose {letter}</span>
              </label>
            </section>
          );
        })}
      </div>
    </fieldset>
  );
}
