/** A part of the bench, which prints its own lines. */
export type Part = () => void | Promise<void>;

/** One line of a table: a name, and figures to the thousandth. */
export const line = (...cells: readonly (string | number)[]): void => console.log(cells.map((c, i) => (i === 0 ? String(c).padEnd(42) : String(typeof c === "number" ? Math.round(c * 1000) / 1000 : c).padStart(10))).join(""));
