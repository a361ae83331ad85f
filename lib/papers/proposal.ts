import { briefSchema, people, type BriefFile } from "../brief";
import type { Drawing } from "../drawing/display";
import type { TitleBlock } from "../drawing";
import type { Layout, Quote, SceneId } from "../layout";
import { formatDay, formatMoney } from "../measure";
import type { Venue } from "../venue";
import { CAUTIONS } from "../words/cautions";
import { layoutIn } from "../words/layout";
import { languageOf, sayIn } from "../words/pages";
import { paperVoiceOf, type PaperVoice } from "../words/papers";
import { answersOf } from "./answers";
import { heading, paragraph, type Setting } from "./blocks";
import { coverPage, type Fact } from "./cover";
import { content, element, type Bookmark, type Content, type Element, type PaperDocument } from "./document";
import { feeSection } from "./fees";
import { findingsSection } from "./findings";
import { flowThrough, type Region } from "./flow";
import { bodyRegion, columnsOf, foot, frame, nthColumn, sheetFor, type Sheet } from "./frame";
import { levelsOf, planSheet } from "./plans";
import { placesSection, seatedScene } from "./places";
import { table, tableHeight } from "./table";
import { STYLES, type Measure } from "./type";
import { turnoverKeep, turnoverSection } from "./turnover";
import { list, nameList, namesOver, SCENE_NAMES, SECTIONS } from "./words";

export type ProposalMeta = {
  readonly reference: string;
  /** 0: a draft, not sent yet. */
  readonly revision: number;
  readonly fingerprint?: string;
  /** Day the couple sent it, YYYY-MM-DD. */
  readonly sentOn?: string;
  /** Day that the plans were drawn, and the day that the venue agreed this revision, YYYY-MM-DD. */
  readonly drawnOn?: string; readonly agreedOn?: string;
  /** Address of the live page; printed and as a square code. */
  readonly url?: string;
};

export type ProposalInput = {
  /** The venue as its reader has it: language and lengths are the reader's. */
  readonly venue: Venue;
  /** The venue's own locale, by which its paper is cut, where its reader has another. */
  readonly paperLocale?: string;
  /** As the couple wrote it: what is left out is said to be left out. */
  readonly brief: BriefFile;
  readonly layout: Layout; readonly quote: Quote; readonly meta: ProposalMeta;
};

/** The proposal with the voice that tells it. */
type Spoken = ProposalInput & { readonly say: PaperVoice };

/** A proposal with its layout in its reader's words, for the drawings and the pages alike. */
export const inReadersWords = <P extends ProposalInput>(input: P): P =>
  ({ ...input, layout: layoutIn(input.layout, { venue: input.venue, say: sayIn(languageOf(input.venue.locale)) }) });

/** What the printer lends: widths of words, the drawings, the code of an address. */
export type ProposalTools = {
  readonly measure: Measure;
  readonly sheet: (scene: SceneId, by: { readonly paper: Sheet; readonly rooms: readonly string[]; readonly title: TitleBlock }) => Drawing;
  /** A small plan no larger than a part of a page, mm. */
  readonly small: (scene: SceneId, room: { readonly width: number; readonly height: number }) => Drawing;
  /** Scripts of letters that the printer has no face for, in words. */
  readonly lacks: (text: string) => readonly string[];
  /** False: nothing says which country's forms the Chinese characters on this paper should take. */
  readonly formsKnown?: boolean;
  readonly qr: (text: string) => readonly (readonly boolean[])[];
};

type Part = { readonly title: string; readonly page: number };
type Built = { readonly elements: readonly Element[]; readonly artifacts: readonly Content[]; readonly parts: readonly Part[]; readonly pages: number };

const pageOf = (e: Element): number => {
  const first = e.children[0];
  return first === undefined ? 0 : first.kind === "content" ? first.page : pageOf(first);
};

function section(title: string, to: Setting, body: () => readonly Element[], keep = 26): { readonly element: Element; readonly part: Part } {
  const head = heading(title, STYLES.section, { ...to, tag: "H2", keep });
  to.flow.gap(3);
  return { element: element("Sect", [head, ...body()]), part: { title, page: pageOf(head) } };
}

