import type { Rect } from "../plan/ground";

/** The page in squares of one millimetre, with a running sum: whether a box of it is free is four look-ups. */
export type Page = { readonly take: (r: Rect) => void; readonly find: (size: { readonly width: number; readonly height: number }, order: "bottom-right" | "bottom-left" | "top-right") => Rect | null };

/** The part of a sheet inside its frame, on which blocks are laid about the plan. */
export function createPage(inner: Rect): Page {
  const nx = Math.floor(inner.width), ny = Math.floor(inner.height);
  const taken = new Uint8Array(nx * ny);
  let sums: Int32Array | null = null;
  const sum = (): Int32Array => {
    if (sums) return sums;
    const s = new Int32Array((nx + 1) * (ny + 1));
    for (let y = 0; y < ny; y++) for (let x = 0; x < nx; x++) {
      s[(y + 1) * (nx + 1) + x + 1] = (taken[y * nx + x] ?? 0) + (s[y * (nx + 1) + x + 1] ?? 0) + (s[(y + 1) * (nx + 1) + x] ?? 0) - (s[y * (nx + 1) + x] ?? 0);
    }
    sums = s;
    return s;
  };
  const take = (r: Rect): void => {
    sums = null;
    for (let y = Math.max(0, Math.floor(r.y - inner.y)); y < Math.min(ny, Math.ceil(r.y + r.height - inner.y)); y++) {
      for (let x = Math.max(0, Math.floor(r.x - inner.x)); x < Math.min(nx, Math.ceil(r.x + r.width - inner.x)); x++) taken[y * nx + x] = 1;
    }
  };
  const find: Page["find"] = (size, order) => {
    const s = sum();
    const w = Math.ceil(size.width), h = Math.ceil(size.height);
    const at = (x: number, y: number): number => s[y * (nx + 1) + x] ?? 0;
    for (let j = 0; j <= ny - h; j++) for (let i = 0; i <= nx - w; i++) {
      const x = order === "bottom-left" ? i : nx - w - i;
      const y = order === "top-right" ? j : ny - h - j;
      if (at(x + w, y + h) - at(x, y + h) - at(x + w, y) + at(x, y) === 0) return { x: inner.x + x, y: inner.y + y, width: size.width, height: size.height };
    }
    return null;
  };
  return { take, find };
}
