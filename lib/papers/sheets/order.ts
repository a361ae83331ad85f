import { numbersOf } from "../../drawing";
import type { Item, Scene } from "../../layout";
import type { Point } from "../../geometry";
import { capital, counted, list } from "../words";
import { numberRuns } from "../places";
import { bringOut } from "./counts";
import { fresh, roomName, type Told } from "./told";

const far = (a: Point, b: Point): number => Math.hypot(a[0] - b[0], a[1] - b[1]);

/** The door that things come in by: a service door, or else the widest. */
function wayIn(room: string, { venue }: Told): Point | undefined {
  const doors = venue.rooms.find((r) => r.id === room)?.doors ?? [];
  const best = [...doors].sort((a, b) => Number(b.for.includes("service")) - Number(a.for.includes("service")) || far(b.from, b.to) - far(a.from, a.to))[0];
  return best && [(best.from[0] + best.to[0]) / 2, (best.from[1] + best.to[1]) / 2];
}

/** Pieces from the far end of the room towards the door they come in by, so that nothing set is in the way of the next. */
function inward(items: readonly Item[], told: Told): readonly Item[] {
  const distance = (i: Item): number => { const door = wayIn(i.room, told); return door ? far(i.at, door) : 0; };
  return [...items].sort((a, b) => distance(b) - distance(a) || (a.id < b.id ? -1 : 1));
}

/** Numbers in the order of setting: runs where they follow one another, else one by one. */
const numbersInOrder = (labels: readonly string[]): string => labels.join(", ");

/** As within a sentence; what is all capitals stays so (DJ). */
const within = (label: string): string => (label === label.toUpperCase() ? label : label.charAt(0).toLowerCase() + label.slice(1));
const naming = (items: readonly Item[]): string => list([...new Set(items.map((i) => within(i.label)))]);

/** The order in which a part of the day is built: common practice, no source. */
export function buildOrder(scene: Scene, told: Told): readonly string[] {
  const set = fresh(scene, told);
  const carry = bringOut(scene, told).flatMap((c) => { const piece = /^(?:Carry out|Move): (.*)$/.exec(c.name)?.[1]; return piece ? [within(piece)] : []; });
  const floors = set.filter((i) => i.kind === "dance-floor" || i.role === "stage");
  const big = set.filter((i) => ["bar", "band", "dj", "buffet", "photo-booth", "backdrop", "arch", "screen", "lounge"].includes(i.kind));
  // Tables that are joined bear one number.
  const numbers = numbersOf(scene);
  const numbered = set.filter((i) => i.kind === "table" && numbers.has(i.id));
  const tables = set.filter((i) => i.kind === "table" && !numbers.has(i.id));
  const high = set.filter((i) => i.kind === "cocktail-table");
  const rows = set.filter((i) => i.kind === "chair");
  const seated = set.some((i) => i.kind === "table" && i.seats.length > 0);
  const rest = set.filter((i) => i.kind === "easel" || (i.kind === "other" && i.role !== "wheelchair-space"));
  const ways = told.venue.rooms.filter((r) => scene.rooms.includes(r.id)).reduce((n, r) => n + r.doors.filter((d) => d.exit).length, 0);
  const order = inward(numbered, told).map((i) => numbers.get(i.id) ?? i.label);
  return [
    ...(carry.length > 0 ? [`Carry out or move ${list(carry)}.`] : []),
    ...(floors.length > 0 ? [`Lay the ${naming(floors)} in ${roomName(floors[0]?.room ?? "", told.venue)}.`] : []),
    ...(big.length > 0 ? [`${capital(naming(inward(big, told)))}, the large pieces first.`] : []),
    ...(numbered.length > 0 ? [`Tables, from the far end to the door: ${numbersInOrder([...new Set(order)])}.`] : []),
    ...(tables.length > 0 ? [`${capital(naming(inward(tables, told)))}.`] : []),
    ...(high.length > 0 ? [`${counted(high.length, "high table", "high tables")}.`] : []),
    ...(rows.length > 0 ? [`Chair rows, the front row first: ${rows.length} chairs.`] : []),
    ...(seated ? ["Chairs to the tables, table by table."] : []),
    ...(numbered.length > 0 ? [`Cloths and places; table numbers ${numberRuns([...new Set(order.map(Number).filter((n) => n > 0))])}.`] : []),
    ...(rest.length > 0 ? [`${capital(naming(rest))}.`] : []),
    ways === 0 ? "Last, walk through the doors of these rooms: nothing stands in the floor inside." : `Last, walk to ${ways === 1 ? "the way out" : `each of the ${ways} ways out`} of these rooms: nothing stands in the floor inside.`,
  ];
}
