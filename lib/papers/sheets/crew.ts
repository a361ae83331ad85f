import type { Drawing } from "../../drawing/display";
import type { Scene, SceneId } from "../../layout";
import { setLines } from "../blocks";
import { content, element, type Content, type Element } from "../document";
import type { Region } from "../flow";
import { wrap } from "../lines";
import { drawnFigure } from "../plans";
import { table, type RowSpec } from "../table";
import { words } from "../type";
import { list } from "../words";
import { besides, bringOut } from "./counts";
import { buildOrder } from "./order";
import { bodyOf, columns, HEAD, headOf, section, type Desk, type Part, type Setup } from "./page";
import { spotsOf } from "./spots";
import { CARRIED } from "./style";
import { fresh, partName, roomName, timeOf, type Told } from "./told";

/** Draws the plan of some rooms into a part of a page. */
export type PlanTool = (scene: SceneId, into: { readonly rooms: readonly string[]; readonly width: number; readonly height: number; readonly measured?: string }) => Drawing;

export const SIDE = 88;
const GUTTER = 7;

/** The plan at the left of a page, under its heading; what is said stands at its right. */
export function planRegions(page: number, setup: Setup): { readonly plan: Region; readonly side: Region } {
  const body = bodyOf(page, setup.sheet);
  const plan = { ...body, y: body.y + HEAD, width: body.width - SIDE - GUTTER, height: body.height - HEAD };
  return { plan, side: { ...plan, x: body.x + body.width - SIDE, width: SIDE } };
}

/** Rooms with something to set, the fullest first. */
export function roomsToSet(scene: Scene, told: Told): readonly string[] {
  const set = fresh(scene, told);
  const weight = (room: string): number => set.filter((i) => i.room === room).reduce((n, i) => n + 1 + i.seats.length, 0);
  return scene.rooms.filter((r) => weight(r) > 0).sort((a, b) => weight(b) - weight(a));
}

export function countsTable(scene: Scene, told: Told, to: Desk): Element {
  const rows = bringOut(scene, told).map((c): RowSpec => ({
    cells: [{ text: String(c.n), style: CARRIED.count }, { text: c.name, style: CARRIED.strong, ...(c.under === "" ? {} : { under: c.under, underStyle: CARRIED.second }) }, { text: c.where, style: CARRIED.second }],
  }));
  return table({ columns: [{ title: "Count", width: 14 }, { title: "What" }, { title: "Where", width: 31 }], rows, head: CARRIED.head, pad: 0.7 }, to);
}

/** Steps with their numbers, as a list. */
export function steps(said: readonly string[], to: Desk): Element {
  const indent = 7;
  return element("L", said.map((text, i) => {
    to.flow.gap(1);
    const s = CARRIED.body;
    const lines = wrap(text, { style: s, width: to.flow.width() - indent, measure: to.measure });
    const marks = setLines(lines, s, { ...to, indent });
    const first = marks[0];
    const mark = first?.marks[0];
    const number: readonly Content[] = first && mark?.kind === "text" ? [content(first.page, [words(String(i + 1), [mark.at[0] - indent, mark.at[1]], CARRIED.figure)])] : [];
    return element("LI", [element("Lbl", number), element("LBody", marks)]);
  }));
}

export const notes = (said: readonly string[], to: Desk): readonly Element[] => said.map((text) => {
  to.flow.gap(2.4);
  return element("P", setLines(wrap(text, { style: CARRIED.strong, width: to.flow.width(), measure: to.measure }), CARRIED.strong, to));
});

function spotTables(scene: Scene, told: Told, to: Desk): readonly Element[] {
  return spotsOf(scene, told).flatMap(({ room, rows, from }, i) => {
    to.flow.gap(i === 0 ? 3 : 7);
    const head = section(room.name, to, 24);
    const says = element("P", setLines(wrap(`Middle of each piece, ${from}.`, { style: CARRIED.second, width: to.flow.width(), measure: to.measure }), CARRIED.second, to));
    const turned = rows.some((r) => r.turned !== "");
    const wide = (texts: readonly string[]): number => 4.5 + Math.max(...["Across", ...texts].map((t) => to.measure(t, CARRIED.body.font, CARRIED.body.size)));
    const columnsOf = [
      { title: "Piece" }, { title: "Across", width: wide(rows.map((r) => r.across)), align: "end" }, { title: "Down", width: wide(rows.map((r) => r.down)), align: "end" },
      ...(turned ? [{ title: "Turn", width: 15, align: "end" } as const] : []),
    ] as const;
    const spec = rows.map((r): RowSpec => ({ cells: [{ text: r.name, style: CARRIED.strong }, { text: r.across, style: CARRIED.body }, { text: r.down, style: CARRIED.body }, ...(turned ? [{ text: r.turned, style: CARRIED.body }] : [])] }));
    return [head, says, table({ columns: columnsOf, rows: spec, head: CARRIED.head, pad: 0.55 }, to)];
  });
}

/** The crew's sheet for one part of the day: plan with its distances, counts first, the order of building; then where each piece stands. */
export function crewPart(scene: Scene, told: Told, by: Setup & { readonly from: number; readonly plan: PlanTool }): Part {
  const { from, plan } = by;
  const rooms = roomsToSet(scene, told);
  const shown = rooms.length > 0 ? rooms : scene.rooms;
  const at = timeOf(scene.id, told);
  const beside = [list(shown.map((r) => roomName(r, told.venue))), at ? `guests from ${at}` : ""].filter(Boolean).join("; ");
  const title = `Crew: ${partName(scene).toLowerCase()}`;
  const regions = planRegions(from, by);
  const to = columns(from, by, { first: [regions.side], count: 3 });
  const head = headOf(from, { title, beside }, by);
  const drawing = plan(scene.id, { rooms: shown, width: regions.plan.width, height: regions.plan.height, ...(shown[0] ? { measured: shown[0] } : {}) });
  const figure = drawnFigure(drawing, regions.plan);
  if (rooms.length === 0) {
    const said = element("P", setLines(wrap("Nothing is set for this part of the day: all that it needs stands from the part before.", { style: CARRIED.body, width: to.flow.width(), measure: to.measure }), CARRIED.body, to));
    return { title, from, pages: 1, elements: [element("Sect", [head, figure, said])], artifacts: to.artifacts };
  }
  const first = [section("Bring out", to), countsTable(scene, told, to), ...notes(besides(scene, told), to)];
  to.flow.gap(5);
  const order = [section("Build in this order", to), steps(buildOrder(scene, told), to)];
  const measured = told.venue.rooms.find((r) => r.id === shown[0])?.name;
  const how = `On the plan: distances in ${measured ?? "the room"} from the marked corner to the middle of each piece, and to the line and the ends of chair rows.`;
  const spots = [...notes([how], to), ...spotTables(scene, told, to)];
  const pages = 1 + Math.ceil(Math.max(0, to.flow.region()) / 3);
  return { title, from, pages, elements: [element("Sect", [head, figure, ...first, ...order, ...spots])], artifacts: to.artifacts };
}
