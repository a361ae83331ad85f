"use client";
import { useEffect, useRef, useState } from "react";
import type { FromWorker, LivePlan, ToWorker } from "../form/live/messages";
import { isFacts } from "../form/live/messages";
import { useSay } from "../words/speaking";
import { PlanView, type PlanSource } from "./plan-view";

type Standing = { readonly state: "here" | "working" | "none"; readonly done: number; readonly of: number };
const isStanding = (x: unknown): x is Standing => typeof x === "object" && x !== null && "state" in x && "done" in x && "of" in x;

const ASK_EVERY_MS = 900;

async function read<T>(address: string, is: (x: unknown) => x is T): Promise<T | null> {
  const said: unknown = await fetch(address).then((a) => (a.ok ? a.json() : null)).catch(() => null);
  return is(said) ? said : null;
}

/** While the server works the layouts out: how far it is, and the first way that the browser's own engine finds meanwhile. */
export function Arranging() {
  const say = useSay();
  const at = useRef<HTMLDivElement>(null);
  const [standing, setStanding] = useState<Standing | null>(null);
  const [source, setSource] = useState<PlanSource | null>(null);
  useEffect(() => {
    let timer: ReturnType<typeof setTimeout> | undefined;
    let gone = false, worker: Worker | null = null;
    const look = async (): Promise<void> => {
      const now = await read("/api/arranging.json", isStanding);
      if (gone) return;
      if (now) setStanding(now);
      if (now && now.state !== "working") { location.replace("/request/layout"); return; }
      timer = setTimeout(() => void look(), ASK_EVERY_MS);
    };
    const draw = async (): Promise<void> => {
      const facts = await read("/api/answers.json", isFacts);
      if (gone || !facts) return;
      worker = new Worker(new URL("./engine.worker.ts", import.meta.url), { type: "module" });
      worker.addEventListener("message", ({ data }: MessageEvent<FromWorker>) => { if (data.kind === "effect" && data.plan) setSource(given(data.plan)); });
      const ask: readonly ToWorker[] = [{ kind: "facts", facts }, { kind: "draw", ask: 1, width: Math.min(760, at.current?.clientWidth ?? 560) }];
      for (const one of ask) worker.postMessage(one);
    };
    timer = setTimeout(() => void look(), ASK_EVERY_MS);
    void draw();
    return () => { gone = true; clearTimeout(timer); worker?.terminate(); };
  }, []);
  const of = standing?.of ?? 0;
  return (
    <div ref={at} className="arranging">
      <p role="status" className="small sec">{of > 0 && standing ? say("Looking at way {way}, of {of} at the most.", { way: standing.done + 1, of }) : say("Beginning.")}</p>
      <progress aria-label={say("How far the layouts are worked out")} max={of > 0 ? of : undefined} value={of > 0 ? standing?.done : undefined} />
      {source && <div className="mt-5"><PlanView name={say("First way found")} source={source} svg={undefined} quiet caption={say("The first way found in your browser meanwhile. What you choose from is worked out by the venue’s own engine.")} /></div>}
    </div>
  );
}

const given = (plan: LivePlan): PlanSource => ({ kind: "given", ...plan });
