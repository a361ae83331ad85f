"use client";
import { useEffect, useRef, useState, type ReactNode } from "react";
import type { Drawing } from "@/lib/drawing";
import type { TwoWidths } from "./markup";
import { PaintedBoth } from "./painted";
import { useSay } from "../words/speaking";
import type { PieceName, Stage } from "./stage";

/** Where the marks come from: fetched for a layout that is saved, or handed over as they are worked out. */
export type PlanSource =
  | { readonly kind: "saved"; readonly query: string }
  | { readonly kind: "given"; readonly drawing: Drawing; readonly idPrefix: string };
type Props = { readonly name: string; readonly source: PlanSource; readonly svg: TwoWidths | undefined; readonly caption?: ReactNode; readonly aside?: ReactNode; /** Without the row of tools: pieces are read by a tap. */ readonly quiet?: boolean };

const isDrawn = (x: unknown): x is { readonly drawing: Drawing; readonly idPrefix: string } => typeof x === "object" && x !== null && "drawing" in x && "idPrefix" in x;

async function fetched(query: string, width: number, layers: string): Promise<{ readonly drawing: Drawing; readonly idPrefix: string } | null> {
  const answer = await fetch(`/api/plan.json?${query}&width=${width}${layers}`).catch(() => null);
  const said: unknown = answer?.ok ? await answer.json().catch(() => null) : null;
  return isDrawn(said) ? said : null;
}

/**
 * A plan in its double frame. It comes painted by the server; with scripts it is painted anew in the page, from the same marks,
 * and can then be looked at closely, read piece by piece, and shown with its ways out and dimensions.
 */
export function PlanView({ name, source, svg, caption, aside, quiet = false }: Props) {
  const say = useSay();
  const host = useRef<HTMLDivElement>(null);
  const stage = useRef<Stage | null>(null);
  const [ready, setReady] = useState(false);
  const [layers, setLayers] = useState({ ways: false, dimensions: false });
  const [pieces, setPieces] = useState<readonly PieceName[]>([]);
  const [picked, setPicked] = useState("");
  const [near, setNear] = useState(1);
  const query = source.kind === "saved" ? source.query : null;
  const given = source.kind === "given" ? source : null;
  const painted = svg !== undefined;

  useEffect(() => {
    const at = host.current;
    if (!at) return;
    let gone = false;
    const show = async (): Promise<void> => {
      // Shown while still empty: only then has it a width to draw for. As high as what comes, where nothing is painted yet.
      at.hidden = false;
      if (given && !stage.current && !painted) at.style.aspectRatio = `${given.drawing.width} / ${given.drawing.height}`;
      const want = `${layers.ways ? "&ways" : ""}${layers.dimensions ? "&dimensions" : ""}`;
      const [made, drawn] = await Promise.all([
        import("./stage"), query === null ? given : fetched(query, Math.max(240, at.clientWidth), want),
      ]);
      if (gone || !drawn) return;
      stage.current ??= made.makeStage(at, (id) => setPicked(id ?? ""));
      const named = await stage.current.show(drawn.drawing, drawn.idPrefix);
      if (gone || !named) return;
      at.style.aspectRatio = "";
      setPieces(named);
      setPicked("");
      setNear(1);
      setReady(true);
    };
    void show();
    return () => { gone = true; };
  }, [query, given, painted, layers.ways, layers.dimensions]);
  useEffect(() => () => { stage.current?.remove(); stage.current = null; }, []);
  useEffect(() => { stage.current?.pick(picked === "" ? null : picked); }, [picked]);

  const zoom = (by: number): void => setNear(stage.current?.zoom(by) ?? 1);
  const box = (key: "ways" | "dimensions", text: string) => (
    <label><input type="checkbox" checked={layers[key]} onChange={(e) => setLayers({ ...layers, [key]: e.target.checked })} /> {text}</label>
  );
  const label = pieces.find((p) => p.id === picked)?.label;
  return (
    <figure className="drawing plan-view">
      <div>
        {!ready && svg && <PaintedBoth svg={svg} />}
        <div
          className="stage" ref={host} hidden role={ready ? "group" : undefined} aria-label={ready ? say("{name}, drawn. Arrow keys move it when it is enlarged.", { name }) : undefined} tabIndex={ready ? 0 : undefined}
          onKeyDown={(e) => {
            const way = { ArrowLeft: [-0.2, 0], ArrowRight: [0.2, 0], ArrowUp: [0, -0.2], ArrowDown: [0, 0.2] }[e.key];
            if (way && near > 1.001) { e.preventDefault(); stage.current?.move(way[0] ?? 0, way[1] ?? 0); }
            if (e.key === "+" || e.key === "=") zoom(1.5);
            if (e.key === "-") zoom(1 / 1.5);
            if (e.key === "Escape") setPicked("");
          }}
        />
        <figcaption><span>{caption}</span>{aside}</figcaption>
        {ready && !quiet && (
          <div className="plan-tools" role="group" aria-label={say("{name}: how it is shown", { name })}>
            <span className="plan-zoom">
              <button type="button" onClick={() => zoom(1.5)} disabled={near > 5.9}>{say("Larger")}</button>
              <button type="button" onClick={() => zoom(1 / 1.5)} disabled={near < 1.01}>{say("Smaller")}</button>
              {near > 1.01 && <button type="button" onClick={() => { stage.current?.whole(); setNear(1); }}>{say("Whole")}</button>}
              {near > 1.01 && ([["Left", -0.25, 0], ["Right", 0.25, 0], ["Up", 0, -0.25], ["Down", 0, 0.25]] as const).map(([text, x, y]) => (
                <button type="button" key={text} onClick={() => stage.current?.move(x, y)}>{say(text)}</button>
              ))}
            </span>
            {query !== null && <span className="plan-layers">{box("ways", say("Ways out"))}{box("dimensions", say("Dimensions"))}</span>}
            {pieces.length > 0 && (
              <label className="plan-pieces">{say("Read a piece")}
                <select value={picked} onChange={(e) => setPicked(e.target.value)}>
                  <option value="">{say("Tap one, or choose")}</option>
                  {pieces.map((p) => <option key={p.id} value={p.id}>{p.label}</option>)}
                </select>
              </label>
            )}
          </div>
        )}
        <p className="plan-said" role="status">{label ?? ""}</p>
      </div>
    </figure>
  );
}
