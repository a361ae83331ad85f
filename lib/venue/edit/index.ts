/** A venue as forms show it and read it back: pages of fields, a new venue from a first form, and the check of its facts at each field. */
export { BEGINNING, venueBegun, withRoom } from "./begin";
export { fieldOf, type Amiss, type Field, type Option, type Part, type Shown, type Typed } from "./form";
export { saidLength, shownLength, typedLength } from "./lengths";
export { withoutRoom } from "./mirror";
export { cornersField, outlinesTyped } from "./plan";
export { factsAmiss, factsAt, partsOf, roomTyped, SECTIONS, SECTION_TITLES, venueTyped, type Place, type SectionId } from "./sections";
export { wallName } from "./walls";
