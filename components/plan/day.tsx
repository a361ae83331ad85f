import type { Layout } from "@/lib/layout";
import type { Venue } from "@/lib/venue";
import { counted, inWords } from "../ui/say";
import type { TwoWidths } from "./drawing";
import { SceneInWords } from "./in-words";
import { PlanView } from "./plan-view";

type Props = { readonly layout: Layout; readonly venue: Venue; readonly plans: Readonly<Record<string, TwoWidths>>; readonly words?: boolean; /** How the page asks for a plan of this layout; the scene is added. */ readonly query: string };

/** Every part of the day: its plan, what is laid anew before it, and, if wanted, the list. */
export function Day({ layout, venue, plans, words = false, query }: Props) {
  return (
    <div className={words ? "day-full" : "day"}>
      {layout.scenes.map((scene) => {
        const before = layout.turnovers.filter((t) => t.to === scene.id);
        return (
          <section className="section" key={scene.id} aria-labelledby={`scene-${scene.id}`}>
            <h2 id={`scene-${scene.id}`}>{scene.title}</h2>
            {before.map((t, i) => (
              <p className="small sec mt-3" key={i}>Before it the crew of {inWords(t.crew)} turn the room over in {counted(Math.round(t.minutes), "minute", "minutes")}: {counted(t.moves.length, "move", "moves")}.</p>
            ))}
            <div className="mt-4"><PlanView name={scene.title} source={{ kind: "saved", query: `${query}&scene=${scene.id}` }} svg={plans[scene.id]} caption={scene.seats > 0 ? counted(scene.seats, "place", "places") : "No places laid: guests stand"} /></div>
            {words && <SceneInWords scene={scene} venue={venue} />}
          </section>
        );
      })}
    </div>
  );
}
