"use client";
import { useEffect, useMemo, useRef, useState } from "react";
import type { StepId } from "@/lib/brief/draft";
import { Fees } from "../desk/fees";
import { Band, BandKey } from "../plan/band";
import { Caution } from "../plan/caution";
import type { TwoWidths } from "../plan/markup";
import { PlanView, type PlanSource } from "../plan/plan-view";
import { sayMoney } from "../ui/say";
import { useSay } from "../words/speaking";
import type { EffectView } from "./effect";
import type { Live } from "./live/follow";
import type { LivePlan } from "./live/messages";

type Props = {
  readonly step: StepId;
  readonly view: EffectView;
  /** The plan of the answers that are saved, and how the page asks for its marks. */
  readonly svg: TwoWidths | null;
  readonly query: string | null;
  /** The address of the layout in full. */
  readonly full: string | null;
  readonly working: boolean;
};
type Shown = { readonly view: EffectView; readonly plan: LivePlan | null; readonly ahead: boolean };

/**
 * What the answers so far do: a sentence, the plan, the measure of places. It comes as the server worked it out for what is
 * saved; with scripts it follows the answers as they are given.
 */
export function EffectPanel({ step, view: saved, svg, query, full, working }: Props) {
  const say = useSay();
  const at = useRef<HTMLElement>(null);
  const stop = useRef<() => void>(() => undefined);
  const [live, setLive] = useState<Shown | null>(null);
  const [state, setState] = useState<Live>({ kind: "still" });
  useEffect(() => {
    const form = at.current?.closest("form");
    if (!form) return;
    let gone = false;
    let leave = (): void => undefined;
    import("./live/follow").then(({ follow }) => {
      if (gone) return;
      const following = follow(form, {
        step, width: () => Math.max(240, (at.current?.clientWidth ?? 560) - 36),
        told: { state: setState, effect: ({ view, plan, done, ahead }) => setLive((was) => ({ view, ahead, plan: done ? plan : (was?.plan ?? null) })) },
      });
      leave = following.leave;
      stop.current = following.stop;
      if (working) following.ask();
    }).catch(() => undefined);
    return () => { gone = true; leave(); };
  }, [step, working]);

  const view = live?.view ?? saved;
  const plan = live?.plan ?? null;
  const source = useMemo<PlanSource | null>(() => (plan ? { kind: "given", ...plan } : query !== null ? { kind: "saved", query } : null), [plan, query]);
  const { seats, rows, gaps } = view;
  return (
    <section className="effect" id="effect" aria-labelledby="effect-head" ref={at}>
      <h2 id="effect-head" className="hidden-words">{say("What this does")}</h2>
      <p className="lead" aria-live="polite">{view.sentence}</p>
      {source && (plan || svg?.wide) && (
        <PlanView
          name={view.scene ?? say("Plan")} source={source} svg={svg ?? undefined} quiet
          caption={plan && live?.ahead ? say("{part}: one way to lay these answers, not saved yet.", { part: view.scene ?? say("Plan") }) : say("{part}: one way to lay your answers so far.", { part: view.scene ?? say("Plan") })}
          aside={plan || !full ? undefined : <a href={full}>{say("In words")}</a>}
        />
      )}
      <p className="live-state" role="status">
        {state.kind === "working" && <>{state.of > 0 ? say("Laying it out: way {way}, of {of} at the most.", { way: state.done + 1, of: state.of }) : say("Laying it out.")} <button type="button" className="leave" onClick={() => stop.current()}>{say("Stop")}</button></>}
        {state.kind === "stopped" && say("Stopped. What is drawn is what was there before; change an answer to go on.")}
        {state.kind === "still" && working && !live && <>{say("Your answers are still being laid out. The drawing stands here when you look again; anything typed since is best saved first.")} <a href={`/request/${step}#effect`}>{say("Look now")}</a></>}
      </p>
      {view.fees && (
        <details className="act fees-of">
          <summary>{view.fees.quote.total === 0 ? say("Nothing extra to pay, laid this way") : say("Extra to pay, laid this way: {money}", { money: sayMoney(view.fees.quote.total, { locale: view.fees.locale, currency: view.fees.quote.currency }) })}</summary>
          <div className="pb-4"><Fees {...view.fees} say={say} /></div>
        </details>
      )}
      {seats && (
        <div className="measure-of">
          <h3>{rows ? say("How many the rows seat") : say("How many the tables seat")}</h3>
          <Band id={step} seats={seats} guests={view.guests} say={say} />
          <BandKey
            id={step}
            comfort={<><b>{say("{n} in comfort.", { n: seats.comfort })}</b> {gaps.comfort}</>}
            most={seats.most > seats.comfort && <><b>{say("{n} at the most.", { n: seats.most })}</b> {gaps.most}</>}
            ceiling={<><b>{say("{n} is the ceiling:", { n: seats.ceiling })}</b> {seats.because}</>}
          />
          <p className="note sec mt-3">{rows ? say("Counted with the chairs alone, the standing furniture in its place. Carrying pieces out makes room, a dance floor or a buffet takes it; your layout shows what comes of it.") : say("Counted with the tables alone, the standing furniture in its place. Carrying pieces out makes room, a dance floor or a buffet takes it; your layout shows what comes of it.")}</p>
        </div>
      )}
      <Caution say={say} />
    </section>
  );
}
