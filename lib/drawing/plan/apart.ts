/**
 * Moves points on a line until each keeps `gap` to the next, by the least sum of squares: isotonic regression of what is left
 * when the gaps are taken out (pool adjacent violators, Ayer and others 1955). In and out ascending.
 */
export function spreadApart(points: readonly number[], gap: number): readonly number[] {
  const pools: { sum: number; count: number }[] = [];
  points.forEach((p, i) => {
    pools.push({ sum: p - i * gap, count: 1 });
    for (;;) {
      const last = pools.at(-1), before = pools.at(-2);
      if (!last || !before || before.sum / before.count <= last.sum / last.count) return;
      pools.splice(-2, 2, { sum: before.sum + last.sum, count: before.count + last.count });
    }
  });
  return pools.flatMap((p) => Array.from({ length: p.count }, () => p.sum / p.count)).map((y, i) => y + i * gap);
}
