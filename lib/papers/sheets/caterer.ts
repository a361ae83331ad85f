import type { Item, Scene } from "../../layout";
import type { Point } from "../../geometry";
import { element, type Element } from "../document";
import { setLines } from "../blocks";
import { wrap } from "../lines";
import { laidTables, numberRuns, tableWords } from "../places";
import { drawnFigure } from "../plans";
import { table, type RowSpec } from "../table";
import { counted, list, SERVICE } from "../words";
import type { Region } from "../flow";
import { besidePlan, type Drawn } from "./beside";
import type { PlanTool } from "./crew";
import { headOf, section, type Desk, type Part, type Setup } from "./page";
import { CARRIED } from "./style";
import { lengthOf, roomName, timeOf, type Told } from "./told";
import { straightWalk } from "./walk";

type Source = { readonly name: string; readonly room: string; readonly at: Point };

/** Where the food comes from: the buffet, a room for plating, or the door to the back of the house. */
export function sourcesOf(scene: Scene, { venue, brief }: Told): readonly Source[] {
  const buffets = scene.items.filter((i) => i.kind === "buffet" || i.role === "buffet" || i.role === "appetisers");
  if (buffets.length > 0) return buffets.map((b) => ({ name: b.label, room: b.room, at: b.at }));
  const plating = venue.rooms.find((r) => r.uses.includes("plating") && (venue.packages.find((p) => p.id === brief.package)?.rooms ?? []).includes(r.id));
  if (plating) {
    const mean = (k: 0 | 1): number => plating.outline.reduce((s, p) => s + p[k], 0) / plating.outline.length;
    return [{ name: plating.name, room: plating.id, at: [mean(0), mean(1)] }];
  }
  return venue.rooms.flatMap((r) => r.doors.filter((d) => d.leads === "back-of-house").map((d): Source => (
    { name: `the door to the back of the house, ${r.name}`, room: r.id, at: [(d.from[0] + d.to[0]) / 2, (d.from[1] + d.to[1]) / 2] }))).slice(0, 1);
}

/** The nearest and the farthest table from where the food comes from. */
function walkWords(scene: Scene, told: Told): readonly string[] {
  const laid = laidTables(scene);
  const name = (items: readonly Item[], number: number): string => (number > 0 ? `table ${number}` : `the table “${items[0]?.label ?? ""}”`);
  return sourcesOf(scene, told).flatMap((source) => {
    const walks = laid.flatMap(({ items, number }) => {
      const d = straightWalk(told.venue, source, { room: items[0].room, at: items[0].at });
      return d === null ? [] : [{ d, name: name(items, number) }];
    }).sort((a, b) => a.d - b.d);
    const [near, far] = [walks[0], walks.at(-1)];
    return near && far ? [`From ${source.name}: ${lengthOf(near.d, told.venue)} to ${near.name}, ${lengthOf(far.d, told.venue)} to ${far.name}, walked straight through the doors.`] : [];
  });
}

function tableRows(scene: Scene, told: Told): readonly RowSpec[] {
  const rows = laidTables(scene).map((laid) => {
    const seats = laid.items.flatMap((i) => i.seats);
    const wheelchairs = seats.filter((s) => s.place === "wheelchair").length;
    const who = laid.items[0].role === "top" ? "the couple's" : laid.items[0].role === "children" ? "the children's" : "";
    const remarks = [who, wheelchairs > 0 ? counted(wheelchairs, "wheelchair place", "wheelchair places") : "", ...laid.items.flatMap((i) => (i.note ? [i.note] : []))].filter(Boolean).join("; ");
    return { laid, seats: seats.length, remarks, words: tableWords(laid, told.venue) };
  });
  const groups = new Map<string, { numbers: number[]; names: string[]; row: (typeof rows)[number] }>();
  for (const row of rows) {
    const key = JSON.stringify([row.words, row.seats, row.remarks]);
    const known = groups.get(key) ?? { numbers: [], names: [], row };
    if (row.laid.number > 0) known.numbers.push(row.laid.number); else known.names.push(row.laid.items[0].label);
    groups.set(key, known);
  }
  const total = rows.reduce((n, r) => n + r.seats, 0);
  return [
    ...[...groups.values()].map(({ numbers, names, row }): RowSpec => ({
      cells: [{ text: [numberRuns(numbers), list(names)].filter(Boolean).join("; "), style: CARRIED.strong }, { text: numbers.length + names.length > 1 ? `${row.words}; ${row.seats}\u00a0each` : row.words, style: CARRIED.body, ...(row.remarks === "" ? {} : { under: row.remarks, underStyle: CARRIED.second }) }, { text: String(row.seats * (numbers.length + names.length)), style: CARRIED.strong }],
    })),
    { sum: true, cells: [{ text: "All", style: CARRIED.strong }, { text: "", style: CARRIED.body }, { text: String(total), style: CARRIED.strong }] },
  ];
}

