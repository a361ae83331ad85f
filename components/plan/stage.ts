import type { Drawing } from "@/lib/drawing";
// From the painter itself: with all of the drawing came the composer, its words and its rules, and held the page up when they were read.
import { svgTree, written, type SvgNode, type SvgOptions } from "@/lib/drawing/svg";

/** The page is never held up longer than this for a drawing, milliseconds; then it may answer first. */
const SLICE_MS = 4;
const SVG_SPACE = "http://www.w3.org/2000/svg";
const pause = (): Promise<void> => new Promise((resolve) => { setTimeout(resolve, 0); });

/**
 * Builds a tree of elements, a slice at a time: the same elements, attributes and words that the server's painter writes. What stands in
 * the page already is laid out with its slice, for all of a plan's words at once would hold the page up.
 */
async function build(root: SVGSVGElement, tree: SvgNode): Promise<void> {
  const open: { readonly into: SVGElement; readonly node: SvgNode }[] = [{ into: root, node: tree }];
  let since = performance.now();
  for (let next = open.pop(); next; next = open.pop()) {
    const { into, node } = next;
    for (const [key, value] of written(node.attributes)) into.setAttribute(key, value);
    if (node.words !== undefined) into.textContent = node.words;
    // Made in their order, filled from the last: what is still open is a stack.
    for (const one of node.inner ?? []) open.push({ into: into.appendChild(document.createElementNS(SVG_SPACE, one.name)), node: one });
    if (performance.now() - since < SLICE_MS) continue;
    if (root.isConnected) root.getBBox();
    await pause();
    since = performance.now();
  }
}

/** Makes a drawing's picture at the end of `host`, unseen until `reveal`. */
export async function paint(host: HTMLElement, drawing: Drawing, options: SvgOptions): Promise<SVGSVGElement> {
  const root = document.createElementNS(SVG_SPACE, "svg");
  // Unseen from its first moment: empty it would stand there at a picture's usual size.
  root.setAttribute("class", UNSEEN);
  host.appendChild(root);
  // Asked for as a script or an answer arrives, with that still in hand: the tree, and what is built of it, are pieces of work of their own.
  await pause();
  const tree = svgTree(drawing, options), { class: own } = tree.attributes;
  await pause();
  await build(root, { ...tree, attributes: { ...tree.attributes, class: `${own ?? ""} ${UNSEEN}`.trim() } });
  return root;
}
const UNSEEN = "stage-next";
export const reveal = (svg: SVGSVGElement): void => svg.classList.remove(UNSEEN);

export const lookAt = (svg: SVGSVGElement, { x, y, width, height }: { readonly x: number; readonly y: number; readonly width: number; readonly height: number }): void =>
  svg.setAttribute("viewBox", `${x} ${y} ${width} ${height}`);

export type PieceName = { readonly id: string; readonly label: string };
export type Stage = {
  /** Nothing where another drawing was asked for meanwhile. */
  readonly show: (drawing: Drawing, idPrefix: string) => Promise<readonly PieceName[] | null>;
  /** Larger or smaller about the middle of what is seen; gives how many times larger than whole. */
  readonly zoom: (by: number) => number;
  /** Moves the view by shares of what is seen. */
  readonly move: (right: number, down: number) => void;
  readonly whole: () => void;
  readonly pick: (id: string | null) => void;
  readonly remove: () => void;
};
type Seen = { readonly x: number; readonly y: number; readonly width: number; readonly height: number };

const MOST = 6;
const PIECE = 'g[role="graphics-symbol"][id]';

/** A plan under the hand: larger and smaller, moved about, its pieces read by a tap. */
export function makeStage(host: HTMLElement, tapped: (id: string | null) => void): Stage {
  let svg: SVGSVGElement | undefined;
  let page: Seen = { x: 0, y: 0, width: 1, height: 1 };
  let seen: Seen = page;
  let mark: SVGElement | undefined;
  let shown = 0;
  const within = (lo: number, v: number, hi: number): number => Math.min(Math.max(v, lo), hi);
  const look = (next: Seen): void => {
    const width = within(page.width / MOST, next.width, page.width), height = (width * page.height) / page.width;
    seen = { width, height, x: within(0, next.x, page.width - width), y: within(0, next.y, page.height - height) };
    if (svg) lookAt(svg, seen);
    host.classList.toggle("stage-near", seen.width < page.width - 1e-6);
  };
  const pick = (id: string | null): void => {
    mark?.remove();
    mark = undefined;
    const piece = id === null ? null : host.querySelector(`${PIECE}[id="${CSS.escape(id)}"]`);
    if (!(piece instanceof SVGGraphicsElement) || !svg) return;
    const b = piece.getBBox(), air = 0.8;
    mark = svg.appendChild(document.createElementNS(SVG_SPACE, "rect"));
    const frame = { x: b.x - air, y: b.y - air, width: b.width + 2 * air, height: b.height + 2 * air, class: "stage-mark", "aria-hidden": "true" };
    for (const [key, value] of Object.entries(frame)) mark.setAttribute(key, String(value));
  };

  let from: { readonly x: number; readonly y: number; readonly seen: Seen } | null = null;
  let moved = false;
  const down = (e: PointerEvent): void => { moved = false; from = seen.width < page.width - 1e-6 ? { x: e.clientX, y: e.clientY, seen } : null; };
  const drag = (e: PointerEvent): void => {
    if (!from || e.buttons === 0) return;
    const per = from.seen.width / host.clientWidth;
    const dx = (e.clientX - from.x) * per, dy = (e.clientY - from.y) * per;
    if (Math.abs(e.clientX - from.x) + Math.abs(e.clientY - from.y) > 5) moved = true;
    look({ ...from.seen, x: from.seen.x - dx, y: from.seen.y - dy });
  };
  const up = (): void => { from = null; };
  const tap = (e: MouseEvent): void => {
    if (moved) return;
    const piece = e.target instanceof Element ? e.target.closest(PIECE) : null;
    tapped(piece?.id ?? null);
  };
  host.addEventListener("pointerdown", down);
  host.addEventListener("pointermove", drag);
  window.addEventListener("pointerup", up);
  host.addEventListener("click", tap);

  return {
    show: async (drawing, idPrefix) => {
      const mine = ++shown;
      const next = await paint(host, drawing, { theme: "css", pixelWidth: host.clientWidth, idPrefix, reads: "objects" });
      if (mine !== shown) { next.remove(); return null; }
      svg?.remove();
      mark = undefined;
      svg = next;
      reveal(next);
      page = { x: 0, y: 0, width: drawing.width, height: drawing.height };
      seen = page;
      look(page);
      return [...host.querySelectorAll(PIECE)].map((one) => ({ id: one.id, label: one.getAttribute("aria-label") ?? "" }));
    },
    zoom: (by) => {
      const width = seen.width / by, height = seen.height / by;
      look({ width, height, x: seen.x + (seen.width - width) / 2, y: seen.y + (seen.height - height) / 2 });
      return page.width / seen.width;
    },
    move: (right, below) => look({ ...seen, x: seen.x + right * seen.width, y: seen.y + below * seen.height }),
    whole: () => look(page),
    pick,
    remove: () => {
      shown++;
      host.removeEventListener("pointerdown", down);
      host.removeEventListener("pointermove", drag);
      window.removeEventListener("pointerup", up);
      host.removeEventListener("click", tap);
      svg?.remove();
    },
  };
}
