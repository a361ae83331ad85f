"use client";
import { useCallback, useEffect, useRef, useState, type FormEvent } from "react";
import type { Drawing } from "@/lib/drawing";
import { applyEdit, nameOf, sayTurn, sayWalls, type Edit, type HandView } from "@/lib/hand";
import type { Item, Layout, SceneId } from "@/lib/layout";
import type { FieldError } from "../../ui/error-of";
import type { Start } from "./adjust";
import type { FromHand, ToHand } from "./messages";
import type { Told } from "./told";
import type { HandPhrase, HandVoice } from "@/lib/words/hand";
import { makeTrying, type Trying } from "./tried";
import { useHandSay } from "./voice";

type Reply =
  | { readonly ok: true; readonly view: HandView; readonly did: string; readonly piece: string }
  | { readonly ok: false; readonly code: string; readonly errors: readonly FieldError[]; readonly view?: HandView };
const isReply = (x: unknown): x is Reply => typeof x === "object" && x !== null && "ok" in x;

export type Drawn = { readonly drawing: Drawing; readonly layout: Layout };
export type Hand = {
  readonly view: HandView; readonly told: Told; readonly part: SceneId; readonly picked: string | null;
  readonly errors: readonly FieldError[]; readonly typed: Readonly<Record<string, string>>; readonly stale: Readonly<Record<string, string>> | null;
  readonly said: string | null;
  /** Scripts run: the plan is under the hand. */
  readonly live: boolean;
  /** As it stands on the screen, before the server has answered. */
  readonly layout: Layout;
  /** What is drawn, and the layout that it is of: a moment behind the other. */
  readonly drawn: Drawn | null;
  /** What the check says of where a piece is held at this moment. */
  readonly trying: Trying;
  readonly pick: (id: string | null) => void;
  /** Does a deed on the spot, and has it kept. */
  readonly act: (edit: Edit) => void;
  readonly attempt: (edit: Edit | null) => void;
  readonly draw: (width: number, changes: boolean) => void;
  readonly onSubmit: (e: FormEvent) => void;
};

const sumUp = (told: Told, say: HandVoice): string =>
  `${told.musts === 0 ? say("Nothing that must change") : say("{n} that must change", { n: told.musts })}, ${say("{n} that should", { n: told.shoulds })}, ${say("{n} places", { n: told.places })}.`;
const SAID: Readonly<Record<string, HandPhrase>> = { undo: "Undone.", redo: "Done again.", again: "Back to the start.", "mend-left": "No way was found to put all of it right round what is held." };