/** Fees at the left, places at the right; each goes on down its own side of the pages that follow. */
function feesAndPlaces(input: Spoken, from: number, sheet: Sheet, measure: Measure): Built {
  const artifacts: Content[] = [];
  const side = (n: 0 | 1) => flowThrough((page) => columnsOf(bodyRegion(from + page, sheet), 0.62, 15)[n]);
  const left = { flow: side(0), measure, artifacts };
  const right = { flow: side(1), measure, artifacts };
  const fees = section(input.say(SECTIONS.fees), left, () => feeSection(input, left));
  const places = section(input.say(SECTIONS.places), right, () => placesSection(input, right));
  const pages = Math.max(left.flow.region(), right.flow.region()) + 1;
  return { elements: [fees.element, places.element], artifacts, parts: [fees.part, places.part], pages };
}

function answersSection(input: Spoken, to: Setting & { readonly artifacts: Content[] }): readonly Element[] {
  const brief = briefSchema.parse(input.brief);
  const groups = answersOf({ brief, file: input.brief, venue: input.venue, say: input.say });
  const blocks = groups.flatMap((group, i) => {
    if (i > 0) to.flow.gap(6);
    const rows = group.answers.map((a) => ({ cells: [{ text: a.asked, style: { ...STYLES.body, ink: "ink-2" as const } }, { text: a.said }] }));
    const spec = { bare: true, pad: 1.15, columns: [{ title: "", width: 34 }, { title: "" }], rows };
    // A short group stays whole; a long one may break.
    const height = tableHeight(spec, to);
    const head = heading(group.title, STYLES.part, { ...to, tag: "H3", keep: height < 80 ? height : 30 });
    return [head, table(spec, to)];
  });
  if (brief.notes.trim() === "") return blocks;
  to.flow.gap(6);
  const head = heading(input.say("In your words"), STYLES.part, { ...to, tag: "H3", keep: 14 });
  to.flow.gap(1);
  return [...blocks, head, paragraph(brief.notes, STYLES.body, to)];
}

function reasons({ layout, say }: Spoken, to: Setting): readonly Element[] {
  // The same sentence about several like pieces is said once, with how many times it holds.
  const all = (texts: readonly string[]): readonly Element[] => [...new Set(texts)].map((text) => {
    const times = texts.filter((t) => t === text).length;
    to.flow.gap(2);
    return paragraph(times === 1 ? text : say("{text} ({n} times)", { text, n: times }), STYLES.body, to);
  });
  const why = all(layout.why);
  if (!layout.givesUp || layout.givesUp.length === 0) return why;
  to.flow.gap(5);
  return [...why, heading(say("What it gives up"), STYLES.part, { ...to, tag: "H3", keep: 12 }), ...all(layout.givesUp)];
}

type Chapter = { readonly title: string; readonly keep?: (to: Setting) => number; readonly body: (to: Setting & { readonly artifacts: Content[] }) => readonly Element[] };

type Columns = { readonly from: number; readonly columns: number; readonly gutter: number; readonly sheet: Sheet; readonly measure: Measure };

/** Chapters one after another in columns; the columns of the last page end level. */
function inColumns(chapters: readonly Chapter[], by: Columns): Built {
  const { from, columns, measure } = by;
  const set = (lastHeight: number, lastPage: number): Built => {
    const artifacts: Content[] = [];
    const flow = flowThrough((n): Region => {
      const column = nthColumn(n, by);
      return column.page - from === lastPage ? { ...column, height: Math.min(column.height, lastHeight) } : column;
    });
    const to = { flow, measure, artifacts };
    const sections = chapters.map((chapter) => {
      flow.gap(11);
      return section(chapter.title, to, () => chapter.body(to), chapter.keep?.(to));
    });
    return { elements: sections.map((s) => s.element), artifacts, parts: sections.map((s) => s.part), pages: Math.floor(flow.region() / columns) + 1 };
  };
  const full = nthColumn(0, by).height;
  let best = set(full, -1);
  const { pages } = best;
  let [low, high] = [20, full];
  for (let i = 0; i < 7; i += 1) {
    const middle = (low + high) / 2;
    const tried = set(middle, pages - 1);
    if (tried.pages > pages) low = middle;
    else [high, best] = [middle, tried];
  }
  return best;
}

