import type { Item, SceneId } from "../../layout";

/** A chair of the ceremony's rows, or a wheelchair's space, as it stands in a part of the day: after the ceremony it is furniture and no place. */
export const rowPieceIn = (scene: SceneId, item: Item): Item =>
  scene !== "ceremony" && (item.role === "row-seat" || item.role === "wheelchair-space") ? { ...item, seats: [] } : item;
