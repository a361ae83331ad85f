import { add, clearance, polygonShape, segmentClearance, turn, type Segment } from "../geometry";
import { depthOf, isRound, widthOf, type Item } from "../layout";
import { placed, type Raw, type SceneView } from "./context";
import { wallsNear } from "./facing";
import { near } from "./near";
import { beforeFront } from "./ways";

/** Floor before a bar or a buffet for those who wait, one file of them: 4 ft, UFC 4-722-01 (2003, withdrawn), 5-5; mm. */
const LANE = 1220;
/** What stands a millimetre beside the lane is not in it. */
const HAIR = 1;

const isBuffet = (i: Item): boolean => i.kind === "buffet" || (i.kind === "table" && i.role === "buffet");
const isServed = (i: Item): boolean => (i.kind === "bar" || isBuffet(i)) && !isRound(i.shape);

/**
 * The floor before a bar or a buffet on which guests wait: nothing stands or dances there. Its front is the long side that it turns to
 * the room. A wall before a bar where the venue keeps it is the venue's matter, and the tables of one buffet stand beside each other. A
 * buffet is judged at the meal, a bar from the drinks on.
 */
export function queue(v: SceneView): readonly Raw[] {
  const served = (i: Item): boolean => isServed(i) && (i.kind === "bar" ? v.scene.id !== "ceremony" : v.scene.id === "meal");
  return v.scene.items.filter(served).flatMap((item): readonly Raw[] => {
    const edge = polygonShape(beforeFront(item, [-HAIR, 0], HAIR)), lane = polygonShape(beforeFront(item, [HAIR, LANE], HAIR));
    const inLane = near(v, lane.box).filter((p) => inTheWay(v, item, p.item) && clearance(p.slim, lane) < 0)
      .map((p) => ({ gap: Math.max(0, clearance(p.shape, edge)), by: p.item.id }));
    const walls = usual(v, item) ? [] : built(v, item).filter((s) => segmentClearance(lane, s) <= 0).map((s) => ({ gap: segmentClearance(edge, s), by: null }));
    const nearest = [...inLane, ...walls].sort((a, b) => a.gap - b.gap)[0];
    if (!nearest || nearest.gap >= LANE - HAIR) return [];
    const gap = Math.round(nearest.gap);
    return [{
      code: "queue", level: "should", source: "UFC 4-722-01 (2003), 5-5", scene: v.scene.id, items: nearest.by === null ? [item.id] : [item.id, nearest.by],
      at: placed(add(item.at, turn([0, (depthOf(item.shape) + gap) / 2], item.angle))), measured: gap, limit: LANE, unit: "mm", data: { a: item.id, ...(nearest.by === null ? {} : { b: nearest.by }), gap, limit: LANE },
    }];
  });
}

/** Not a buffet's own next table; and a dance floor is floor like any until people dance on it. */
const inTheWay = (v: SceneView, item: Item, other: Item): boolean =>
  other !== item && other.room === item.room && !(isBuffet(item) && isBuffet(other)) && (other.kind !== "dance-floor" || v.scene.id === "dancing");

/** True for a piece that stands where the venue keeps it. */
function usual(v: SceneView, item: Item): boolean {
  if (!("standing" in item.from)) return false;
  const id = item.from.standing, own = v.site.rooms.get(item.room)?.room.standing.find((s) => s.id === id);
  return own !== undefined && own.at[0] === item.at[0] && own.at[1] === item.at[1] && own.angle === item.angle;
}

function built(v: SceneView, item: Item): readonly Segment[] {
  const room = v.site.rooms.get(item.room);
  if (!room) return [];
  const r = LANE + Math.max(widthOf(item.shape), depthOf(item.shape)), box = { minX: item.at[0] - r, maxX: item.at[0] + r, minY: item.at[1] - r, maxY: item.at[1] + r };
  return [...wallsNear(room, box, 0), ...room.room.obstacles.flatMap((o) => o.outline.map((p, k): Segment => [p, o.outline[(k + 1) % o.outline.length] ?? p]))];
}
