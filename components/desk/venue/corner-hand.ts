"use client";
import { useRef, type KeyboardEvent, type PointerEvent } from "react";
import type { Point, Polygon } from "@/lib/geometry";

/** Nearer than this to another corner's line, a corner is put on it, mm: walls stand square to one another. */
const NEAR = 120;
type Held = { readonly room: number; readonly corner: number };
type Hands = { readonly outlines: readonly Polygon[]; /** Corners are drawn in steps of this, mm. */ readonly step: number; /** Types a room's corners into the form. */ readonly type: (room: number, outline: Polygon) => void };
export type CornerHand = {
  readonly onPointerDown: (event: PointerEvent<HTMLElement>) => void; readonly onPointerMove: (event: PointerEvent<HTMLElement>) => void;
  readonly onPointerUp: () => void; readonly onPointerCancel: () => void; readonly onKeyDown: (event: KeyboardEvent<HTMLElement>) => void;
};

const numberOf = (el: EventTarget, name: string): number | null => { const text = el instanceof SVGElement ? el.dataset[name] : undefined; return text === undefined ? null : Number(text); };
const put = (outline: Polygon, i: number, at: Point): Polygon => outline.map((p, k) => (k === i ? at : p));

/** A corner more, in the middle of a wall. */
function split(outline: Polygon, wall: number): Polygon {
  const a = outline[wall], b = outline[(wall + 1) % outline.length];
  if (!a || !b) return outline;
  return [...outline.slice(0, wall + 1), [Math.round((a[0] + b[0]) / 2), Math.round((a[1] + b[1]) / 2)], ...outline.slice(wall + 1)];
}

/** Where the pointer is on a plan, mm. The pointer is captured, so its target does not tell which plan. */
function spotOn(svg: Element | null, { clientX, clientY }: PointerEvent<HTMLElement>): Point | null {
  const way = svg instanceof SVGSVGElement ? svg.getScreenCTM()?.inverse() : undefined;
  if (!way) return null;
  const { x, y } = new DOMPoint(clientX, clientY).matrixTransform(way);
  return [x, y];
}

/** On the line of another corner where one is near, else on the grid. */
function settled([x, y]: Point, others: readonly Point[], step: number): Point {
  const on = (value: number, axis: 0 | 1): number => {
    const line = others.map((p) => p[axis]).filter((v) => Math.abs(v - value) <= NEAR).sort((a, b) => Math.abs(a - value) - Math.abs(b - value))[0];
    return line ?? Math.round(Math.round(value / step) * step);
  };
  return [on(x, 0), on(y, 1)];
}

const WAYS: Readonly<Record<string, Point>> = { ArrowLeft: [-1, 0], ArrowRight: [1, 0], ArrowUp: [0, -1], ArrowDown: [0, 1] };

/** Corners under the hand: drawn with the pointer, moved with the arrow keys, put into a wall at its middle, taken away with Delete. */
export function useCornerHand({ outlines, step, type }: Hands): CornerHand {
  const held = useRef<Held | null>(null);
  const othersOf = ({ room, corner }: Held): readonly Point[] => outlines.flatMap((o, r) => o.filter((_, i) => r !== room || i !== corner));
  const gripOf = (el: EventTarget) => {
    const room = numberOf(el, "room");
    return { room: room ?? -1, corner: numberOf(el, "corner"), wall: numberOf(el, "wall"), outline: room === null ? undefined : outlines[room] };
  };
  const drop = (): void => { held.current = null; };
  return {
    onPointerDown: (event) => {
      const { room, corner, wall, outline } = gripOf(event.target);
      if (!outline) return;
      if (wall !== null) type(room, split(outline, wall));
      held.current = { room, corner: corner ?? (wall ?? 0) + 1 };
      event.currentTarget.setPointerCapture(event.pointerId);
      event.preventDefault();
      if (event.target instanceof SVGElement) event.target.focus();
    },
    onPointerMove: (event) => {
      const now = held.current, outline = now ? outlines[now.room] : undefined;
      const spot = now ? spotOn(event.currentTarget.querySelector(`[data-plan~="${now.room}"]`), event) : null, was = now ? outline?.[now.corner] : undefined;
      if (!now || !outline || !spot || !was) return;
      const at = settled(spot, othersOf(now), step);
      if (was[0] !== at[0] || was[1] !== at[1]) type(now.room, put(outline, now.corner, at));
    },
    onPointerUp: drop, onPointerCancel: drop,
    onKeyDown: (event) => {
      const { room, corner, wall, outline } = gripOf(event.target);
      if (!outline) return;
      const way = WAYS[event.key], at = corner === null ? undefined : outline[corner];
      if (way && corner !== null && at) type(room, put(outline, corner, [at[0] + Math.round(way[0] * step), at[1] + Math.round(way[1] * step)]));
      else if ((event.key === "Delete" || event.key === "Backspace") && corner !== null && outline.length > 3) type(room, outline.filter((_, i) => i !== corner));
      else if ((event.key === "Enter" || event.key === " ") && wall !== null) type(room, split(outline, wall));
      else return;
      event.preventDefault();
    },
  };
}