/** Heads to feed, in the order that a kitchen asks. */
function heads({ brief }: Told, scene: Scene): readonly string[] {
  const g = brief.guests;
  const work = scene.items.filter((i) => i.role === "work").reduce((n, i) => n + i.seats.length, 0);
  return [
    `${g.adults} adults${g.children > 0 ? ` and ${counted(g.children, "child", "children")}` : ""}: ${g.adults + g.children} guests.`,
    ...(g.highChairs > 0 ? [`${counted(g.highChairs, "high chair", "high chairs")}, each in a chair's place.`] : []),
    ...(g.wheelchairs > 0 ? [`${counted(g.wheelchairs, "guest", "guests")} in ${g.wheelchairs === 1 ? "a wheelchair" : "wheelchairs"}.`] : []),
    ...(g.suppliers > 0 ? [`${counted(g.suppliers, "supplier eats", "suppliers eat")} too${work > 0 ? `, ${work} of them at a table of their own` : ""}.`] : []),
  ];
}

const para = (text: string, to: Desk): Element => {
  to.flow.gap(0.8);
  return element("P", setLines(wrap(text, { style: CARRIED.body, width: to.flow.width(), measure: to.measure }), CARRIED.body, to));
};

/** The caterer's sheet: heads, tables and places, buffet, the way that plates go. */
export function catererPart(scene: Scene, told: Told, by: Setup & { readonly from: number; readonly plan: PlanTool }): Part {
  const { from, plan } = by;
  const sources = sourcesOf(scene, told);
  const tables = laidTables(scene).flatMap((l) => l.items.map((i) => i.room));
  const rooms = [...new Set([...tables, ...sources.map((s) => s.room)])];
  const at = timeOf("meal", told);
  const title = "Caterer";
  const head = headOf(from, { title, beside: [SERVICE[told.brief.meal.service], at ? `meal at ${at}` : ""].filter(Boolean).join("; ") }, by);
  const draw = (into: Region): Drawn => { const drawing = plan(scene.id, { rooms, width: into.width, height: into.height }); return { perMetre: drawing.perMetre, figures: [drawnFigure(drawing, into)] }; };
  const { figures, said, artifacts, pages } = besidePlan(from, by, { draw, first: (desk) => sayCaterer(scene, told, desk) });
  return { title, from, pages, elements: [element("Sect", [head, ...figures, ...said])], artifacts };
}

function sayCaterer(scene: Scene, told: Told, to: Desk): readonly Element[] {
  const eaters = [section("To feed", to), ...heads(told, scene).map((t) => para(t, to))];
  to.flow.gap(3);
  const rows = tableRows(scene, told);
  const places = [section("Tables and places", to), table({ columns: [{ title: "No.", width: 4.5 + Math.max(...rows.map((r) => Math.min(34, to.measure(r.cells[0]?.text ?? "", CARRIED.strong.font, CARRIED.strong.size)))) }, { title: "Table" }, { title: "Places", width: 15, align: "end" }], rows, head: CARRIED.head, pad: 0.4 }, to)];
  to.flow.gap(3);
  const lines = scene.items.filter((i) => i.kind === "buffet" || i.role === "buffet").map((i) => `${i.label} in ${roomName(i.room, told.venue)}: ${"diameter" in i.shape ? lengthOf(i.shape.diameter, told.venue) : `${lengthOf(i.shape.width, told.venue)} long, ${lengthOf(i.shape.depth, told.venue)} deep`}.`);
  const served = [...lines, ...walkWords(scene, told)];
  return [...eaters, ...places, ...(served.length > 0 ? [section("Serving", to, 10), ...served.map((t) => para(t, to))] : [])];
}