/** What the reader is told where names or notes hold letters that this paper cannot show. */
function unprinted({ venue, brief, meta, say }: Spoken, tools: ProposalTools): string {
  const lacking = tools.lacks([venue.name, ...(brief.couple ?? []), brief.notes ?? ""].join(" "));
  const forms = tools.formsKnown === false ? say("Chinese characters stand here in their Chinese forms: nothing written with them says whether they are Japanese or Korean.") : "";
  const scripts = list(lacking, venue.locale);
  const letters = lacking.length === 0 ? "" : meta.url === undefined
    ? say("This paper has no letters for {scripts}. Where they were written it says so in square brackets; they stand in full where you answered.", { scripts })
    : say("This paper has no letters for {scripts}. Where they were written it says so in square brackets; they stand in full on the live page.", { scripts });
  return `${forms} ${letters}`.trim();
}

/** What is read rather than looked at. The answers start a page of their own, unless that would cost a page more. */
function prose(input: Spoken, from: number, sheet: Sheet, tools: ProposalTools): Built {
  const { measure } = tools;
  const { layout, say } = input;
  const why = layout.why.length > 0 || (layout.givesUp?.length ?? 0) > 0;
  const first: readonly Chapter[] = [
    ...(why ? [{ title: say("Why this layout"), body: (to: Setting) => reasons(input, to) }] : []),
    { title: say(SECTIONS.turnover), keep: (to) => turnoverKeep(input, to), body: (to) => turnoverSection(input, to) },
    { title: say(SECTIONS.findings), body: (to) => findingsSection(input, to, unprinted(input, tools)) },
  ];
  const answers: Chapter = { title: say(SECTIONS.answers), keep: () => 70, body: (to) => answersSection(input, to) };
  const two = { from, columns: 2, gutter: 15, sheet, measure };
  const a = inColumns(first, two);
  const b = inColumns([answers], { from: from + a.pages, columns: 3, gutter: 10, sheet, measure });
  const together = inColumns([...first, answers], two);
  if (together.pages < a.pages + b.pages) return together;
  return {
    elements: [...a.elements, ...b.elements], artifacts: [...a.artifacts, ...b.artifacts], parts: [...a.parts, ...b.parts], pages: a.pages + b.pages,
  };
}

/** The first eight figures name it on a title strip; it stands in full on the cover. */
const shortPrint = (fingerprint: string): string => {
  const groups = fingerprint.split(" ");
  return groups.length > 1 ? groups.slice(0, 2).join(" ") : fingerprint.slice(0, 8);
};

const revisionName = ({ meta, say }: Spoken): string => (meta.revision === 0 ? say("draft") : String(meta.revision));

const packageName = ({ venue, brief }: ProposalInput): string => venue.packages.find((p) => p.id === brief.package)?.name ?? brief.package;

/** The fields of a title block that say who stands for a drawing, as far as they are known (ISO 7200). */
function signed({ venue, meta }: ProposalInput): Pick<TitleBlock, "reference" | "drawn" | "agreed"> {
  const day = (on: string): string => formatDay(on, venue.locale, "date");
  return { reference: meta.reference, ...(meta.drawnOn === undefined ? {} : { drawn: day(meta.drawnOn) }), ...(meta.agreedOn === undefined ? {} : { agreed: `${venue.name}, ${day(meta.agreedOn)}` }) };
}

function coverFacts(input: Spoken, guests: number): readonly Fact[] {
  const { venue, layout, quote, meta, say } = input;
  const fact = (title: string, value: string | undefined): readonly Fact[] => (value === undefined || value === "" ? [] : [{ title, value }]);
  const scene = seatedScene(layout);
  const sent = meta.sentOn === undefined ? revisionName(input) : say("{day}, revision {number}", { day: formatDay(meta.sentOn, venue.locale), number: meta.revision });
  return [
    ...fact(say("Guests"), say("{count}, the two of you among them", { count: guests })),
    ...fact(say("Package"), packageName(input)),
    ...fact(say("Layout"), scene ? say("{title}; {n} places", { title: layout.title, n: scene.seats }) : layout.title),
    ...fact(say("Extra to pay"), formatMoney(quote.total, quote.currency, venue.locale)),
    ...fact(meta.sentOn === undefined ? say("Revision") : say("Sent"), sent),
    ...fact(say("Agreed"), meta.agreedOn && formatDay(meta.agreedOn, venue.locale)),
    ...fact(say("Reference"), meta.reference), ...fact(say("Fingerprint"), meta.fingerprint),
  ];
}

