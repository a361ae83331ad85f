import { composeCarried, composePlan, PALETTES, type Drawing } from "../drawing";
import type { SceneId } from "../layout";
import { inReadersWords, LETTER, proposalPaper, sheetFor, sheetsPaper, type PaperDocument, type ProposalInput, type ProposalMeta, type ProposalTools, type SheetsInput, type SheetsMeta, type SheetsTools } from "../papers";
import { printPaper, type Printed } from "./print";
import { qrModules } from "./qr";
import { formsOf, type Forms } from "./han";
import { lacks, widthIn } from "./runs";

/** CSS pixels in a millimetre: 96 to the inch (CSS Values and Units 3, 6.2). */
const PX_PER_MM = 96 / 25.4;

export type ProposalPrint = Omit<ProposalInput, "meta"> & {
  /** `now` is what the file says of its making: the same input and moment give the same bytes. */
  readonly meta: ProposalMeta & { readonly now: Date };
};

/** What a small plan's edge and its scale bar take of its width and its height, mm: they do not grow with it. */
const EDGES = { width: 6.9, height: 10.6 } as const;

/** A small plan at least 11 CSS pixels to the word; where it is higher than its room it is drawn once more, as much narrower. */
function smallPlan({ venue, layout }: ProposalPrint, scene: SceneId, room: { readonly width: number; readonly height: number }): Drawing {
  const drawn = (width: number): Drawing => composePlan(venue, layout, scene, { pixelWidth: width * PX_PER_MM });
  const first = drawn(room.width);
  if (first.height <= room.height) return first;
  const slope = (first.height - EDGES.height) / (room.width - EDGES.width);
  return drawn(room.width - (first.height - room.height) / slope);
}

const formsFor = ({ venue, brief }: Pick<ProposalPrint, "venue" | "brief">): Forms =>
  formsOf({ names: brief.couple ?? [], words: [brief.notes ?? "", venue.name], locale: venue.locale });

const toolsFor = (input: ProposalPrint): ProposalTools => ({
  measure: widthIn(formsFor(input).han), lacks, qr: qrModules, formsKnown: formsFor(input).known,
  sheet: (scene, { paper, rooms, title }) =>
    composePlan(input.venue, input.layout, scene, { sheet: { ...paper, legend: true, frame: true, titleBlock: title }, rooms, findings: true }),
  small: (scene, room) => smallPlan(input, scene, room),
});

/** The proposal as pages, before it is printed. */
export function proposalDocument(input: ProposalPrint): PaperDocument {
  const said = inReadersWords(input);
  return proposalPaper(said, toolsFor(said));
}

/** The proposal as a tagged PDF, with how many pages it has and which letters could not be printed. */
export function printProposal(input: ProposalPrint): Promise<Printed> {
  return printPaper(proposalDocument(input), { colours: (ink) => PALETTES.print[ink], now: input.meta.now, han: formsFor(input).han });
}

/** The proposal that a couple sends, as the bytes of a tagged PDF (ISO 14289-1). */
export async function proposalPdf(input: ProposalPrint): Promise<Uint8Array> {
  return (await printProposal(input)).bytes;
}

export type SheetsPrint = Omit<SheetsInput, "meta"> & { readonly meta: SheetsMeta & { readonly now: Date } };

/** The day's sheets as a tagged PDF. The same input and moment give the same bytes. */
export function printSheets(input: SheetsPrint): Promise<Printed> {
  const { han } = formsFor(input);
  const paper = sheetFor(input.venue.locale) === LETTER ? "Letter" : "A4";
  const tools: SheetsTools = { measure: widthIn(han), plan: (scene, into) => composeCarried(input.venue, input.layout, scene, { ...into, paper }) };
  return printPaper(sheetsPaper(input, tools), { colours: (ink) => PALETTES.print[ink], now: input.meta.now, han });
}

export type { Printed } from "./print";
