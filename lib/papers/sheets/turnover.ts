import type { Mark } from "../../drawing/display";
import type { Turnover } from "../../layout";
import { content, element, type Content, type Element } from "../document";
import { spanOf, stepsOf, timetableOf } from "../turnover";
import { baseline, rule, words } from "../type";
import { counted, SCENE_NAMES } from "../words";
import { bodyOf, columns, HEAD, headOf, type Desk, type Part, type Setup } from "./page";
import { notes } from "./crew";
import { table, type RowSpec } from "../table";
import { CARRIED } from "./style";
import { beginOf, clock, roomName, timeOf, type Told } from "./told";

type Step = { readonly what: string; readonly where: string; readonly from: number; readonly to: number };

/** Minutes of one person to stack one chair, where the venue names none: common practice, no source. */
const STACK = 0.25;
const ACTS = { out: "Bring out", away: "Put away", shift: "Set", lay: "Lay" } as const;

/**
 * Where a layout brings no timetable of its own: the steps one after another, each with its share of the minutes by the work in it.
 * Chairs that are used again are first stacked out of the way: that work is in the turnover's minutes, though no move of its own.
 */
export function sharedSteps(turnover: Turnover, told: Told): readonly Step[] {
  const { venue, layout } = told;
  const isChair = (id: string): boolean => layout.scenes.find((s) => s.id === turnover.from)?.items.some((i) => i.id === id && (i.kind === "chair" || i.seats.length > 0)) ?? false;
  const chairs = turnover.moves.filter((m) => m.act === "shift" && isChair(m.item)).length;
  const stack = chairs > 0 ? [{ what: `Stack ${chairs} chairs`, where: "out of the way", work: chairs * (venue.crew?.minutes?.chair ?? STACK) }] : [];
  const moved = stepsOf(turnover, told).map((s) => ({
    what: `${s.act ? ACTS[s.act] : "Move"} ${s.count > 1 ? `${s.count} × ` : ""}${s.what.toLowerCase()}`, where: s.to, work: s.minutes ?? s.count,
  }));
  const all = [...stack, ...moved];
  const sum = all.reduce((n, s) => n + s.work, 0);
  let at = 0;
  return all.map(({ what, where, work }) => {
    const from = at;
    at += sum > 0 ? (work / sum) * turnover.minutes : 0;
    return { what, where, from, to: at };
  });
}

const CHART = 118;

/** A bar for each step on one scale of minutes. */
function chart(step: Step, turnover: Turnover, at: { readonly x: number; readonly y: number; readonly height: number; readonly width: number }): Mark {
  const k = at.width / turnover.minutes;
  const [x0, x1] = [at.x + step.from * k, at.x + Math.max(step.to, step.from + 0.4) * k];
  const y = at.y + at.height * 0.2, h = at.height * 0.6;
  return { kind: "path", fill: "ink", steps: [{ op: "M", to: [x0, y] }, { op: "L", to: [x1, y] }, { op: "L", to: [x1, y + h] }, { op: "L", to: [x0, y + h] }, { op: "Z" }] };
}

/** Minutes at which the scale has a line. */
const ticksOf = (minutes: number): readonly number[] => {
  const step = minutes <= 20 ? 2 : minutes <= 60 ? 5 : minutes <= 120 ? 10 : 30;
  return Array.from({ length: Math.floor(minutes / step) + 1 }, (_, i) => i * step);
};

function row(step: Step, i: number, start: string | undefined): RowSpec {
  const [from, to] = spanOf(step);
  const span = start === undefined ? `${from} to ${to}` : `${clock(start, from)} to ${clock(start, to)}`;
  return { cells: [{ text: String(i + 1), style: CARRIED.figure }, { text: step.what, style: CARRIED.strong, ...(step.where === "" ? {} : { under: step.where, underStyle: CARRIED.second }) }, { text: span, style: CARRIED.body }] };
}

