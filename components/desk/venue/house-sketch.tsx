"use client";
import { useEffect, useState } from "react";
import { boxOf, middle, type Polygon } from "@/lib/geometry";
import type { Venue } from "@/lib/venue";
import { cornersField, outlinesTyped, shownLength } from "@/lib/venue/edit";
import { useCornerHand } from "./corner-hand";
import { putTyped, STEPS, typedIn } from "./form-typed";
import { CornerGrips, pathOf } from "./room-drawing";

type Props = { readonly venue: Venue; readonly form: string };
const WALL = 260;

/** The rooms of each level beside one another, as their corners are typed; every corner can be drawn. */
export function HouseSketch({ venue, form: id }: Props) {
  const [outlines, setOutlines] = useState<readonly Polygon[]>(venue.rooms.map((r) => r.outline));
  const [drawn, setDrawn] = useState(false);
  useEffect(() => {
    const form = document.getElementById(id);
    if (!(form instanceof HTMLFormElement)) return;
    const look = (): void => setOutlines(outlinesTyped(venue, typedIn(form)));
    const first = requestAnimationFrame(() => { look(); setDrawn(true); });
    form.addEventListener("input", look);
    return () => { cancelAnimationFrame(first); form.removeEventListener("input", look); };
  }, [id, venue]);
  const hand = useCornerHand({
    outlines, step: STEPS[venue.lengths],
    type: (room, outline) => putTyped(id, { [cornersField(room)]: outline.map(([x, y]) => `${shownLength(x, venue)}, ${shownLength(y, venue)}`).join("\n") }),
  });
  const levels = [...new Set(venue.rooms.map((r) => r.level))].sort((a, b) => a - b);
  return (
    <div className="room-sketch" {...hand}>
      {levels.map((level) => <Level key={level} venue={venue} outlines={outlines} level={level} named={levels.length > 1} grips={drawn} />)}
      {drawn && <p className="note sec mt-2">Draw any corner with the pointer or the arrow keys; it goes to the line of another corner where one is near. A small dot in a wall makes a corner there, Delete takes one away.</p>}
    </div>
  );
}

type LevelProps = { readonly venue: Venue; readonly outlines: readonly Polygon[]; readonly level: number; readonly named: boolean; readonly grips: boolean };
function Level({ venue, outlines, level, named, grips }: LevelProps) {
  const rooms = venue.rooms.map((room, i) => ({ room, i, outline: outlines[i] ?? room.outline })).filter(({ room }) => room.level === level);
  const box = boxOf(rooms.flatMap(({ outline }) => outline)), size = Math.max(box.maxX - box.minX, box.maxY - box.minY), pad = WALL + size * 0.04, u = size / 700;
  return (
    <figure className="house-level">
      {named && <figcaption className="small sec">Level {level}</figcaption>}
      <svg className="room-drawing" data-plan={rooms.map(({ i }) => i).join(" ")} viewBox={`${box.minX - pad} ${box.minY - pad} ${box.maxX - box.minX + 2 * pad} ${box.maxY - box.minY + 2 * pad}`} role="group" aria-label={`Plan of ${rooms.map(({ room }) => room.name).join(", ")}`}>
        {rooms.map(({ room, i, outline }) => <path key={i} className={room.outdoor ? "rd-clear" : "rd-mass"} d={pathOf(outline)} strokeWidth={room.outdoor ? 2 * u : WALL} strokeDasharray={room.outdoor ? `${8 * u} ${5 * u}` : undefined} />)}
        {rooms.map(({ i, outline }) => <path key={i} className="rd-floor" d={pathOf(outline)} />)}
        {rooms.map(({ room, i, outline }) => { const b = boxOf(outline), [x, y] = middle([b.minX, b.minY], [b.maxX, b.maxY]), tall = b.maxY - b.minY > 1.6 * (b.maxX - b.minX); return <text key={i} className="rd-words" fontSize={20 * u} textAnchor="middle" transform={`translate(${x} ${y})${tall ? " rotate(-90)" : ""}`}>{room.name}</text>; })}
        {grips && rooms.map(({ room, i, outline }) => <CornerGrips key={i} outline={outline} room={i} name={room.name} venue={venue} unit={u} />)}
      </svg>
    </figure>
  );
}
