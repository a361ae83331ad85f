/** Codes of PostgreSQL's manual, appendix A: unique_violation, exclusion_violation. */
const CLASHES: readonly unknown[] = ["23505", "23P01"];

/** Did a write meet a row that it may not stand beside: one of the same key, or one that holds the same room and time? */
export function isClash(error: unknown): boolean {
  return typeof error === "object" && error !== null && "code" in error && CLASHES.includes(error.code);
}
