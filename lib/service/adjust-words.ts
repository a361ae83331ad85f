import { assertNever } from "../base";
import { nameOf, type EditFault } from "../hand";
import type { FieldError } from "./types";

/** Why a deed was not done, beside the field that can mend it. */
export function faultWords(fault: EditFault, field: string): FieldError {
  switch (fault.code) {
    case "no-such-piece": return { field: "piece", message: "That piece stands there no more. Choose another from the list." };
    case "fixed": return { field: "piece", message: `${nameOf(fault.item)} is never moved at this venue.` };
    case "held": return { field: "hold", message: `${nameOf(fault.item)} is held where it stands. Let it go first.` };
    case "no-such-room": return { field: "room", message: "Choose one of the rooms of this part of the day." };
    case "none-left": return { field, message: "None of these is left in this part of the day." };
    case "no-floor": return { field: "room", message: "No free floor in that room takes it. Move something first, or choose another room." };
    case "places": return { field: "places", message: fault.most === 0 ? "Nobody sits at this piece." : `This table seats ${fault.most} at the most.` };
    case "walls": return { field: "far1", message: "Name one wall, or two walls that meet in a corner, with a distance for each." };
    case "same": return { field, message: "That is how it stands already." };
    default: return assertNever(fault);
  }
}
