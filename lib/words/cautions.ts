/** What stands beside every plan, on paper and on the screen. Never folded away, never the smallest words. */
export const CAUTIONS = "Planning aid. The posted occupancy, the fire authority, the licensing and building control bodies and the venue's own safety plan govern; a competent person must check ways out, electrical loads, lifting and outdoor structures before the doors open.";
