"use client";
import { useHandSay } from "./voice";

type Props = {
  /** The chosen piece, where it may be moved. */
  readonly moves: string | null;
  readonly step: number; readonly steps: readonly string[];
  readonly near: number; readonly aiming: boolean; readonly changes: boolean;
  readonly onStep: (k: number) => void;
  readonly onNudge: (right: number, down: number) => void;
  readonly onTurn: () => void;
  readonly onAim: (on: boolean) => void;
  readonly onZoom: (by: number) => void;
  readonly onWhole: () => void;
  readonly onPan: (right: number, down: number) => void;
  readonly onChanges: (on: boolean) => void;
};

const NUDGES = [["Left", -1, 0], ["Up", 0, -1], ["Down", 0, 1], ["Right", 1, 0]] as const;
const LOOKS = [["Look left", -0.25, 0], ["Look right", 0.25, 0], ["Look up", 0, -0.25], ["Look down", 0, 0.25]] as const;

/** What moves the chosen piece and the view, as words below the plan: no drag and no wheel is needed for any of it. */
export function HandTools({ moves, step, steps, near, aiming, changes, onStep, onNudge, onTurn, onAim, onZoom, onWhole, onPan, onChanges }: Props) {
  const say = useHandSay();
  return (
    <div className="plan-tools hand-tools" role="group" aria-label={say("How the plan is shown, and the chosen piece moved")}>
      {moves !== null && (
        <span className="plan-zoom">
          {NUDGES.map(([text, x, y]) => <button type="button" key={text} onClick={() => onNudge(x, y)}>{say(text)}<span className="hidden-words">{say(" by {step}: {name}", { step: steps[step] ?? "", name: moves })}</span></button>)}
          <label>{say("Step")} <select value={step} onChange={(e) => onStep(Number(e.target.value))}>{steps.map((t, i) => <option key={t} value={i}>{t}</option>)}</select></label>
          <button type="button" onClick={onTurn}>{say("Turn")}<span className="hidden-words">{say(" {name} by a quarter", { name: moves })}</span></button>
          <button type="button" aria-pressed={aiming} onClick={() => onAim(!aiming)}>{say(aiming ? "Now tap where it goes" : "Place by a tap")}</button>
        </span>
      )}
      <span className="plan-zoom">
        <button type="button" onClick={() => onZoom(1.5)} disabled={near > 5.9}>{say("Larger")}</button>
        <button type="button" onClick={() => onZoom(1 / 1.5)} disabled={near < 1.01}>{say("Smaller")}</button>
        {near > 1.01 && <button type="button" onClick={onWhole}>{say("Whole")}</button>}
        {near > 1.01 && LOOKS.map(([text, x, y]) => <button type="button" key={text} onClick={() => onPan(x, y)}>{say(text)}</button>)}
      </span>
      <span className="plan-layers"><label><input type="checkbox" checked={changes} onChange={(e) => onChanges(e.target.checked)} /> {say("Was and now")}</label></span>
    </div>
  );
}
