import type { Layout, Turnover } from "@/lib/layout";
import type { Venue } from "@/lib/venue";
import { ENGLISH, type Say } from "@/lib/words/pages/say";
import { Pairs, type Pair } from "../ui/pairs";
import { inWords, sayMoney } from "../ui/say";
import { DrawingSheet } from "./drawing";
import { givesUpWords } from "./gives-up";

type Offered = { readonly layout: Layout; readonly svg: string; readonly letter: string };
type LayoutsProps = { readonly offered: readonly Offered[]; readonly chosen: string | null; readonly venue: Venue; readonly guests: number; readonly say: Say };

export const seatsAt = (layout: Layout): number => layout.scenes.find((s) => s.id === "meal")?.seats ?? Math.max(0, ...layout.scenes.map((s) => s.seats));

export const sayTurnovers = (all: readonly Turnover[], say: Say = ENGLISH): string =>
  all.length === 0 ? say("None: everything stands from the start") : all.map((t) => say("{n} minutes, crew of {crew}", { n: Math.round(t.minutes), crew: inWords(t.crew, say) })).join("; ");

function cost(layout: Layout, { offered, venue, say }: Pick<LayoutsProps, "offered" | "venue" | "say">): Pair {
  const total = layout.quote?.total ?? 0;
  const all = offered.map((o) => o.layout.quote?.total ?? 0);
  const least = Math.min(...all);
  const more = offered.length < 2 ? undefined : total === least ? (all.filter((t) => t === least).length === 1 ? say("the least of them") : undefined) : say("{money} more than the least", { money: sayMoney(total - least, venue) });
  return { name: say("Extra cost"), value: <b>{layout.quote ? sayMoney(total, venue) : say("not priced")}</b>, more };
}

/** Which parts of the day move under the roof when it rains, and where to. */
export function rainWords(layout: Layout, venue: Venue, say: Say): string {
  const names = (rooms: readonly string[]): string => new Intl.ListFormat(venue.locale).format(rooms.map((id) => venue.rooms.find((r) => r.id === id)?.name ?? id));
  const moved = (layout.wet?.scenes ?? []).filter((wet) => [...wet.rooms].sort().join() !== [...(layout.scenes.find((dry) => dry.id === wet.id)?.rooms ?? [])].sort().join());
  return moved.length === 0 ? say("Everything stays where it is") : moved.map((one) => say("{part}: {rooms}", { part: one.title, rooms: names(one.rooms) })).join("; ");
}

/** Up to three layouts that differ in kind, compared as drawings; one is chosen. */
export function Layouts({ offered, chosen, venue, guests, say }: LayoutsProps) {
  return (
    <fieldset>
      <legend className="hidden-words">{say("Choose one layout")}</legend>
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
                { name: say("Places"), value: <b>{seats}</b>, more: seats > guests ? say("Room for {n} more", { n: seats - guests }) : seats === guests ? say("One for each of you") : undefined },
                cost(layout, { offered, venue, say }),
                { name: say("Turnover"), value: sayTurnovers(layout.turnovers, say) },
                { name: say("Looked over"), value: should === 0 ? say("The checks made found nothing that falls short") : say("{n} things fall short of what is wanted", { n: should }) },
                { name: say("Gives up"), value: givesUpWords(layout, say) ?? say("Nothing that the others have") },
                ...(layout.wet ? [{ name: say("If it rains"), value: rainWords(layout, venue, say) }] : []),
                { name: say("In full"), value: <a href={`/request/layout/${layout.id}`}>{say("Every part of the day, and in words")}<span className="hidden-words">: {letter}</span></a> },
              ]} />
              <label className="pick">
                <input type="radio" name="layout" value={layout.id} defaultChecked={chosen === layout.id} aria-describedby={`layout-${layout.id}`} />
                <span className="when-chosen">{say("{letter} is chosen", { letter })}</span><span className="when-open">{say("Choose {letter}", { letter })}</span>
              </label>
            </section>
          );
        })}
      </div>
    </fieldset>
  );
}
