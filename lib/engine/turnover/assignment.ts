/**
 * The cheapest matching of every row to a column of its own (rows ≤ columns): the Hungarian algorithm with potentials
 * (Kuhn 1955, Munkres 1957; this form after Jonker and Volgenant's shortest augmenting paths). Cost n²·m.
 * Returns for each row its column. Costs must be finite.
 */
export function assign(cost: readonly (readonly number[])[]): readonly number[] {
  const n = cost.length, m = cost[0]?.length ?? 0;
  if (n === 0) return [];
  if (n > m) throw new Error(`assign: more rows (${n}) than columns (${m})`);
  // Index 0 is a dummy; row and column potentials keep all reduced costs at or above 0.
  const u = new Float64Array(n + 1), v = new Float64Array(m + 1);
  const rowOf = new Int32Array(m + 1), way = new Int32Array(m + 1);
  for (let i = 1; i <= n; i++) {
    rowOf[0] = i;
    let j0 = 0;
    const least = new Float64Array(m + 1).fill(Infinity);
    const used = new Uint8Array(m + 1);
    do {
      used[j0] = 1;
      const i0 = rowOf[j0] ?? 0;
      const line = cost[i0 - 1] ?? [];
      let delta = Infinity, j1 = 0;
      for (let j = 1; j <= m; j++) {
        if (used[j]) continue;
        const c = (line[j - 1] ?? 0) - (u[i0] ?? 0) - (v[j] ?? 0);
        if (c < (least[j] ?? Infinity)) { least[j] = c; way[j] = j0; }
        if ((least[j] ?? Infinity) < delta) { delta = least[j] ?? Infinity; j1 = j; }
      }
      for (let j = 0; j <= m; j++) {
        if (used[j]) { u[rowOf[j] ?? 0] = (u[rowOf[j] ?? 0] ?? 0) + delta; v[j] = (v[j] ?? 0) - delta; }
        else least[j] = (least[j] ?? 0) - delta;
      }
      j0 = j1;
    } while (rowOf[j0] !== 0);
    do {
      const j1 = way[j0] ?? 0;
      rowOf[j0] = rowOf[j1] ?? 0;
      j0 = j1;
    } while (j0 !== 0);
  }
  const out = new Array<number>(n).fill(-1);
  for (let j = 1; j <= m; j++) { const i = rowOf[j] ?? 0; if (i > 0) out[i - 1] = j - 1; }
  return out;
}

/** Pairs of the least total cost between two lists: min(a, b) of them. */
export function matching<A, B>(a: readonly A[], b: readonly B[], cost: (x: A, y: B) => number): readonly (readonly [A, B])[] {
  if (a.length === 0 || b.length === 0) return [];
  const flip = a.length > b.length;
  const found = flip ? assign(b.map((y) => a.map((x) => cost(x, y)))) : assign(a.map((x) => b.map((y) => cost(x, y))));
  const out: (readonly [A, B])[] = [];
  found.forEach((j, i) => {
    const x = flip ? a[j] : a[i], y = flip ? b[i] : b[j];
    if (x !== undefined && y !== undefined) out.push([x, y]);
  });
  return out;
}
