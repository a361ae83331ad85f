import { createHash } from "node:crypto";
import type { Draft, StepId } from "@/lib/service";
import { shownValues } from "@/components/form/values";

/** What stood on one step when its page was made, as a mark that the form hands back: other steps saved meanwhile do not touch it. */
export const wasOf = (draft: Draft, step: StepId): string =>
  createHash("sha256").update(JSON.stringify(Object.entries(shownValues(draft, step)).sort(([a], [b]) => (a < b ? -1 : 1)))).digest("base64url").slice(0, 22);
