"use client";
import { useSyncExternalStore } from "react";
import { useHandSay } from "./voice";

export type Tried = { readonly musts: number; readonly shoulds: number; readonly first: string | null };
/** What the check says of where a piece is held at this moment. It changes many times a second: who shows it listens, and nothing else of the page is made anew. */
export type Trying = { readonly now: () => Tried | null; readonly tell: (tried: Tried | null) => void; readonly listen: (hear: () => void) => () => void };

export function makeTrying(): Trying {
  let tried: Tried | null = null;
  const hearers = new Set<() => void>();
  const same = (a: Tried | null, b: Tried | null): boolean => a?.musts === b?.musts && a?.shoulds === b?.shoulds && a?.first === b?.first;
  return {
    now: () => tried,
    tell: (next) => { if (same(tried, next)) return; tried = next; for (const hear of hearers) hear(); },
    listen: (hear) => { hearers.add(hear); return () => { hearers.delete(hear); }; },
  };
}

/** The check's word on the spot under the finger, beside the plan's name. */
export function TriedHere({ trying }: { readonly trying: Trying }) {
  const say = useHandSay();
  const tried = useSyncExternalStore(trying.listen, trying.now, () => null);
  if (!tried) return null;
  return <span className="hand-tried">: {say("here {musts}, {shoulds}", { musts: tried.musts === 0 ? say("nothing that must change") : say("{n} that must change", { n: tried.musts }), shoulds: say("{n} that should", { n: tried.shoulds }) })}{tried.first ? `. ${tried.first}` : ""}</span>;
}
