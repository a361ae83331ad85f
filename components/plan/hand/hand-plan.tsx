"use client";
import { useEffect, useMemo, useRef, useState, type KeyboardEvent } from "react";
import { nameOf, runOf, type HandView } from "@/lib/hand";
import type { Item, Layout, Scene } from "@/lib/layout";
import type { TwoWidths } from "../markup";
import { PaintedBoth } from "../painted";
import type { HandStage, Spot } from "./hand-stage";
import { HandTools } from "./hand-tools";
import { stepped } from "./marks";
import { byRoom, staysPut } from "./pieces";
import { TriedHere } from "./tried";
import { useHandSay } from "./voice";
import type { Drawn, Hand } from "./use-hand";

export type PlanUnderHand = {
  readonly view: HandView; readonly scene: Scene; readonly picked: string | null; readonly changes: boolean; readonly svg: TwoWidths;
  readonly layout: Layout; readonly drawn: Drawn | null;
};
type Props = PlanUnderHand & { readonly hand: Hand; readonly onChanges: (on: boolean) => void };

/** Steps of the arrow keys, mm: round figures of either system. */
const STEPS = { metric: [10, 50, 250], imperial: [25, 76, 305] } as const;
const STEP_WORDS = { metric: ["1 cm", "5 cm", "25 cm"], imperial: ["1″", "3″", "1′"] } as const;
/** A piece moved by keys is kept once they rest for so long. */
const REST_MS = 700;

const WAYS: Readonly<Record<string, readonly [number, number]>> = { ArrowLeft: [-1, 0], ArrowRight: [1, 0], ArrowUp: [0, -1], ArrowDown: [0, 1] };

