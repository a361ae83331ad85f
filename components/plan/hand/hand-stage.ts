import { SVG, type Dom } from "@svgdotjs/svg.js";
import type { Drawing, Mark, Paper } from "@/lib/drawing";
import { svgTree, written, type SvgNode } from "@/lib/drawing/svg";
import { contains } from "@/lib/geometry";
import { carried, roomNow, snap } from "@/lib/hand";
import { formatLength, lengthStyle } from "@/lib/measure";
import { footprint, type Item, type Scene } from "@/lib/layout";
import type { Room, Venue } from "@/lib/venue";
import { lookAt, paint, reveal } from "../stage";
import { chairMarks, lineMarks, offPaper, onPaper, outlineMarks, stringLines, type Line } from "./marks";

/** What the stage has to know of the plan that it shows. */
export type World = { readonly venue: Venue; readonly scene: Scene; readonly drawing: Drawing; readonly picked: Item | null; /** What goes with it: the tables joined to it. */ readonly mates: () => readonly Item[]; readonly held: boolean; readonly fixed: boolean };
export type Spot = { readonly room: string; readonly at: Item["at"]; readonly angle: number };
export type Answers = {
  readonly pick: (id: string | null) => void;
  /** While a piece is moved: where it is at this moment; null once it is let go of. */
  readonly hover: (spot: Spot | null) => void;
  readonly drop: (spot: Spot) => void;
};
export type HandStage = {
  readonly show: (drawing: Drawing) => Promise<boolean>;
  readonly world: (w: World) => void;
  /** Shows the chosen piece elsewhere than it stands; null: where it stands. */
  readonly hold: (spot: Spot | null) => void;
  /** The next tap on the plan puts the chosen piece there. */
  readonly aim: (on: boolean) => void;
  readonly zoom: (by: number) => number;
  readonly move: (right: number, down: number) => void;
  readonly whole: () => void;
  readonly remove: () => void;
};
type Seen = { readonly x: number; readonly y: number; readonly width: number; readonly height: number };

const MOST = 6;
const PREFIX = "hand-";
/** A spot within so many pixels draws a piece to it. */
const PULL = 10;
/** A tap beside a piece means it up to so many pixels off its edge: with it the least piece is met on 24 x 24. */
const REACH = 14;
/** Moved by less than this, a press is a tap, pixels. */
const STILL = 5;

/** Elements of a short list of marks, at once. */
function grow(into: Dom, node: SvgNode): void {
  const made = into.element(node.name);
  for (const [key, value] of written(node.attributes)) made.attr(key, value);
  if (node.words !== undefined) made.words(node.words);
  for (const one of node.inner ?? []) grow(made, one);
}
function draw(into: Dom, drawing: Drawing, marks: readonly Mark[]): void {
  into.clear();
  const tree = svgTree({ ...drawing, words: [], marks }, { theme: "css", idPrefix: "over-" });
  for (const node of tree.inner ?? []) if (node.name !== "title") grow(into, node);
}

