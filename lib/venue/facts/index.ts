import type { Problem } from "../../base";
import type { Venue } from "../schema";
import { betweenFacts } from "./between";
import { nameFacts, stockFacts } from "./names";
import { roomFacts } from "./room";

export { layoutFacts } from "./layout";

/**
 * What the parts of a venue say of each other, which no schema can tell: outlines, jambs, pieces inside their rooms, names,
 * doors that meet, drapes. Each problem names the field and what is allowed there. Cost: O(n²) in rooms and outline points.
 */
export function venueFacts(venue: Venue): readonly Problem[] {
  const rooms = venue.rooms.flatMap((r, i) => roomFacts(r, ["rooms", i]));
  const alone = [...rooms, ...nameFacts(venue), ...stockFacts(venue)];
  // Two rooms can only be compared when each is a floor for itself.
  return rooms.length > 0 ? alone : [...alone, ...betweenFacts(venue)];
}
