/** A layout under the hand: deeds as data, each of which can be taken back; walls and snapping along the room's own axes. */
export * from "./types";
export { editSchema } from "./schema";
export { beginWork, perform, performMend, redo, undo } from "./log";
export { applyEdit, isFixed, nudged, pieceOf } from "./edit";
export { additionsOf, type Brought, type Offer } from "./additions";
export { frameOf, intoFrame, isWall, nearWalls, outOfFrame, spotByWalls, wallGap, WALLS, type FromWall, type Wall } from "./walls";
export { snap, stringsOf, type Hint, type Snapped, type DimensionString } from "./snap";
export { carried, runOf } from "./run";
export { roomNow } from "./room-now";
export { nameOf, sayTurn, sayWalls } from "./say";
export { viewOfWork, type HandView } from "./view";
