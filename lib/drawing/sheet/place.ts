import type { Rect } from "../plan/ground";

type Size = { readonly width: number; readonly height: number };

/** A sheet's free paper: what is taken, and where a block can still go. */
export type Page = { readonly take: (r: Rect) => void; /** The lowest place that holds the block, and of those the rightmost. */ readonly find: (size: Size) => Rect | null; readonly copy: () => Page };

const DUST = 1e-6;

/**
 * The part of a sheet inside its frame, on which blocks are laid about the plan. A block that can be placed at all can be slid
 * down and to the right until it meets an edge on both sides, so only such places are tried: exact, and few.
 */
export function createPage(inner: Rect, held: readonly Rect[]): Page {
  const taken: Rect[] = [...held];
  const right = inner.x + inner.width, bottom = inner.y + inner.height;
  // The edges that a block can come to rest on, the lowest first.
  const floors = [...new Set([bottom, ...taken.map((r) => r.y)])].sort((a, b) => b - a);
  /** From the right: what is in the way is passed by its left edge. */
  const along = (y: number, { width, height }: Size): number | null => {
    let x = right - width;
    for (let k = 0; k < taken.length && x >= inner.x - DUST; k++) {
      const r = taken[k];
      if (!r || y >= r.y + r.height - DUST || r.y >= y + height - DUST || x >= r.x + r.width - DUST || r.x >= x + width - DUST) continue;
      x = r.x - width;
      k = -1;
    }
    return x >= inner.x - DUST ? x : null;
  };
  const find = (size: Size): Rect | null => {
    for (const floor of floors) {
      const y = floor - size.height;
      if (y < inner.y - DUST || floor > bottom + DUST) continue;
      const x = along(y, size);
      if (x !== null) return { x, y, ...size };
    }
    return null;
  };
  const take = (r: Rect): void => {
    taken.push(r);
    const at = floors.findIndex((f) => f <= r.y);
    if (at < 0) floors.push(r.y); else if (floors[at] !== r.y) floors.splice(at, 0, r.y);
  };
  return { take, find, copy: () => createPage(inner, taken) };
}