/** The plan in its double frame: painted by the server until scripts run, then under the hand. */
export function HandPlan({ view, scene, picked, changes, svg, layout, drawn, hand, onChanges }: Props) {
  const host = useRef<HTMLDivElement>(null);
  const stage = useRef<HandStage | null>(null);
  const pending = useRef<{ spot: Spot | null; timer: ReturnType<typeof setTimeout> | undefined }>({ spot: null, timer: undefined });
  const [painted, setPainted] = useState<Drawn | null>(null);
  const ready = painted !== null;
  const [near, setNear] = useState(1);
  const [step, setStep] = useState(1);
  const [aim, setAim] = useState(false);
  const { live, draw } = hand;
  const items = layout.scenes.find((s) => s.id === scene.id)?.items ?? scene.items;
  const item = items.find((i) => i.id === picked) ?? null;
  const held = item !== null && view.held.includes(item.id), fixed = item !== null && staysPut(view, item);
  const mates = useMemo(() => (item ? runOf({ items }, item).slice(1) : []), [items, item]);
  const steps = STEPS[view.venue.lengths];

  const ticked = (name: string): boolean => host.current?.closest(".hand")?.querySelector<HTMLInputElement>(`input[name="${name}"]`)?.checked === true;
  const place = (spot: Spot): void => {
    const i = item;
    if (!i) return;
    const only = ticked("only"), run = ticked("run") && mates.length > 0;
    const turned = spot.angle !== i.angle && spot.room === i.room && spot.at[0] === i.at[0] && spot.at[1] === i.at[1];
    const on = { scene: scene.id, piece: i.id, ...(only ? { only } : {}), ...(run ? { run } : {}) };
    hand.act(turned ? { do: "turn", ...on, angle: spot.angle } : { do: "place", ...on, room: spot.room, at: spot.at, ...(spot.angle === i.angle ? {} : { angle: spot.angle }) });
  };

  // What the stage calls back with is always the newest.
  const now = useRef({ hand, item, scene, place });
  useEffect(() => { now.current = { hand, item, scene, place }; });

  useEffect(() => {
    const at = host.current;
    if (!live || !at) return;
    at.hidden = false;
    draw(Math.max(240, at.clientWidth), changes);
  }, [live, draw, changes]);

  useEffect(() => {
    const at = host.current;
    if (!at || !drawn) return;
    let gone = false;
    const show = async (): Promise<void> => {
      const made = await import("./hand-stage");
      if (gone) return;
      stage.current ??= made.makeHandStage(at, {
        pick: (id) => now.current.hand.pick(id),
        hover: (spot) => {
          const { hand: h, item: i, scene: s } = now.current;
          h.attempt(spot && i ? { do: "place", scene: s.id, piece: i.id, room: spot.room, at: spot.at, angle: spot.angle, run: ticked("run") } : null);
        },
        drop: (spot) => { setAim(false); now.current.place(spot); },
      });
      // What was let go of stays where it was put until the plan itself shows it there.
      if (!(await stage.current.show(drawn.drawing)) || gone) return;
      setPainted(drawn);
    };
    void show();
    return () => { gone = true; };
  }, [drawn]);
  useEffect(() => () => { stage.current?.remove(); stage.current = null; }, []);
  useEffect(() => {
    if (!painted) return;
    const there = painted.layout.scenes.find((s) => s.id === scene.id) ?? scene, on = there.items.find((i) => i.id === picked) ?? null;
    const mates = on ? runOf(there, on).slice(1) : [];
    stage.current?.world({ venue: view.venue, scene: there, drawing: painted.drawing, picked: on, mates: () => (ticked("run") ? mates : []), held, fixed });
  }, [painted, view.venue, scene, picked, held, fixed]);
  useEffect(() => { stage.current?.aim(aim); }, [aim]);

  const settle = (): void => {
    const { spot, timer } = pending.current;
    clearTimeout(timer);
    pending.current = { spot: null, timer: undefined };
    if (spot) place(spot);
  };
  /** Shows the piece elsewhere at once; it is kept when the keys rest. */
  const hold = (i: Item, change: (spot: Spot) => Spot): void => {
    const was = pending.current.spot ?? { room: i.room, at: i.at, angle: i.angle };
    const spot = change(was);
    clearTimeout(pending.current.timer);
    pending.current = { spot, timer: setTimeout(settle, REST_MS) };
    stage.current?.hold(spot);
    hand.attempt({ do: "place", scene: scene.id, piece: i.id, room: spot.room, at: spot.at, angle: spot.angle, run: ticked("run") });
  };
  const letBe = (): void => { clearTimeout(pending.current.timer); pending.current = { spot: null, timer: undefined }; stage.current?.hold(null); hand.attempt(null); };
  const movable = item !== null && !held && !fixed;
  const next = (by: number): void => {
    const all = byRoom(scene).flatMap((r) => r.items), k = all.findIndex((i) => i.id === picked);
    settle();
    hand.pick(all[(k + by + (k < 0 && by < 0 ? 1 : 0) + all.length) % all.length]?.id ?? null);
  };
  const zoom = (by: number): void => setNear(stage.current?.zoom(by) ?? 1);

  const onKeyDown = (e: KeyboardEvent): void => {
    const way = WAYS[e.key];
    if (way && !item) { if (near > 1.001) { e.preventDefault(); stage.current?.move(way[0] * 0.2, way[1] * 0.2); } return; }
    if (way && movable) {
      e.preventDefault();
      const mm = (steps[step] ?? 50) * (e.shiftKey ? 5 : 1), fine = e.altKey ? (steps[0] ?? 10) : mm;
      hold(item, (s) => ({ ...s, at: stepped(view.venue, { ...item, ...s }, [way[0] * fine, way[1] * fine]) }));
      return;
    }
    switch (e.key) {
      case "r": case "R": if (movable) { e.preventDefault(); hold(item, (s) => ({ ...s, angle: (s.angle + (e.shiftKey ? 15 : 90)) % 360 })); } return;
      case "Enter": settle(); return;
      case "Escape": if (aim) setAim(false); else if (pending.current.spot) letBe(); else hand.pick(null); return;
      case "PageDown": e.preventDefault(); next(1); return;
      case "PageUp": e.preventDefault(); next(-1); return;
      case "+": case "=": zoom(1.5); return;
      case "-": zoom(1 / 1.5); return;
      default: return;
    }
  };

  const say = useHandSay(), name = item ? nameOf(item) : null;
  return (
    <figure className="drawing hand-plan" id="hand-plan">
      <div>
        {!ready && <PaintedBoth svg={svg} />}
        <div
          className="stage hand-stage" ref={host} hidden role={ready ? "group" : undefined} tabIndex={ready ? 0 : undefined} onKeyDown={onKeyDown} onBlur={settle}
          aria-label={ready ? [say("{part}, drawn.", { part: scene.title }), ...(name ? [say("{name} is chosen.", { name })] : [])].join(" ") : undefined} aria-describedby={ready ? "hand-keys" : undefined}
        />
        <figcaption>
          <span>{scene.title}<TriedHere trying={hand.trying} /></span>
        </figcaption>
        {ready && (
          <HandTools
            moves={movable ? name : null} step={step} steps={STEP_WORDS[view.venue.lengths]} near={near} aiming={aim} changes={changes}
            onStep={setStep} onAim={setAim} onZoom={zoom} onChanges={onChanges}
            onWhole={() => { stage.current?.whole(); setNear(1); }} onPan={(right, down) => stage.current?.move(right, down)}
            onTurn={() => { if (item) hold(item, (s) => ({ ...s, angle: (s.angle + 90) % 360 })); }}
            onNudge={(x, y) => { const mm = steps[step] ?? 50; if (item) hold(item, (s) => ({ ...s, at: stepped(view.venue, { ...item, ...s }, [x * mm, y * mm]) })); }}
          />
        )}
        <p className="note sec hand-keys" id="hand-keys" hidden={!ready}>{say("Keys on the plan: Page Down and Page Up choose a piece, the arrows move it (Shift further, Alt finer), R turns it, Escape lets be.")}</p>
      </div>
    </figure>
  );
}
