import { invariant } from "../base";

/** A part of a page that blocks are set into, from its top down. Millimetres of paper. */
export type Region = { readonly page: number; readonly x: number; readonly y: number; readonly width: number; readonly height: number };
export type Spot = { readonly page: number; readonly x: number; readonly y: number; readonly width: number; readonly region: number };

export type Flow = {
  /** Room for a block; `keep` is what must still fit under it in the same region. Moves to the next region when it does not. */
  readonly take: (height: number, keep?: number) => Spot;
  /** Distance before the next block; falls away at the top of a region. */
  readonly gap: (height: number) => void;
  /** What is left of the region, after the gap that waits. */
  readonly left: () => number;
  readonly width: () => number;
  /** Goes on in the next region, unless this one is still empty. */
  readonly turn: () => void;
  readonly region: () => number;
  /** How much of each region has been used. */
  readonly used: () => readonly number[];
};

/** Sets blocks one under another through a run of regions; the run never ends. */
export function flowThrough(regionAt: (n: number) => Region): Flow {
  let n = 0;
  let region = regionAt(0);
  let y = 0;
  let waiting = 0;
  const used: number[] = [0];
  const next = (): void => {
    n += 1;
    invariant(n < 5_000, `a paper of ${n} regions`);
    region = regionAt(n);
    used[n] = 0;
    y = 0;
    waiting = 0;
  };
  const lead = (): number => (y === 0 ? 0 : waiting);
  return {
    take: (height, keep = 0) => {
      // A block higher than a whole region stands at its top all the same: turning again would not help it.
      if (y > 0 && y + lead() + height + keep > region.height + 1e-6) next();
      y += lead();
      const spot = { page: region.page, x: region.x, y: region.y + y, width: region.width, region: n };
      y += height;
      waiting = 0;
      used[n] = y;
      return spot;
    },
    gap: (height) => { waiting = Math.max(waiting, height); },
    left: () => region.height - y - lead(),
    width: () => region.width,
    turn: () => { if (y > 0) next(); },
    region: () => n,
    used: () => used,
  };
}
