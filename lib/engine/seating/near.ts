/** Cells of one reach, so that two points nearer than that lie in the same cell or in neighbouring ones. */
export class Cells {
  private readonly cols: number;
  private readonly head: Int32Array;
  private readonly next: Int32Array;
  private readonly of: Int32Array;

  constructor(private readonly box: { readonly minX: number; readonly minY: number; readonly maxX: number; readonly maxY: number }, private readonly reach: number, n: number) {
    this.cols = Math.max(1, Math.floor((box.maxX - box.minX) / reach) + 1);
    const rows = Math.max(1, Math.floor((box.maxY - box.minY) / reach) + 1);
    this.head = new Int32Array(this.cols * rows);
    this.next = new Int32Array(n);
    this.of = new Int32Array(n);
  }

  /** Sorts the points into their cells; points just off the box go to the cell at its edge. */
  fill(xs: Float64Array, ys: Float64Array): void {
    this.head.fill(-1);
    const rows = this.head.length / this.cols;
    for (let i = xs.length - 1; i >= 0; i--) {
      const c = Math.max(0, Math.min(this.cols - 1, Math.floor(((xs[i] ?? 0) - this.box.minX) / this.reach)));
      const r = Math.max(0, Math.min(rows - 1, Math.floor(((ys[i] ?? 0) - this.box.minY) / this.reach)));
      const cell = r * this.cols + c;
      this.of[i] = cell;
      this.next[i] = this.head[cell] ?? -1;
      this.head[cell] = i;
    }
  }

  /** Calls `visit` once for each pair that may lie within the reach. */
  pairs(visit: (i: number, j: number) => void): void {
    const rows = this.head.length / this.cols;
    for (let i = 0; i < this.of.length; i++) {
      const cell = this.of[i] ?? 0, c = cell % this.cols, r = (cell - c) / this.cols;
      for (let y = Math.max(0, r - 1); y <= Math.min(rows - 1, r + 1); y++) for (let x = Math.max(0, c - 1); x <= Math.min(this.cols - 1, c + 1); x++)
        for (let j = this.head[y * this.cols + x] ?? -1; j >= 0; j = this.next[j] ?? -1) if (j > i) visit(i, j);
    }
  }
}
