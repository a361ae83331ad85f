import type { Finding, Layout } from "../layout";
import type { Say } from "./pages";

/** What the check found of the day itself, and of its wet-weather twin alone: that is said to be so if it rains. */
export function foundOf({ findings, wet }: Pick<Layout, "findings" | "wet">, say: Say): readonly Finding[] {
  const known = new Set(findings.map((f) => f.text));
  return [...findings, ...(wet?.findings ?? []).filter((f) => !known.has(f.text)).map((f) => ({ ...f, text: `${say("If it rains")}: ${f.text}` }))];
}
