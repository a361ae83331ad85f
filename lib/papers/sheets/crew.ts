import { squared } from "../../drawing";
import type { Drawing } from "../../drawing/display";
import type { Scene, SceneId } from "../../layout";
import { setLines } from "../blocks";
import { content, element, type Content, type Element } from "../document";
import type { Region } from "../flow";
import { wrap } from "../lines";
import { drawnFigure } from "../plans";
import { table, type RowSpec } from "../table";
import { baseline, words } from "../type";
import { list } from "../words";
import { besides, bringOut } from "./counts";
import { buildOrder } from "./order";
import { besidePlan, type Drawn, type Rest } from "./beside";
import { bodyOf, columns, HEAD, headOf, section, type Desk, type Part, type Setup } from "./page";
import { spotsOf, type RoomSpots, type SpotRow } from "./spots";
import { CARRIED } from "./style";
import { fresh, partName, roomName, timeOf, type Told } from "./told";

/** Draws the plan of some rooms into a part of a page. */
export type PlanTool = (scene: SceneId, into: { readonly rooms: readonly string[]; readonly width: number; readonly height: number; readonly measured?: string; readonly marked?: readonly string[]; readonly from?: number }) => Drawing;

/** Rooms with something to set, the fullest first. */
export function roomsToSet(scene: Scene, told: Told): readonly string[] {
  const set = fresh(scene, told);
  const weight = (room: string): number => set.filter((i) => i.room === room).reduce((n, i) => n + 1 + i.seats.length, 0);
  return scene.rooms.filter((r) => weight(r) > 0).sort((a, b) => weight(b) - weight(a));
}

