import type { SessionRow } from "../store";
import { LIFETIMES } from "./limits";

/** Is a session alive at a moment (milliseconds since 1970 UTC), and is its last use worth noting again? */
export function sessionState(session: Pick<SessionRow, "side" | "madeAt" | "seenAt" | "endedAt">, now: number): "over" | "alive" | "alive, note it" {
  const limit = LIFETIMES[session.side];
  const idle = now - Date.parse(session.seenAt);
  if (session.endedAt !== null || idle >= limit.idle || now - Date.parse(session.madeAt) >= limit.absolute) return "over";
  return idle >= LIFETIMES.seenEvery ? "alive, note it" : "alive";
}
