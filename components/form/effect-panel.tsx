"use client";
import { useEffect, useMemo, useRef, useState } from "react";
import type { StepId } from "@/lib/brief/draft";
import { Fees } from "../desk/fees";
import { Band, BandKey } from "../plan/band";
import { Caution } from "../plan/caution";
import type { TwoWidths } from "../plan/drawing";
import { PlanView, type PlanSource } from "../plan/plan-view";
import { sayMoney } from "../ui/say";
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
type Shown = { readonly view: EffectView; readonly plan: LivePlan | null };

/**
 * What the answers so far do: a sentence, the plan, the measure of places. It comes as the server worked it out for what is
 * saved; with scripts it follows the answers as they are given.
 */
export function EffectPanel({ step, view: saved, svg, query, full, working }: Props) {
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
        told: { state: setState, effect: (view, plan, done) => setLive((was) => ({ view, plan: done ? plan : (was?.plan ?? null) })) },
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
  const about = plan ? "for these answers, not saved yet" : "your answers so far";
  return (
    <section className="effect" id="effect" aria-labelledby="effect-head" ref={at}>
      <h2 id="effect-head" className="hidden-words">What this does</h2>
      <p className="lead" aria-live="polite">{view.sentence}</p>
      {source && (plan || svg?.wide) && (
        <PlanView
          name={view.scene ?? "Plan"} source={source} svg={svg ?? undefined} quiet caption={`${view.scene ?? "Plan"}: one way to lay ${about}.`}
          aside={plan || !full ? undefined : <a href={full}>In words</a>}
        />
      )}
      <p className="live-state" role="status">
        {state.kind === "working" && <>Laying it out{state.of > 0 ? `: way ${state.done + 1}, of ${state.of} at the most` : ""}. <button type="button" className="leave" onClick={() => stop.current()}>Stop</button></>}
        {state.kind === "stopped" && <>Stopped. What is drawn is what was there before; change an answer to go on.</>}
        {state.kind === "still" && working && !live && <>Your answers are still being laid out. The drawing stands here when you look again: <a href={`/request/${step}#effect`}>look now</a>. Anything typed since is best saved first.</>}
      </p>
      {view.fees && (
        <details className="act fees-of">
          <summary>Extra to pay, laid this way: {sayMoney(view.fees.quote.total, { locale: view.fees.locale, currency: view.fees.quote.currency })}</summary>
          <div className="pb-4"><Fees {...view.fees} /></div>
        </details>
      )}
      {seats && (
        <div className="measure-of">
          <h3>{rows ? "How many the rows seat" : "How many the tables seat"}</h3>
          <Band id={step} seats={seats} guests={view.guests} />
          <BandKey
            id={step}
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