export function countsTable(scene: Scene, told: Told, to: Desk): Element {
  const counts = bringOut(scene, told);
  // Where all goes to one room, the sheet's head has named it.
  const rooms = new Set(counts.map((c) => c.where).filter(Boolean));
  const where = rooms.size > 1;
  const rows = counts.map((c): RowSpec => ({
    cells: [{ text: String(c.n), style: CARRIED.count }, { text: c.name, style: CARRIED.strong, ...(c.under === "" ? {} : { under: c.under, underStyle: CARRIED.second }) }, ...(where ? [{ text: c.where, style: CARRIED.second }] : [])],
  }));
  const wide = 2.5 + Math.max(to.measure("Count", CARRIED.head.font, CARRIED.head.size), ...rows.map((r) => 1.5 + to.measure(r.cells[0]?.text ?? "", CARRIED.count.font, CARRIED.count.size)));
  return table({ columns: [{ title: "Count", width: wide }, { title: "What" }, ...(where ? [{ title: "Where", width: 29 }] : [])], rows, head: CARRIED.head, pad: 0.4 }, to);
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
const { spot, spotName, head: headStyle } = CARRIED;

/** Columns of figures as wide as their widest, the name takes what is left. */
const wideOf = (head: string, texts: readonly string[], to: Pick<Desk, "measure">): number =>
  4.1 + Math.max(to.measure(head, headStyle.font, headStyle.size), ...texts.map((t) => to.measure(t, spot.font, spot.size)));

function spotTable({ title, rows }: SpotTable, to: Desk): Element {
  const columnsOf = [
    { title }, { title: "Across", width: wideOf("Across", rows.map((r) => r.across), to), align: "end" }, { title: "Down", width: wideOf("Down", rows.map((r) => r.down), to), align: "end" },
  ] as const;
  const cells = rows.map((r): RowSpec => ({ cells: [{ text: r.name, style: spotName }, { text: r.across, style: spot }, { text: r.down, style: spot }] }));
  return table({ columns: columnsOf, rows: cells, head: headStyle, pad: 0.25 }, to);
}

/** How the distances are to be read: from what, and whether the plan was turned to lie square with its room. */
function howRead(spots: readonly RoomSpots[], turned: number): string {
  const corner = `from the marked corner of ${spots.length > 1 ? "its" : "the"} room`;
  const from = spots.every((s) => s.marked) ? corner : spots.some((s) => s.marked) ? `${corner}; where none is marked, from the walls named` : "from the walls named";
  const rows = spots.some((s) => s.rows.length > 0) ? " Of rows: the first and the last chair; rows told together stand evenly." : "";
  return `Middle of each piece ${from}.${rows}${turned === 0 ? "" : ` The plan is turned by ${Math.abs(Math.round(turned))}°, square with the room.`}`;
}

/** A part of the rows of some tables that follow one another. */
function partOf(tables: readonly SpotTable[], { from, to }: { readonly from: number; readonly to: number }): readonly SpotTable[] {
  let at = 0;
  return tables.flatMap((t): readonly SpotTable[] => {
    const start = at;
    at += t.rows.length;
    const rows = t.rows.slice(Math.max(0, from - start), Math.max(0, to - start));
    return rows.length > 0 ? [{ ...t, rows }] : [];
  });
}

/** Heading and words on one line. */
function lineAcross(says: string, to: Desk): readonly Element[] {
  const title = "Where it stands";
  const lead = to.measure(title, CARRIED.strong.font, CARRIED.strong.size) + 3;
  const lines = wrap(says, { style: CARRIED.second, width: to.flow.width() - lead, measure: to.measure });
  const spot = to.flow.take(CARRIED.strong.leading + (lines.length - 1) * CARRIED.second.leading);
  const y = baseline(spot.y, CARRIED.strong);
  const set = lines.map((l, i) => content(spot.page, [words(l, [spot.x + lead, y + i * CARRIED.second.leading], CARRIED.second)]));
  return [element("H3", [content(spot.page, [words(title, [spot.x, y], CARRIED.strong)])]), element("P", set)];
}

/** Where each piece of a part of the day stands, as tables by room. */
function whereOf(scene: Scene, told: Told, by: { readonly main: string | undefined; readonly measure: Desk["measure"] }): Rest | undefined {
  const spots = spotsOf(scene, told, by.main);
  if (spots.length === 0) return undefined;
  const tables = spots.flatMap(({ room, pieces, rows }): readonly SpotTable[] => {
    const named = spots.length > 1;
    return [
      ...(pieces.length > 0 ? [{ title: named ? room.name : "Piece", rows: pieces }] : []),
      ...(rows.length > 0 ? [{ title: named ? `${room.name}, rows` : "Rows: chairs", rows }] : []),
    ];
  });
  const wide = (t: SpotTable): number => Math.max(by.measure(t.title, headStyle.font, headStyle.size), ...t.rows.map((r) => by.measure(r.name, spotName.font, spotName.size)))
    + 4.2 + wideOf("Across", t.rows.map((r) => r.across), by) + wideOf("Down", t.rows.map((r) => r.down), by);
  const says = howRead(spots, squared(told.venue, scene, by.main).by);
  return {
    column: Math.max(...tables.map(wide)), rows: tables.reduce((n, t) => n + t.rows.length, 0),
    line: (to, across = false) => {
      if (across) return lineAcross(says, to);
      to.flow.gap(4);
      const lines = wrap(says, { style: CARRIED.second, width: to.flow.width(), measure: to.measure });
      return [section("Where it stands", to, 24), element("P", setLines(lines, CARRIED.second, to))];
    },
    list: (to, part) => partOf(tables, part).map((t) => { to.flow.gap(2.4); return spotTable(t, to); }),
  };
}

type Panels = { readonly rooms: readonly string[]; readonly into: Region; readonly plan: PlanTool; /** Rooms that distances are told of, from a corner. */ readonly marked: readonly string[] };

/** Rooms that lie far apart are drawn one under or beside another, where that lets them be drawn larger than on one plan. */
function plansOf(scene: SceneId, { rooms, into, plan, marked }: Panels): Drawn {
  const draw = (ids: readonly string[], region: Region, from = 0): { readonly perMetre: number; readonly figure: Element } => {
    const drawing = plan(scene, { rooms: ids, width: region.width, height: region.height, marked, from, ...(ids[0] ? { measured: ids[0] } : {}) });
    return { perMetre: drawing.perMetre, figure: drawnFigure(drawing, region) };
  };
  const whole = draw(rooms, into);
  const one: Drawn = { perMetre: whole.perMetre, figures: [whole.figure] };
  if (rooms.length < 2 || rooms.length > 3 || whole.perMetre >= 8) return one;
  const gap = 5, n = rooms.length;
  const under = (i: number): Region => ({ ...into, height: (into.height - gap * (n - 1)) / n, y: into.y + i * ((into.height - gap * (n - 1)) / n + gap) });
  const beside = (i: number): Region => ({ ...into, width: (into.width - gap * (n - 1)) / n, x: into.x + i * ((into.width - gap * (n - 1)) / n + gap) });
  const tries = [under, beside].map((part) => ({ part, least: Math.min(...rooms.map((room, i) => draw([room], part(i)).perMetre)) }));
  const best = tries.sort((a, b) => b.least - a.least)[0];
  if (!best || best.least <= whole.perMetre * 1.2) return one;
  // All at the scale that the largest of them needs: side by side a small room shall not look like a large one.
  const ratio = Math.round(1000 / best.least);
  return { perMetre: best.least, figures: rooms.map((room, i) => draw([room], best.part(i), ratio).figure) };
}

/** What the crew are told first: what to bring out, and in which order it is built. */
function sayCrew(scene: Scene, told: Told, to: Desk): readonly Element[] {
  const first = [section("Bring out", to), countsTable(scene, told, to), ...notes(besides(scene, told), to)];
  to.flow.gap(4);
  // The order of building is read in one go: it stands whole, here or in the next column.
  const said = buildOrder(scene, told);
  if (stepsHeight(said, to) + CARRIED.section.leading > to.flow.left()) to.flow.turn();
  return [...first, section("Build in this order", to), steps(said, to)];
}

/** The crew's sheet for one part of the day: plan with its distances, counts first, the order of building; then where each piece stands. */
export function crewPart(scene: Scene, told: Told, by: Setup & { readonly from: number; readonly plan: PlanTool }): Part {
  const { from, plan } = by;
  const rooms = roomsToSet(scene, told);
  const shown = rooms.length > 0 ? rooms : scene.rooms;
  const at = timeOf(scene.id, told);
  const beside = [list(shown.map((r) => roomName(r, told.venue))), at ? `guests from ${at}` : ""].filter(Boolean).join("; ");
  const title = `Crew: ${partName(scene).toLowerCase()}`;
  const head = headOf(from, { title, beside }, by);
  const marked = spotsOf(scene, told, shown[0]).filter((s) => s.marked).map((s) => s.room.id);
  const draw = (into: Region): Drawn => plansOf(scene.id, { rooms: shown, into, plan, marked });
  if (rooms.length === 0) return nothingSet(scene, { title, head, draw, by });
  const rest = whereOf(scene, told, { main: shown[0], measure: by.measure });
  const { figures, said, artifacts, pages } = besidePlan(from, by, { draw, first: (to) => sayCrew(scene, told, to), ...(rest ? { rest } : {}) });
  return { title, from, pages, elements: [element("Sect", [head, ...figures, ...said])], artifacts };
}

type Empty = { readonly title: string; readonly head: Element; readonly draw: (into: Region) => Drawn; readonly by: Setup & { readonly from: number } };

/** All stands from the part before: the plan has the page to itself. */
function nothingSet(scene: Scene, { title, head, draw, by }: Empty): Part {
  const { from } = by;
  const body = bodyOf(from, by.sheet);
  const to = columns(from, by, { first: [{ ...body, y: body.y + HEAD, height: body.height - HEAD }], count: 3 });
  const says = `Nothing is set for the ${partName(scene).toLowerCase()}: all that it needs stands from the part before.`;
  const said = element("P", setLines(wrap(says, { style: CARRIED.strong, width: to.flow.width(), measure: to.measure }), CARRIED.strong, to));
  const down = HEAD + CARRIED.strong.leading + 3;
  const { figures } = draw({ ...body, y: body.y + down, height: body.height - down });
  return { title, from, pages: 1, elements: [element("Sect", [head, said, ...figures])], artifacts: to.artifacts };
}