/** What the page knows and does once scripts run. The server's word is always what stands; the screen runs ahead of it. */
export function useHand(start: Start): Hand {
  const say = useHandSay();
  const [view, setView] = useState(start.view);
  const [layout, setLayout] = useState(start.view.layout);
  const [told, setTold] = useState(start.told);
  const [picked, setPicked] = useState(start.picked);
  const [errors, setErrors] = useState(start.errors);
  const [typed, setTyped] = useState(start.typed);
  const [stale, setStale] = useState(start.stale);
  const [said, setSaid] = useState(start.said);
  const [drawn, setDrawn] = useState<Drawn | null>(null);
  const [trying] = useState(makeTrying);
  const [live, setLive] = useState(false);
  const worker = useRef<Worker | null>(null);
  const asks = useRef({ shown: 0, of: start.view.layout, tried: 0, busy: false, wanted: null as Edit | null });
  const how = useRef({ width: 0, changes: false });
  /** What is to be said once the check has answered. */
  const saying = useRef<string | null>(null);
  const now = useRef({ view, layout, queue: Promise.resolve() });
  const { part, page } = start;

  const show = useCallback((next: Layout, held: readonly string[], settle: boolean): void => {
    const ask = ++asks.current.shown, { width, changes } = how.current;
    asks.current.of = next;
    if (width > 0) worker.current?.postMessage({ kind: "show", ask, layout: next, held, scene: part, width, changes, settle } satisfies ToHand);
  }, [part]);

  const attempt = useCallback((edit: Edit | null): void => {
    const a = asks.current;
    if (edit === null) { a.wanted = null; a.tried++; trying.tell(null); return; }
    // One at a time; of those that come meanwhile the last.
    if (a.busy) { a.wanted = edit; return; }
    a.busy = true;
    worker.current?.postMessage({ kind: "try", ask: ++a.tried, edit } satisfies ToHand);
  }, [trying]);

  useEffect(() => {
    const made = new Worker(new URL("./hand.worker.ts", import.meta.url), { type: "module" });
    const a = asks.current;
    worker.current = made;
    made.addEventListener("message", ({ data }: MessageEvent<FromHand>) => {
      if (data.kind === "ready") { setLive(true); return; }
      if (data.kind === "tried") {
        a.busy = false;
        if (data.ask === a.tried) trying.tell(data);
        const next = a.wanted;
        a.wanted = null;
        if (next) attempt(next);
        return;
      }
      if (data.ask !== a.shown) return;
      setDrawn({ drawing: data.drawing, layout: a.of });
      setTold(data.told);
      if (saying.current !== null) { setSaid(`${saying.current} ${sumUp(data.told, say)}`); saying.current = null; }
    });
    const { venue, brief, was } = start.view;
    made.postMessage({ kind: "about", venue, brief, was } satisfies ToHand);
    return () => { made.terminate(); worker.current = null; };
  }, [start.view, attempt, trying, say]);

  const takeOver = useCallback((next: HandView, settled: boolean): void => {
    const shown = settled && sameStands(next.layout, now.current.layout);
    now.current.view = next;
    now.current.layout = next.layout;
    setView(next);
    setLayout(next.layout);
    // What the screen ran ahead to is what stands: it is drawn already.
    if (!shown) show(next.layout, next.held, !settled);
  }, [show]);

  const send = useCallback((values: Readonly<Record<string, string>>, ahead: boolean): void => {
    now.current.queue = now.current.queue.then(async () => {
      const body = new URLSearchParams({ ...values, seen: now.current.view.seen });
      const answer = await fetch(`${page}/do`, { method: "POST", headers: { Accept: "application/json" }, body }).catch(() => null);
      const reply: unknown = await answer?.json().catch(() => null);
      if (!isReply(reply)) { setSaid(say("Not kept: there is no connection. Do it once more in a moment.")); takeOver(now.current.view, true); return; }
      const before = now.current.layout;
      if (reply.ok) {
        setErrors([]); setTyped({}); setStale(null);
        const known = SAID[reply.did];
        if (!ahead) saying.current = known ? say(known) : `${reply.view.undo ?? say("Done")}.`;
        takeOver(reply.view, true);
        // A deed that moves nothing has nothing drawn anew.
        if (saying.current !== null && !ahead && sameStands(reply.view.layout, before)) { setSaid(saying.current); saying.current = null; }
        if (values["act"] === "add") setPicked(reply.piece);
        // Its form is gone with the piece: the focus goes to where another is chosen.
        if (values["act"] === "remove") { setPicked(null); document.getElementById("choose")?.focus(); }
        return;
      }
      if (reply.view) takeOver(reply.view, true); else location.reload();
      setErrors(reply.errors);
      setTyped(values);
      if (reply.code === "stale") setStale(values);
      setSaid(reply.errors.map((e) => e.message).join(" ") || say("This plan was changed elsewhere meanwhile. What you did last was not done."));
    });
  }, [page, say, takeOver]);

  const act = useCallback((edit: Edit): void => {
    const { view: v, layout: l } = now.current;
    const next = applyEdit(v.venue, { layout: l, held: v.held }, edit);
    if (!next.ok) { setSaid(say("That cannot be done to this piece.")); show(l, v.held, false); return; }
    now.current.layout = next.value.layout;
    setLayout(next.value.layout);
    attempt(null);
    const piece = "piece" in edit ? find(next.value.layout, part, edit.piece) : undefined;
    const name = piece ? nameOf(piece) : "", told = piece && edit.do === "turn" ? say("{piece} turned to {angle}", { piece: name, angle: sayTurn(piece.angle) }) : name;
    saying.current = piece ? `${told}: ${sayWalls(v.venue, l.scenes.find((s) => s.id === part) ?? { drapes: [] }, piece)}.` : say("Done.");
    show(next.value.layout, next.value.held, true);
    send({ edit: JSON.stringify(edit), scene: part, piece: piece?.id ?? "" }, true);
  }, [attempt, part, say, send, show]);

  const draw = useCallback((width: number, changes: boolean): void => {
    how.current = { width, changes };
    show(now.current.layout, now.current.view.held, false);
  }, [show]);

  const onSubmit = useCallback((e: FormEvent): void => {
    const form = e.target;
    if (!(form instanceof HTMLFormElement) || !form.action.endsWith(`${page}/do`)) return;
    const by = e.nativeEvent instanceof SubmitEvent ? e.nativeEvent.submitter : null;
    const values: Record<string, string> = {};
    for (const [name, value] of new FormData(form)) if (typeof value === "string") values[name] = value;
    if (by instanceof HTMLButtonElement && by.name) values[by.name] = by.value;
    if (values["act"] === "take") return;
    e.preventDefault();
    if (by?.getAttribute("aria-disabled") === "true") return;
    if (values["act"] === "mend") setSaid(say("Being put right…"));
    send(values, false);
  }, [page, say, send]);

  const pick = useCallback((id: string | null): void => { setPicked(id); setErrors([]); setTyped({}); }, []);
  return { view, told, part, picked, errors, typed, stale, said, live, layout, drawn, trying, pick, act, attempt, draw, onSubmit };
}

const sameStands = (a: Layout, b: Layout): boolean => JSON.stringify([a.scenes, a.wet?.scenes]) === JSON.stringify([b.scenes, b.wet?.scenes]);
const find = (layout: Layout, scene: SceneId, id: string): Item | undefined => layout.scenes.find((s) => s.id === scene)?.items.find((i) => i.id === id);