/** The proposal, its layout said already, as pages: cover, fees with places, a plan for each part of the day, and what is to be read. */
export function proposalPaper(asked: ProposalInput, tools: ProposalTools): PaperDocument {
  const input: Spoken = { ...asked, say: paperVoiceOf(asked.venue.locale) };
  const { venue, layout, meta, say } = input;
  const { measure } = tools;
  const brief = briefSchema.parse(input.brief);
  const sheet = sheetFor(input.paperLocale ?? venue.locale);
  const fees = feesAndPlaces(input, 1, sheet, measure);
  const planFrom = 1 + fees.pages;
  const drawings = layout.scenes.flatMap((scene) => levelsOf(venue, scene).map((rooms) => ({ scene, rooms })));
  const proseFrom = planFrom + drawings.length;
  const read = prose(input, proseFrom, sheet, tools);
  const total = proseFrom + read.pages;
  const names = nameList(brief.couple ?? [], venue.locale) || say("Proposal");
  const day = formatDay(brief.date, venue.locale);
  const plans = drawings.map(({ scene, rooms }, i) => {
    const title = say(SCENE_NAMES[scene.id]);
    const drawing = tools.sheet(scene.id, {
      paper: sheet, rooms, title: {
        couple: names, day, package: packageName(input), scene: title, layoutTitle: layout.title, ...(scene.seats > 0 ? { places: scene.seats } : {}), revision: revisionName(input), ...signed(input),
        ...(meta.fingerprint === undefined ? {} : { fingerprint: shortPrint(meta.fingerprint) }), sheet: say("{n} of {all}", { n: planFrom + i + 1, all: total }),
      },
    });
    return { part: { title, page: planFrom + i }, ...planSheet(drawing, planFrom + i, title) };
  });
  // A part of the day on two levels has two sheets and one line in the contents.
  const planParts = plans.map((p) => p.part).filter((p, i, all) => all.findIndex((q) => q.title === p.title) === i);
  const parts = [...fees.parts, ...planParts, ...read.parts];
  const seated = seatedScene(layout) ?? layout.scenes[0];
  const cover = coverPage({
    say, venue: venue.name, names: namesOver(brief.couple ?? [], venue.locale) || say("Proposal"), day, facts: coverFacts(input, people(brief)), lead: layout.why, contents: parts,
    plan: seated && ((room) => tools.small(seated.id, room)),
    ...(meta.url === undefined ? {} : { live: { url: meta.url, qr: tools.qr(meta.url) } }),
  }, sheet, measure);
  const isPlan = (page: number): boolean => page >= planFrom && page < proseFrom;
  const artifacts = [...cover.artifacts, ...fees.artifacts, ...plans.flatMap((p) => p.artifacts), ...read.artifacts];
  const pages = Array.from({ length: total }, (_, page) => {
    if (isPlan(page)) return { artifacts: artifacts.filter((a) => a.page === page) };
    const strip = page === 0 ? [] : foot(sheet, [
      { label: say("For"), value: names, most: 62 }, { label: say("Day"), value: day, most: 50 }, { label: say("Revision"), value: revisionName(input), most: 20 },
      ...(meta.fingerprint === undefined ? [] : [{ label: say("Fingerprint"), value: shortPrint(meta.fingerprint), most: 26 }]), { label: say("Sheet"), value: say("{n} of {all}", { n: page + 1, all: total }), most: 24 },
    ], { measure, cautions: sayIn(say.language)(CAUTIONS) });
    return { artifacts: [content(page, [...frame(sheet), ...strip]), ...artifacts.filter((a) => a.page === page)] };
  });
  const bookmarks: Bookmark[] = [{ title: say("Cover"), page: 0 }, ...parts];
  return {
    title: say("{names}, {day}: proposal for {venue}", { names: list(brief.couple ?? [], venue.locale) || say("Proposal"), day, venue: venue.name }), author: venue.name, language: say.language, size: sheet, pages, bookmarks,
    elements: [...cover.elements, ...fees.elements, ...plans.map((p) => p.element), ...read.elements],
  };
}