/** A plan that pieces are moved on: the plan lies still, what moves is drawn on a sheet of its own above it. */
export function makeHandStage(host: HTMLElement, answers: Answers): HandStage {
  const over = SVG().addTo(host).addClass("hand-over").addClass("plan").attr("aria-hidden", "true");
  // Painted by itself by the browser: what moves over the plan never has the plan painted anew.
  const ghost = over.group().addClass("hand-ghost"), lines = over.group();
  let svg: SVGSVGElement | undefined;
  let w: World | null = null;
  let page: Seen = { x: 0, y: 0, width: 1, height: 1 };
  let seen: Seen = page;
  let shown = 0, aiming = false, frame = 0;
  let held: Spot | null = null;
  let lifted: readonly Element[] = [];
  let grasp: Element | null = null;
  const within = (lo: number, v: number, hi: number): number => Math.min(Math.max(v, lo), hi);

  const look = (next: Seen): void => {
    const width = within(page.width / MOST, next.width, page.width), height = (width * page.height) / page.width;
    seen = { width, height, x: within(0, next.x, page.width - width), y: within(0, next.y, page.height - height) };
    for (const one of [svg, over.node]) if (one) lookAt(one, seen);
    host.classList.toggle("stage-near", seen.width < page.width - 1e-6);
  };
  const paper = (e: { readonly clientX: number; readonly clientY: number }): Paper => {
    const r = host.getBoundingClientRect();
    return [seen.x + ((e.clientX - r.left) / r.width) * seen.width, seen.y + ((e.clientY - r.top) / r.height) * seen.height];
  };
  const pieceEl = (id: string): Element | null => host.querySelector(`[id="${CSS.escape(`${PREFIX}piece-${id}`)}"]`);
  const roomAt = (p: Paper): Room | undefined => {
    const now = w;
    return now?.venue.rooms.find((r) => { const at = offPaper(now.drawing, r.id, p); return now.scene.rooms.includes(r.id) && contains(roomNow(now.venue, now.scene.drapes, r, at).outline, at); });
  };
  const unlift = (): void => { for (const one of lifted) one.classList.remove("hand-lifted"); lifted = []; ghost.clear(); };

  /** The chosen piece where it is held, its strings about it; `hints`: why it was drawn there. */
  function mark(hints: readonly Line[] = []): void {
    if (!w?.picked) { unlift(); lines.clear(); grasp?.classList.remove("hand-picked"); grasp = null; return; }
    const { picked, drawing, venue, scene } = w;
    const item: Item = held ? { ...picked, ...held } : picked;
    const at = { drawing, venue, item }, mates = w.mates();
    const by = { from: picked.at, to: item.at, by: item.angle - picked.angle }, gone = w.held;
    // A chair of the rows has no element that could be lifted: it is drawn by itself, and its old place as one that is empty.
    const bare = held ? [picked, ...mates].filter((i) => i.kind === "chair" && !pieceEl(i.id)) : [];
    const marks = [
      ...bare.flatMap((i) => chairMarks({ drawing, venue, item: i }, true)),
      ...outlineMarks(at, gone), ...mates.flatMap((m) => outlineMarks({ drawing, venue, item: { ...carried(m, by), room: item.room } }, gone)),
      ...hints.flatMap(lineMarks), ...stringLines(at, { drapes: scene.drapes, items: scene.items.filter((i) => !mates.includes(i)) }).flatMap(lineMarks),
    ];
    draw(lines, drawing, marks);
    if (grasp?.id !== `${PREFIX}piece-${picked.id}` || !grasp.isConnected) {
      grasp?.classList.remove("hand-picked");
      grasp = pieceEl(picked.id);
      // A finger on the chosen piece moves it, not the page.
      grasp?.classList.add("hand-picked");
    }
    if (!held) { unlift(); return; }
    if (ghost.node.childElementCount === 0) {
      lifted = [picked, ...mates].flatMap((i) => { const el = pieceEl(i.id); return el ? [el] : []; });
      draw(ghost, drawing, bare.flatMap((i) => chairMarks({ drawing, venue, item: i })));
      for (const one of lifted) { ghost.node.append(one.cloneNode(true)); one.classList.add("hand-lifted"); }
      for (const one of ghost.node.querySelectorAll("[id]")) one.removeAttribute("id");
    }
    const from = onPaper(drawing, picked.room, picked.at), to = onPaper(drawing, item.room, item.at);
    ghost.attr("transform", `translate(${to[0]} ${to[1]}) rotate(${item.angle - picked.angle}) translate(${-from[0]} ${-from[1]})`);
  }

  /** The spot that a point of the paper means for the chosen piece, drawn to what is near. */
  function spotAt(p: Paper): { readonly spot: Spot; readonly hints: readonly Line[] } | null {
    if (!w?.picked) return null;
    const { venue, drawing, picked, scene } = w;
    const room = roomAt(p) ?? venue.rooms.find((r) => r.id === (held?.room ?? picked.room));
    if (!room) return null;
    const [x, y] = offPaper(drawing, room.id, p);
    const item: Item = { ...picked, room: room.id, at: [Math.round(x), Math.round(y)], angle: held?.angle ?? picked.angle };
    const mm = (PULL * seen.width * 1000) / (host.clientWidth * drawing.perMetre);
    const { at, hints } = snap({ room: roomNow(venue, scene.drapes, room, item.at), item, others: scene.items.filter((i) => !w?.mates().includes(i)), within: mm });
    const style = lengthStyle(venue);
    return {
      spot: { room: room.id, at, angle: item.angle },
      hints: hints.map((h) => ({ from: onPaper(drawing, room.id, h.from), to: onPaper(drawing, room.id, h.to), text: h.mm === undefined ? "" : formatLength(h.mm, style), kind: h.kind })),
    };
  }

  type Grip = { readonly id: number; readonly x: number; readonly y: number; readonly seen: Seen; readonly piece: boolean; readonly off: Paper };
  let grip: Grip | null = null;
  let moved = false;
  let last: { readonly clientX: number; readonly clientY: number } | null = null;
  const pieceUnder = (e: Event): string | null => {
    const el = e.target instanceof Element ? e.target.closest('g[role="graphics-symbol"][id]') : null;
    return el?.id.startsWith(`${PREFIX}piece-`) === true ? el.id.slice(`${PREFIX}piece-`.length) : null;
  };
  /** The piece whose edge is nearest to a tap beside all of them, if a finger may have meant it: small pieces are met too. */
  const nearest = (p: Paper): string | null => {
    const now = w;
    if (!now) return null;
    const per = seen.width / host.clientWidth;
    const found = now.scene.items.map((i) => {
      const [x, y] = offPaper(now.drawing, i.room, p), box = footprint(i).box;
      const off = Math.hypot(Math.max(box.minX - x, 0, x - box.maxX), Math.max(box.minY - y, 0, y - box.maxY));
      return { id: i.id, px: (off * now.drawing.perMetre) / (1000 * per), size: (box.maxX - box.minX) * (box.maxY - box.minY) };
    }).sort((a, b) => a.px - b.px || a.size - b.size)[0];
    return found && found.px <= REACH ? found.id : null;
  };
  const down = (e: PointerEvent): void => {
    moved = false;
    if (e.button !== 0 || aiming) return;
    const id = pieceUnder(e), mine = w?.picked !== null && w?.picked !== undefined && (id ?? nearest(paper(e))) === w.picked.id;
    // A mouse takes a piece up at once; a finger first chooses it, so that the page can still be scrolled by it.
    if (!mine && id !== null && e.pointerType === "mouse") { answers.pick(id); }
    const item = w && (mine ? w.picked : (w.scene.items.find((i) => i.id === id) ?? null));
    const free = item !== null && item !== undefined && (mine ? !w?.held && !w?.fixed : e.pointerType === "mouse");
    const at = free && w && item ? onPaper(w.drawing, item.room, item.at) : null;
    const p = paper(e);
    grip = { id: e.pointerId, x: e.clientX, y: e.clientY, seen, piece: at !== null, off: at ? [at[0] - p[0], at[1] - p[1]] : [0, 0] };
    if (at && mine) e.preventDefault();
  };
  const step = (): void => {
    frame = 0;
    if (!grip?.piece || !last || !w?.picked || w.held || w.fixed) return;
    const [x, y] = paper(last), found = spotAt([x + grip.off[0], y + grip.off[1]]);
    if (!found) return;
    held = found.spot;
    mark(found.hints);
    answers.hover(held);
  };
  const drag = (e: PointerEvent): void => {
    if (!grip || grip.id !== e.pointerId) return;
    if (!moved && Math.abs(e.clientX - grip.x) + Math.abs(e.clientY - grip.y) <= STILL) return;
    if (!moved) host.setPointerCapture(e.pointerId);
    moved = true;
    last = e;
    if (grip.piece) { frame ||= requestAnimationFrame(step); return; }
    const per = grip.seen.width / host.clientWidth;
    look({ ...grip.seen, x: grip.seen.x - (e.clientX - grip.x) * per, y: grip.seen.y - (e.clientY - grip.y) * per });
  };
  const up = (e: PointerEvent): void => {
    if (grip?.id !== e.pointerId) return;
    if (frame) { cancelAnimationFrame(frame); step(); }
    const dropped = grip.piece && moved ? held : null;
    grip = null;
    if (dropped) answers.drop(dropped);
  };
  const lost = (): void => { grip = null; if (held) { held = null; mark(); answers.hover(null); } };
  const tap = (e: MouseEvent): void => {
    if (moved) { moved = false; return; }
    if (aiming) {
      const found = spotAt(paper(e));
      if (found) answers.drop(found.spot);
      return;
    }
    answers.pick(pieceUnder(e) ?? nearest(paper(e)));
  };
  const listen = new AbortController(), { signal } = listen;
  host.addEventListener("pointerdown", down, { signal });
  host.addEventListener("pointermove", drag, { signal });
  host.addEventListener("pointerup", up, { signal });
  host.addEventListener("pointercancel", lost, { signal });
  // A finger that has the chosen piece moves it, and the page stays; not every browser keeps to `touch-action` within a drawing.
  host.addEventListener("touchmove", (e) => { if (grip?.piece && e.cancelable) e.preventDefault(); }, { signal, passive: false });
  host.addEventListener("click", tap, { signal });

  return {
    show: async (drawing) => {
      const mine = ++shown;
      const next = await paint(host, drawing, { theme: "css", pixelWidth: host.clientWidth, idPrefix: PREFIX, reads: "objects" });
      if (mine !== shown) { next.remove(); return false; }
      const same = page.width === drawing.width && page.height === drawing.height;
      held = null;
      unlift();
      svg?.remove();
      svg = next;
      // The small sheet goes above again, not the plan below: moved in the page, the whole of it would be laid out anew.
      host.append(over.node);
      reveal(next);
      page = { x: 0, y: 0, width: drawing.width, height: drawing.height };
      look(same ? seen : page);
      return true;
    },
    world: (next) => { if (next.picked?.id !== w?.picked?.id) held = null; w = next; mark(); },
    hold: (spot) => { held = spot; mark(); },
    aim: (on) => { aiming = on; host.classList.toggle("hand-aim", on); },
    zoom: (by) => {
      const width = seen.width / by, height = seen.height / by;
      // About the chosen piece, where there is one: it is what is looked at.
      const c: Paper = w?.picked ? onPaper(w.drawing, w.picked.room, w.picked.at) : [seen.x + seen.width / 2, seen.y + seen.height / 2];
      look({ width, height, x: c[0] - width / 2, y: c[1] - height / 2 });
      return page.width / seen.width;
    },
    move: (right, below) => look({ ...seen, x: seen.x + right * seen.width, y: seen.y + below * seen.height }),
    whole: () => look(page),
    remove: () => { shown++; listen.abort(); if (frame) cancelAnimationFrame(frame); svg?.remove(); over.remove(); },
  };
}
