import { datumOf } from "../../drawing";
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
import { spotsOf, type SpotRow } from "./spots";
import { CARRIED } from "./style";
import { fresh, partName, roomName, timeOf, type Told } from "./told";

/** Draws the plan of some rooms into a part of a page. */
export type PlanTool = (scene: SceneId, into: { readonly rooms: readonly string[]; readonly width: number; readonly height: number; readonly measured?: string }) => Drawing;

/** Letter is the narrower sheet: there the plan takes what the words can spare. */
const sideOf = (width: number): number => (width > 290 ? 96 : 86);
const GUTTER = 7;

/** The plan at the left of a page, under its heading; what is said stands at its right. */
export function planRegions(page: number, setup: Setup): { readonly plan: Region; readonly side: Region } {
  const body = bodyOf(page, setup.sheet);
  const side = sideOf(setup.sheet.width);
  const plan = { ...body, y: body.y + HEAD, width: body.width - side - GUTTER, height: body.height - HEAD };
  return { plan, side: { ...plan, x: body.x + body.width - side, width: side } };
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
  const wide = 2.5 + Math.max(to.measure("Count", CARRIED.head.font, CARRIED.head.size), ...rows.map((r) => 1.5 + to.measure(r.cells[0]?.text ?? "", CARRIED.count.font, CARRIED.count.size)));
  return table({ columns: [{ title: "Count", width: wide }, { title: "What" }, { title: "Where", width: 29 }], rows, head: CARRIED.head, pad: 0.7 }, to);
}

const INDENT = 7;

const stepsHeight = (said: readonly string[], to: Desk): number => said.reduce((sum, text) =>
  sum + 1 + wrap(text, { style: CARRIED.body, width: to.flow.width() - INDENT, measure: to.measure }).length * CARRIED.body.leading, 0);

/** Steps with their numbers, as a list. */
export function steps(said: readonly string[], to: Desk): Element {
  const indent = INDENT;
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

type SpotTable = { readonly title: string; readonly rows: readonly SpotRow[] };

function spotTable({ title, rows }: SpotTable, to: Desk): Element {
  const turned = rows.some((r) => r.turned !== "");
  const wide = (texts: readonly string[]): number => 4.5 + Math.max(...["Across", ...texts].map((t) => to.measure(t, CARRIED.body.font, CARRIED.body.size)));
  const columnsOf = [
    { title }, { title: "Across", width: wide(rows.map((r) => r.across)), align: "end" }, { title: "Down", width: wide(rows.map((r) => r.down)), align: "end" },
    ...(turned ? [{ title: "Turn", width: 15, align: "end" } as const] : []),
  ] as const;
  const cells = rows.map((r): RowSpec => ({ cells: [{ text: r.name, style: CARRIED.strong }, { text: r.across, style: CARRIED.body }, { text: r.down, style: CARRIED.body }, ...(turned ? [{ text: r.turned, style: CARRIED.body }] : [])] }));
  return table({ columns: columnsOf, rows: cells, head: CARRIED.head, pad: 0.55 }, to);
}

function spotTables(scene: Scene, told: Told, to: Desk): readonly Element[] {
  return spotsOf(scene, told).flatMap(({ room, pieces, rows, from }, i) => {
    to.flow.gap(i === 0 ? 3 : 7);
    const head = section(room.name, to, 24);
    const says = element("P", setLines(wrap(`Middle of each piece, ${from}.`, { style: CARRIED.second, width: to.flow.width(), measure: to.measure }), CARRIED.second, to));
    const first = pieces.length > 0 ? [spotTable({ title: "Piece", rows: pieces }, to)] : [];
    to.flow.gap(4);
    return [head, says, ...first, ...(rows.length > 0 ? [spotTable({ title: "Row: chairs", rows }, to)] : [])];
  });
}

type Panels = { readonly rooms: readonly string[]; readonly into: Region; readonly plan: PlanTool };

/** Rooms that lie far apart are drawn one under or beside another, where that lets them be drawn larger than on one plan. */
function plansOf(scene: SceneId, { rooms, into, plan }: Panels): readonly Element[] {
  const draw = (ids: readonly string[], region: Region): { readonly perMetre: number; readonly figure: Element } => {
    const drawing = plan(scene, { rooms: ids, width: region.width, height: region.height, ...(ids[0] ? { measured: ids[0] } : {}) });
    return { perMetre: drawing.perMetre, figure: drawnFigure(drawing, region) };
  };
  const whole = draw(rooms, into);
  if (rooms.length < 2 || rooms.length > 3 || whole.perMetre >= 8) return [whole.figure];
  const gap = 5, n = rooms.length;
  const under = (i: number): Region => ({ ...into, height: (into.height - gap * (n - 1)) / n, y: into.y + i * ((into.height - gap * (n - 1)) / n + gap) });
  const beside = (i: number): Region => ({ ...into, width: (into.width - gap * (n - 1)) / n, x: into.x + i * ((into.width - gap * (n - 1)) / n + gap) });
  const tries = [under, beside].map((part) => rooms.map((room, i) => draw([room], part(i))));
  const best = tries.map((all) => ({ all, least: Math.min(...all.map((d) => d.perMetre)) })).sort((a, b) => b.least - a.least)[0];
  return best && best.least > whole.perMetre * 1.2 ? best.all.map((d) => d.figure) : [whole.figure];
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
  const figures = plansOf(scene.id, { rooms: shown, into: regions.plan, plan });
  if (rooms.length === 0) {
    const said = element("P", setLines(wrap("Nothing is set for this part of the day: all that it needs stands from the part before.", { style: CARRIED.body, width: to.flow.width(), measure: to.measure }), CARRIED.body, to));
    return { title, from, pages: 1, elements: [element("Sect", [head, ...figures, said])], artifacts: to.artifacts };
  }
  const first = [section("Bring out", to), countsTable(scene, told, to), ...notes(besides(scene, told), to)];
  to.flow.gap(5);
  // The order of building is read in one go: it stands whole, here or on the next page.
  const said = buildOrder(scene, told);
  if (stepsHeight(said, to) + CARRIED.section.leading > to.flow.left()) to.flow.turn();
  const order = [section("Build in this order", to), steps(said, to)];
  const marked = told.venue.rooms.some((r) => r.id === shown[0] && datumOf(r) !== null);
  const how = marked ? ["On the plan: distances from the marked corner to the middle of each piece, and to the line and the ends of chair rows."] : [];
  const spots = [...notes(how, to), ...spotTables(scene, told, to)];
  const pages = 1 + Math.ceil(Math.max(0, to.flow.region()) / 3);
  return { title, from, pages, elements: [element("Sect", [head, ...figures, ...first, ...order, ...spots])], artifacts: to.artifacts };
}
