import type { Display, Extra } from "@/lib/brief";
import type { Choice } from "./ask";

type Named<T extends string> = Choice & { readonly value: T };

/** What may be put on show, and what else may take floor: for the questions, and for the words that say where each has its place. */
export const DISPLAY_OPTIONS: readonly Named<Display>[] = [
  { value: "welcome", name: "Welcome table", why: "Where your guests come in." },
  { value: "seating-plan", name: "Seating plan", why: "Where people can stand and read it." },
  { value: "cards", name: "Cards and gifts", why: "On the way in, not beside an unwatched outer door." },
  { value: "guest-book", name: "Guest book", why: "With room for two to write." },
  { value: "photographs", name: "Photographs", why: "Along the way in." },
  { value: "cake", name: "Cake", why: "Before a good wall, in view of the tables, out of the sun." },
  { value: "favours", name: "Favours", why: "A table of their own, near the way to the tables." },
];
export const EXTRA_OPTIONS: readonly Named<Extra>[] = [
  { value: "photo-booth", name: "Photo booth", why: "At a plain wall, with power." },
  { value: "lounge", name: "A lounge corner", why: "Settles and chairs between bar and dance floor." },
  { value: "cocktail-tables", name: "High tables", why: "For glasses, at the drinks and beside the dance floor." },
  { value: "appetisers", name: "A table of small bites", why: "At a wall, out of the way of the door." },
  { value: "children-corner", name: "A corner for the children", why: "Away from the loudspeakers." },
  { value: "second-bar", name: "A second bar", why: "Shorter queues; it takes floor." },
];
