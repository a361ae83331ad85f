import type { Rect } from "../plan/ground";

type Size = { readonly width: number; readonly height: number };

/** A sheet's free paper: what is taken, and where a block can still go. */
export type Page = { readonly take: (r: Rect) => void; /** The lowest place that holds the block, and of those the rightmost. */ readonly find: (size: Size) => Rect | null; readonly copy: () => Page };

const DUST = 1e-6;
const overlap = (a: Rect, b: Rect): boolean =>
  a.x < b.x + b.width - DUST && b.x < a.x + a.width - DUST && a.y < b.y + b.height - DUST && b.y < a.y + a.height - DUST;

/**
 * The part of a sheet inside its frame, on which blocks are laid about the plan. A block that can be placed at all can be slid
 * down and to the right until it meets an edge on both sides, so only such places are tried: exact, and few.
 */
export function createPage(inner: Rect, held: readonly Rect[]): Page {
  const taken: Rect[] = [...held];
  const right = inner.x + inner.width, bottom = inner.y + inner.height;
  const down = (list: readonly number[]): readonly number[] => [...new Set(list)].sort((a, b) => b - a);
  const find = (size: Size): Rect | null => {
    const ys = down([bottom, ...taken.map((r) => r.y)].map((y) => y - size.height)).filter((y) => y >= inner.y - DUST && y + size.height <= bottom + DUST);
    for (const y of ys) {
      const beside = taken.filter((r) => y < r.y + r.height - DUST && r.y < y + size.height - DUST);
      // From the right: what is in the way is passed by its left edge.
      let x = right - size.width;
      while (x >= inner.x - DUST) {
        const at: Rect = { x, y, ...size };
        const block = beside.find((r) => overlap(r, at));
        if (!block) return at;
        x = block.x - size.width;
      }
    }
    return null;
  };
  return { take: (r) => { taken.push(r); }, find, copy: () => createPage(inner, taken) };
}
