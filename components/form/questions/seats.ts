import type { Capacity, Style } from "@/lib/layout";
import type { Venue } from "@/lib/venue";

/** How many places one style has in the room where it has the most. */
export type StyleSeats = {
  readonly room: string;
  readonly drape: string | null;
  readonly comfort: number;
  readonly most: number;
  readonly ceiling: number;
  readonly because: string;
};

const DINING: readonly Style[] = ["rounds", "long", "mixed", "u", "e", "t", "hollow-square"];

/** Best room for a style among those used for it; a drape is counted only where `drapes` allows. */
export function seatsOf(capacity: Capacity | null, style: Style, rooms: Venue["rooms"], drapes = false): StyleSeats | null {
  if (!capacity) return null;
  const use = DINING.includes(style) ? "dining" : style === "rows" ? "ceremony" : null;
  const ids = new Set(rooms.filter((r) => use === null || r.uses.includes(use)).map((r) => r.id));
  const found = capacity.rooms.flatMap((r): readonly StyleSeats[] => {
    const s = r.styles[style];
    if (!s || !ids.has(r.room) || (r.drape !== null && !drapes)) return [];
    return [{ room: r.room, drape: r.drape, comfort: s.comfort.seats, most: s.most.seats, ceiling: s.ceiling.seats, because: s.ceiling.because }];
  });
  return [...found].sort((a, b) => b.comfort - a.comfort || b.most - a.most)[0] ?? null;
}

export const bestOf = (all: readonly (StyleSeats | null)[]): StyleSeats | null =>
  [...all].filter((s): s is StyleSeats => s !== null).sort((a, b) => b.comfort - a.comfort || b.most - a.most)[0] ?? null;
