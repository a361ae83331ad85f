import { bringsChairs, type Layout } from "@/lib/layout";
import type { Venue } from "@/lib/venue";
import { ENGLISH, type Say } from "@/lib/words/pages/say";
import { inWords } from "../ui/say";
import type { TwoWidths } from "./markup";
import { SceneInWords } from "./in-words";
import { PlanView } from "./plan-view";

type Props = { readonly layout: Layout; readonly venue: Venue; readonly plans: Readonly<Record<string, TwoWidths>>; readonly words?: boolean; /** How the page asks for a plan of this layout; the scene is added. */ readonly query: string; readonly say?: Say; /** Sets the marks of a second day on one page apart. */ readonly prefix?: string };

/** Every part of the day: its plan, what is laid anew before it, and, if wanted, the list. */
export function Day({ layout, venue, plans, words = false, query, say = ENGLISH, prefix = "scene" }: Props) {
  return (
    <div className={words ? "day-full" : "day"}>
      {layout.scenes.map((scene) => {
        const before = layout.turnovers.filter((t) => t.to === scene.id);
        return (
          <section className="section" key={scene.id} aria-labelledby={`${prefix}-${scene.id}`}>
            <h2 id={`${prefix}-${scene.id}`}>{scene.title}</h2>
            {before.map((t, i) => (
              <p className="small sec mt-3" key={i}>{say(bringsChairs(layout.scenes, t) ? "Before it a crew of {crew} carry chairs over from another room, in {n} minutes." : "Before it a crew of {crew} turn the room over in {n} minutes.", { crew: inWords(t.crew, say), n: Math.round(t.minutes) })} {say("It takes {n} moves.", { n: t.moves.length })}</p>
            ))}
            <div className="mt-4"><PlanView name={scene.title} source={{ kind: "saved", query: `${query}&scene=${scene.id}` }} svg={plans[scene.id]} caption={scene.seats > 0 ? say("{n} places", { n: scene.seats }) : say("No places laid: guests stand")} /></div>
            {words && <SceneInWords scene={scene} venue={venue} say={say} />}
          </section>
        );
      })}
    </div>
  );
}
