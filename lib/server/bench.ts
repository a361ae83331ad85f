import type { Works } from "../service/works";
import { arrange, ENGINE_VERSION } from "../engine";
import { quote } from "../fees";
import { check } from "../rules";

/** The works done on the spot, on whatever thread this is. */
export const bench: Works = {
  engineVersion: ENGINE_VERSION,
  arrange: async (venue, brief, options) => arrange(venue, brief, { ...options, clock: { now: () => Math.round(performance.now()) } }),
  capacity: async (venue) => ({ format: "marquetry.capacity/1", rooms: [] }),
  check: async (venue, layout, brief) => check(venue, layout, brief),
  quote: async (venue, brief, layout) => quote(venue, brief, layout),
  planSvg: async () => { throw new Error("not yet"); },
  proposalPdf: async () => { throw new Error("not yet"); },
};
