"use client";
import { useEffect, useRef, useState, type PointerEvent } from "react";
import { boxOf, type Point } from "@/lib/geometry";
import type { Room, Venue } from "@/lib/venue";
import { roomTyped, shownLength, type Typed } from "@/lib/venue/edit";
import { frameOf, RoomDrawing } from "./room-drawing";

type Props = { readonly venue: Venue; readonly room: Room; /** The form's id, whose fields the drawing follows. */ readonly form: string };
/** Corners are drawn in steps of this, mm. */
const STEP = 100;

function typedIn(form: HTMLFormElement): Typed {
  const data = new FormData(form), names = [...new Set(data.keys())];
  return Object.fromEntries(names.map((name) => { const all = data.getAll(name).filter((v): v is string => typeof v === "string"); return [name, all.length > 1 ? all : all[0]]; }));
}

/** The room as it is being typed; its corners can be drawn with the pointer, which types them. */
export function RoomSketch({ venue, room, form: id }: Props) {
  const [shown, setShown] = useState(room);
  const [drawn, setDrawn] = useState(false);
  const held = useRef<number | null>(null);
  const at = useRef<HTMLDivElement>(null);
  useEffect(() => {
    const form = document.getElementById(id);
    if (!(form instanceof HTMLFormElement)) return;
    const look = (): void => { try { setShown(roomTyped(venue, room, typedIn(form))); } catch { /* Half-typed: the last drawing stands. */ } };
    const first = requestAnimationFrame(() => { look(); setDrawn(true); });
    form.addEventListener("input", look);
    form.addEventListener("change", look);
    return () => { cancelAnimationFrame(first); form.removeEventListener("input", look); form.removeEventListener("change", look); };
  }, [id, venue, room]);

  /** Types the corners into the form, counted from the upper left of their box as everything in the room is. */
  function type(outline: readonly Point[]): void {
    const form = document.getElementById(id), { minX, minY } = boxOf(outline);
    if (!(form instanceof HTMLFormElement)) return;
    const put = (name: string, text: string): void => { const field = form.elements.namedItem(name); if (field instanceof HTMLInputElement || field instanceof HTMLTextAreaElement || field instanceof HTMLSelectElement) field.value = text; };
    put("floor.form", "corners");
    put("floor.corners", outline.map(([x, y]) => `${shownLength(x - minX, venue)}, ${shownLength(y - minY, venue)}`).join("\n"));
    put("floor.left", shownLength(minX, venue));
    put("floor.top", shownLength(minY, venue));
    form.dispatchEvent(new Event("input", { bubbles: true }));
  }

  function move(event: PointerEvent<HTMLDivElement>): void {
    const svg = at.current?.querySelector("svg"), corner = held.current;
    if (corner === null || !svg) return;
    const box = svg.getBoundingClientRect(), f = frameOf(shown.outline);
    const k = Math.max(f.width / box.width, f.height / box.height);
    const x = f.x + f.width / 2 + (event.clientX - box.left - box.width / 2) * k, y = f.y + f.height / 2 + (event.clientY - box.top - box.height / 2) * k;
    const spot: Point = [Math.round(x / STEP) * STEP, Math.round(y / STEP) * STEP];
    const was = shown.outline[corner];
    if (was && (was[0] !== spot[0] || was[1] !== spot[1])) type(shown.outline.map((p, i) => (i === corner ? spot : p)));
  }

  return (
    <div ref={at} className="room-sketch" onPointerDown={(event) => {
      const corner = event.target instanceof SVGElement ? event.target.dataset["corner"] : undefined;
      if (corner !== undefined) { held.current = Number(corner); event.currentTarget.setPointerCapture(event.pointerId); event.preventDefault(); }
    }} onPointerMove={move} onPointerUp={() => { held.current = null; }} onPointerCancel={() => { held.current = null; }}>
      <RoomDrawing room={shown} venue={venue} grips={drawn} />
      {drawn && <p className="note sec mt-2">The plan follows what is typed. A corner can also be drawn, in steps of 0.10 m; the list of corners says the same.</p>}
    </div>
  );
}
