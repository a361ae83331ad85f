"use client";
import { useEffect, useState } from "react";
import { boxOf, type Point } from "@/lib/geometry";
import type { Room, Venue } from "@/lib/venue";
import { roomTyped, shownLength } from "@/lib/venue/edit";
import { useCornerHand } from "./corner-hand";
import { putTyped, STEPS, typedIn } from "./form-typed";
import { RoomDrawing } from "./room-drawing";

type Props = { readonly venue: Venue; readonly room: Room; /** The form's id, whose fields the drawing follows. */ readonly form: string };

/** The room as it is being typed; its corners can be drawn, which types them. */
export function RoomSketch({ venue, room, form: id }: Props) {
  const [shown, setShown] = useState(room);
  const [drawn, setDrawn] = useState(false);
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
    const { minX, minY } = boxOf(outline);
    putTyped(id, {
      "floor.form": "corners", "floor.corners": outline.map(([x, y]) => `${shownLength(x - minX, venue)}, ${shownLength(y - minY, venue)}`).join("\n"),
      "floor.left": shownLength(minX, venue), "floor.top": shownLength(minY, venue),
    });
  }

  const hand = useCornerHand({ outlines: [shown.outline], step: STEPS[venue.lengths], type: (_, outline) => type(outline) });
  return (
    <div className="room-sketch" {...hand}>
      <RoomDrawing room={shown} venue={venue} grips={drawn ? 0 : undefined} />
      {drawn && <p className="note sec mt-2">The plan follows what is typed. Draw a corner with the pointer or the arrow keys; a small dot in a wall makes a corner there, Delete takes one away. The list of corners says the same.</p>}
    </div>
  );
}
