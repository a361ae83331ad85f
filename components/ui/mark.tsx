const GRAIN = [3.1, 6.2, 9.3, 12.4];
const WAYS = [[1, 1], [1, -1], [-1, 1], [-1, -1]] as const;

/** Four squares of two veneers, the grain turned about the middle. */
export function Mark() {
  const grain = WAYS.flatMap(([x, y]) => GRAIN.map((d) => `M${d * x} 0L0 ${d * y}`)).join("");
  const corners = WAYS.flatMap(([x, y]) => GRAIN.slice(0, 3).map((d) => `M${12.4 * x} ${d * y}L${d * x} ${12.4 * y}`)).join("");
  return (
    <svg viewBox="-13 -13 26 26" aria-hidden="true" focusable="false">
      <path className="brand-oak" d="M-12.4 -12.4h24.8v24.8h-24.8z" />
      <path className="brand-round" d="M0 -12.4h12.4v12.4H0zM-12.4 0H0v12.4h-12.4z" />
      <path className="brand-grain" d={grain + corners} />
      <path className="brand-edge" d="M-12.4 -12.4h24.8v24.8h-24.8zM0 -12.4v24.8M-12.4 0h24.8" />
    </svg>
  );
}