/** One turnover: when it begins and is done, its steps with their minutes, and the same as bars. */
export function turnoverPart(turnover: Turnover, told: Told, by: Setup & { readonly from: number }): Part {
  const { from } = by;
  const room = turnover.room ? roomName(turnover.room, told.venue) : "";
  const title = `Turnover: ${SCENE_NAMES[turnover.from].toLowerCase()} to ${SCENE_NAMES[turnover.to].toLowerCase()}`;
  const start = beginOf(turnover, told), due = timeOf(turnover.to, told);
  const minutes = Math.ceil(turnover.minutes);
  const timed = timetableOf(turnover, told);
  const steps = timed ?? sharedSteps(turnover, told);
  const body = bodyOf(from, by.sheet);
  const left = { ...body, y: body.y + HEAD + 7, width: body.width - CHART - 8, height: body.height - HEAD - 7 };
  const to: Desk = columns(from, by, { first: [left], count: 2 });
  const said = [
    `${counted(minutes, "minute", "minutes")} with a crew of ${turnover.crew}`,
    start ? `begin ${start}, done by ${clock(start, minutes)}` : timed ? "counted from the moment the guests begin to leave" : "begins when the last guest is out of the room", due ? `guests come in at ${due}` : "",
  ].filter(Boolean).join("; ");
  const head = headOf(from, { title, beside: room }, by);
  const says = element("P", [content(from, [words(`${said}.`, [body.x, baseline(body.y + HEAD - 2, CARRIED.part)], CARRIED.part)])]);
  // The sheet's head names the room: only what goes elsewhere is told where.
  const rows = steps.map((s, i) => row({ ...s, where: room !== "" && (s.where === `to ${room}` || s.where === `in ${room}`) ? "" : s.where }, i, start));
  const list = table({ columns: [{ title: "Step", width: 12 }, { title: "What" }, { title: start ? "From, to" : "Minutes", width: 36, align: "end" }], rows, head: CARRIED.head, pad: 0.9 }, to);
  to.flow.gap(3);
  const how = notes([timed ? "Who has a hand free takes the next piece; bars that overlap are done side by side. By the venue's handling rates." : `Each step's share of the ${minutes} minutes goes by the work in it, at the venue's handling rates; the whole crew takes each step together.`], to);
  const bars = barsBeside(list, { steps, turnover, x: body.x + body.width - CHART + 4, width: CHART - 10, page: from });
  return { title, from, pages: 1 + Math.ceil(to.flow.region() / 2), elements: [element("Sect", [head, says, list, ...how])], artifacts: [...to.artifacts, ...bars] };
}

type Bars = { readonly steps: readonly Step[]; readonly turnover: Turnover; readonly x: number; readonly width: number; readonly page: number };

/** Where the rows of the first page were set, by the baselines of their numbers: the bars stand level with them. */
function barsBeside(list: Element, { steps, turnover, x, width, page }: Bars): readonly Content[] {
  const numbers = list.children.flatMap((c) => (c.kind === "element" && c.tag === "TBody" ? c.children : [])).map((r) => {
    const cell = r.kind === "element" ? r.children[0] : undefined;
    const leaf = cell?.kind === "element" ? cell.children[0] : undefined;
    const mark = leaf?.kind === "content" && leaf.page === page ? leaf.marks[0] : undefined;
    return mark?.kind === "text" ? mark.at[1] : undefined;
  });
  const heights = numbers.filter((n): n is number => n !== undefined);
  const [first, last] = [heights[0], heights.at(-1)];
  if (first === undefined || last === undefined || turnover.minutes <= 0) return [];
  const k = width / turnover.minutes;
  const lines = ticksOf(turnover.minutes).flatMap((m): readonly Mark[] => [
    rule([x + m * k, first - 7], [x + m * k, last + 6], 0.13, "ink-3"), words(String(m), [x + m * k, first - 8.4], CARRIED.label, "middle"),
  ]);
  const bars = steps.flatMap((s, i) => { const y = numbers[i]; return y === undefined ? [] : [chart(s, turnover, { x, width, y: y - 4.6, height: 6.4 })]; });
  return [content(page, [...lines, words("min", [x + width + 2, first - 8.4], CARRIED.label), ...bars])];
}
