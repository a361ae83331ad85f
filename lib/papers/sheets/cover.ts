import { people } from "../../brief";
import { formatDay } from "../../measure";
import { paragraph, setLines } from "../blocks";
import { content, element, type Element } from "../document";
import { flowThrough } from "../flow";
import { wrap } from "../lines";
import { table, type RowSpec } from "../table";
import { baseline, words } from "../type";
import { counted, nameList, namesOver } from "../words";
import type { SheetsMeta } from "./index";
import { bodyOf, section, type Desk, type Part, type Setup } from "./page";
import { CARRIED } from "./style";
import { inOrder, partName, roomName, timeOf, type Told } from "./told";

const NAMES = { font: { face: "serif", weight: "regular", italic: false }, size: 12, leading: 14.4, ink: "ink" } as const;

const pairs = (rows: readonly (readonly [string, string])[]): readonly RowSpec[] =>
  rows.map(([a, b]) => ({ cells: [{ text: a, style: CARRIED.head }, { text: b, style: CARRIED.strong }] }));

function dayRows(told: Told): readonly (readonly [string, string])[] {
  const { brief, layout, venue } = told;
  const rows = inOrder(layout).map((s) => [partName(s), [timeOf(s.id, told) ?? "", s.rooms.map((r) => roomName(r, venue)).join(", ")].filter(Boolean).join("; ")] as const);
  return [...(brief.times?.access ? [["Crew come in", brief.times.access] as const] : []), ...rows, ...(brief.times?.clear ? [["Clear by", brief.times.clear] as const] : [])];
}

function headRows({ brief }: Told): readonly (readonly [string, string])[] {
  const g = brief.guests;
  const more = (n: number | undefined, title: string): readonly (readonly [string, string])[] => (n === undefined || n === 0 ? [] : [[title, String(n)]]);
  return [["Guests", `${people(brief)}, the two of them among these`], ...more(g.children, "Children"), ...more(g.highChairs, "High chairs"), ...more(g.wheelchairs, "Wheelchair places"), ...more(g.suppliers, "Suppliers who eat"), ...more(g.evening, "In the evening")];
}

/** Which version of the layout these sheets are made from. */
function standOf({ reference, revision, fingerprint, agreedOn }: SheetsMeta, locale: string): string {
  const version = revision === 0 ? "a draft, not agreed" : `revision ${revision}${agreedOn === undefined ? ", not agreed yet" : `, agreed on ${formatDay(agreedOn, locale, "date")}`}`;
  return `${reference}: ${version}${fingerprint === undefined ? "" : `; fingerprint ${fingerprint.slice(0, 19)}`}.`;
}

/** The first of the day's sheets: who, when, the parts of the day, and which sheet is for whom. */
export function coverPart(told: Told, parts: readonly { readonly title: string; readonly page: number }[], setup: Setup & { readonly meta: SheetsMeta }): Part {
  const { sheet, measure } = setup;
  const { brief, venue } = told;
  const body = bodyOf(0, sheet);
  const left: Desk = { flow: flowThrough(() => ({ ...body, width: body.width * 0.52 })), measure, artifacts: [] };
  const right: Desk = { flow: flowThrough(() => ({ ...body, x: body.x + body.width * 0.52 + 12, width: body.width * 0.48 - 12 })), measure, artifacts: left.artifacts };
  const lines = (namesOver(brief.couple ?? []) || "Day sheets").split("\n").flatMap((l) => wrap(l, { style: NAMES, width: left.flow.width(), measure }));
  const over = left.flow.take(CARRIED.part.leading + 2);
  const venueLine = element("P", [content(0, [words(`${venue.name}: sheets for the day`, [over.x, baseline(over.y, CARRIED.part)], CARRIED.part)])]);
  const head = element("H1", setLines(lines, NAMES, left));
  left.flow.gap(1);
  const day = element("P", setLines([formatDay(brief.date, venue.locale)], CARRIED.section, left));
  left.flow.gap(2);
  const stand = element("P", setLines(wrap(standOf(setup.meta, venue.locale), { style: CARRIED.body, width: left.flow.width(), measure }), CARRIED.body, left));
  left.flow.gap(6);
  const run = [section("The day", left, 18, "H2"), table({ bare: true, columns: [{ title: "", width: 40 }, { title: "" }], rows: pairs(dayRows(told)), pad: 0.9 }, left)];
  left.flow.gap(5);
  const notes = brief.notes.trim() === "" ? [] : [section("In their words", left, 18, "H2"), paragraph(brief.notes, CARRIED.body, left)];
  const heads = [section("Who comes", right, 18, "H2"), table({ bare: true, columns: [{ title: "", width: 44 }, { title: "" }], rows: pairs(headRows(told)), pad: 0.9 }, right)];
  right.flow.gap(6);
  const index = [section("The sheets", right, 18, "H2"), table({ bare: true, columns: [{ title: "", width: 16 }, { title: "" }], rows: parts.map((p): RowSpec => ({ cells: [{ text: String(p.page + 1), style: CARRIED.figure }, { text: p.title, style: CARRIED.strong }] })), pad: 0.7 }, right)];
  const call = [venue.contact?.name, venue.contact?.phone].filter(Boolean).join(", ");
  right.flow.gap(5);
  const ask = element("P", setLines(wrap(call === "" ? "If a piece will not stand where it is drawn, ask the venue before moving another." : `If a piece will not stand where it is drawn, ring ${call} before moving another.`, { style: CARRIED.strong, width: right.flow.width(), measure }), CARRIED.strong, right));
  const must: readonly Element[] = told.layout.findings.some((f) => f.level === "must")
    ? [element("P", setLines(wrap(`The check found ${counted(told.layout.findings.filter((f) => f.level === "must").length, "thing", "things")} to be put right before the day: see the proposal.`, { style: CARRIED.strong, width: right.flow.width(), measure }), CARRIED.strong, right))] : [];
  return { title: `Cover, ${nameList(brief.couple ?? [])}`, from: 0, pages: 1, elements: [element("Sect", [venueLine, head, day, stand, ...run, ...notes, ...heads, ...index, ask, ...must])], artifacts: left.artifacts };
}
