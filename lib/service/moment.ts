import type { House } from "./house";

/** Now, as ISO 8601 in UTC. */
export const nowIso = (house: Pick<House, "clock">): string => iso(house.clock.now());
export const iso = (ms: number): string => new Date(ms).toISOString();
