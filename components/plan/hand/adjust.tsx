"use client";
import { useRef, useState } from "react";
import type { HandView } from "@/lib/hand";
import type { SceneId } from "@/lib/layout";
import { handVoice, handVoiceOf, type HandVoice } from "@/lib/words/hand";
import type { FieldError } from "../../ui/error-of";
import { useSay } from "../../words/speaking";
import { Caution } from "../caution";
import type { TwoWidths } from "../markup";
import { HandPlan, type PlanUnderHand } from "./hand-plan";
import { AddForm, ChoosePiece, Deeds, Follows, FoundHere, PieceList, type Hrefs } from "./parts";
import { PieceForm } from "./piece-form";
import { sceneIn } from "./pieces";
import type { Told } from "./told";
import { useHand } from "./use-hand";
import { HandSays, useHandSay } from "./voice";

export type Start = {
  readonly view: HandView; readonly told: Told; readonly part: SceneId; readonly picked: string | null;
  readonly svg: TwoWidths;
  /** The page's own address; its forms go to `do` beneath it. */
  readonly page: string;
  /** At the desk, or the couple's own. */
  readonly side: "couple" | "desk";
  /** What the last deed came to. */
  readonly said: string | null;
  readonly errors: readonly FieldError[]; readonly typed: Readonly<Record<string, string>>;
  /** The plan was changed elsewhere before a deed came in: that deed, to be done on what stands now. */
  readonly stale: Readonly<Record<string, string>> | null;
};

const weights = ({ musts, shoulds }: Told, say: HandVoice): string =>
  say("{musts} and {shoulds}", { musts: musts === 0 ? say("nothing that must change") : say("{n} that must change", { n: musts }), shoulds: shoulds === 0 ? say("nothing that should") : say("{n} that should", { n: shoulds }) });

/** A layout under the hand. Every deed is a plain form; with scripts they are done on the spot, and pieces are moved on the drawing itself. */
export function Adjust(start: Start) {
  // The desk works in English whatever its venue speaks to couples.
  const say = start.side === "desk" ? handVoice("en-GB") : handVoiceOf(start.view.venue.locale);
  return <HandSays.Provider value={say}><UnderHand {...start} /></HandSays.Provider>;
}

function UnderHand(start: Start) {
  const say = useHandSay(), page = useSay();
  const form = useRef<HTMLDivElement>(null);
  const hand = useHand(start);
  const { view, told, part, picked, errors, typed, stale, said, live } = hand;
  const [changes, setChanges] = useState(false);
  const scene = sceneIn(view, part) ?? view.layout.scenes[0];
  if (!scene) return null;
  const action = `${start.page}/do`;
  const hrefs: Hrefs = {
    part: (id) => `${start.page}?part=${id}`,
    piece: (id) => `${start.page}?part=${scene.id}&piece=${encodeURIComponent(id)}#piece-head`,
  };
  const item = scene.items.find((i) => i.id === picked);
  const here = { scene: scene.id, ...(picked ? { piece: picked } : {}) };
  const plan: PlanUnderHand = { view, scene, picked, changes, svg: start.svg, layout: hand.layout, drawn: hand.drawn };
  const choose = live ? (id: string | null): void => { hand.pick(id); } : undefined;
  const take = start.side === "desk" ? (view.sent === undefined ? "Keep it as their layout" : `Make it revision ${view.sent + 1}`) : say("Keep this as our layout");
  return (
    <div ref={form} className="hand" onSubmit={hand.onSubmit}>
      <nav className="scenes-of" aria-label={say("Parts of the day")}>
        {view.layout.scenes.map((s) => <a key={s.id} href={hrefs.part(s.id)} aria-current={s.id === scene.id ? "true" : undefined}>{s.title}</a>)}
      </nav>
      {stale && (
        <section className="stale" role="alert" aria-labelledby="stale-head">
          <h2 id="stale-head">{say("This plan was changed elsewhere meanwhile")}</h2>
          <p className="mt-2">{say("Your last deed was not done: it was meant for an older plan. Below is the plan as it stands now.")}</p>
          <form method="post" action={action} className="mt-3">
            {Object.entries(stale).filter(([name]) => name !== "seen").map(([name, value]) => <input key={name} type="hidden" name={name} value={value} />)}
            <input type="hidden" name="seen" value={view.seen} />
            <button className="btn" type="submit">{say("Do it on this plan")}</button> <a href={hrefs.part(scene.id)}>{say("Leave it as it is")}</a>
          </form>
        </section>
      )}
      <div className="hand-grid">
        <div className="hand-sheet">
          <HandPlan {...plan} hand={hand} onChanges={setChanges} />
          <p className="hand-sum small"><b>{told.places > 0 ? say("{n} places", { n: told.places }) : say("Guests stand")}.</b> <span>{say("The checks that were made found {weights} in the whole day.", { weights: weights(told, say) })}</span></p>
          {/* There before it is filled, and never takes the focus. */}
          <p className="hand-said" role="status" aria-live="polite">{said ?? ""}</p>
          <Deeds view={view} action={action} hidden={here} />
        </div>
        <div className="hand-rail">
          <ChoosePiece view={view} scene={scene} picked={picked} page={start.page} onPick={choose} />
          {item ? <PieceForm view={view} scene={scene} item={item} action={action} errors={errors} typed={typed} /> : <p className="small sec mt-3">{say(live ? "Choose a piece here or on the plan; then drag it, move it with the arrow keys, or type where it stands." : "Choose a piece; then say where it stands.")}</p>}
          <details className="act hand-more" open={errors.some((e) => e.field === "what" || (e.field === "room" && !item))}><summary>{say("Bring something in")}</summary><AddForm view={view} scene={scene} action={action} errors={errors} typed={typed} /></details>
          <form method="post" action={action} className="hand-take">
            <input type="hidden" name="seen" value={view.seen} />
            <input type="hidden" name="act" value="take" />
            <button className="btn btn-go" type="submit">{view.taken && start.side === "couple" ? say("Go on with it") : take}</button>
            <p className="note sec mt-2">{view.taken ? say("It stands as it was kept last.") : start.side === "desk" && view.sent !== undefined ? "The couple get a mail that names the new revision." : say("Your changes are kept as you make them; they count once you press this.")}</p>
          </form>
          <Caution say={page} />
        </div>
        <div className="hand-found"><FoundHere told={told} title={scene.title} /></div>
      </div>
      <PieceList view={view} scene={scene} picked={picked} hrefs={hrefs} onPick={choose} />
      <Follows view={view} scene={scene} told={told} hrefs={hrefs} />
    </div>
  );
}
