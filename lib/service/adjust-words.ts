import { assertNever } from "../base";
import { nameOf, type EditFault } from "../hand";
import type { Item } from "../layout";
import { labelIn } from "../words/engine";
import type { HandVoice } from "../words/hand";
import type { FieldError } from "./types";

/** Why a deed was not done, in the words of who did it, beside the field that can mend it. */
export function faultWords(fault: EditFault, field: string, say: HandVoice): FieldError {
  const called = (item: Item): string => labelIn(nameOf(item), say.language);
  switch (fault.code) {
    case "no-such-piece": return { field: "piece", message: say("That piece stands there no more. Choose another from the list.") };
    case "fixed": return { field: "piece", message: say("{piece} is never moved at this venue.", { piece: called(fault.item) }) };
    case "held": return { field: "hold", message: say("{piece} is held where it stands. Let it go first.", { piece: called(fault.item) }) };
    case "no-such-room": return { field: "room", message: say("Choose one of the rooms of this part of the day.") };
    case "none-left": return { field, message: say("None of these is left in this part of the day.") };
    case "no-floor": return { field: "room", message: say("No free floor in that room takes it. Move something first, or choose another room.") };
    case "places": return { field: "places", message: fault.most === 0 ? say("Nobody sits at this piece.") : say("This table seats {n} at the most.", { n: fault.most }) };
    case "walls": return { field: "far1", message: say("Name one wall, or two walls that meet in a corner, with a distance for each.") };
    case "same": return { field, message: say("That is how it stands already.") };
    default: return assertNever(fault);
  }
}
