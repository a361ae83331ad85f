import { composePlan, toSvg, type TitleBlock } from "../drawing";
import { arrange, change, ENGINE_VERSION, repair, settle } from "../engine";
import { capacity } from "../engine/capacity";
import { quote } from "../fees";
import { formatDay } from "../measure";
import { calendarFile, sheetFor } from "../papers";
import { printSheets, proposalPdf } from "../print";
import { check } from "../rules";
import type { DrawnPlan, PlanDrawingInput, PlanInput, ProposalPdfInput, Works } from "../service/works";

/** The width of a plan within a page where none is given, CSS pixels. */
const PIXELS = 640;

/** The works done on the spot, on whatever thread this is. */
export const bench: Works = {
  engineVersion: ENGINE_VERSION,
  arrange: async (venue, brief, { flag, ...options }) => {
    const stopped = flag && new Int32Array(flag);
    return arrange(venue, brief, { ...options, clock: { now: () => Math.round(performance.now()) }, stop: stopped && (() => Atomics.load(stopped, 0) === 1) });
  },
  capacity: async (venue) => capacity(venue),
  check: async (venue, layout, brief) => check(venue, layout, brief),
  quote: async (venue, brief, layout) => quote(venue, brief, layout),
  settle: async (venue, brief, layout) => settle(venue, brief, layout),
  change: async (venue, layout, brief) => change(venue, layout, brief),
  repair: async (venue, brief, { layout, held }) => repair(venue, brief, layout, held),
  planSvg: async (plan) => (plan.sheet ? sheetOf(plan) : withinPage(plan)),
  planDrawing: async (plan) => listed(plan),
  proposalPdf: printed,
  calendar: async (ask) => calendarFile(ask),
  sheetsPdf: async ({ reference, revision, fingerprint, agreedOn, now, ...day }) => (await printSheets({ ...day, meta: { reference, revision, fingerprint, agreedOn, now: new Date(now) } })).bytes,
};

/** A sheet of its own holds its colours and its title block. */
function sheetOf(plan: PlanInput): string {
  const { venue, layout, scene } = plan;
  const drawing = composePlan(venue, layout, scene, {
    sheet: { ...sheetFor(venue.locale), legend: true, frame: true, titleBlock: titleOf(plan) }, scale: "fit", findings: true,
  });
  return toSvg(drawing, { theme: "light" });
}

function titleOf({ venue, layout, scene: id, brief, revision = 0, fingerprint, reference, drawnOn, agreedOn }: PlanInput): TitleBlock {
  const scene = layout.scenes.find((one) => one.id === id);
  const pack = venue.packages.find((one) => one.id === brief?.package);
  return {
    couple: brief?.couple?.join(" & "), day: brief && formatDay(brief.date, venue.locale), package: pack?.name, scene: scene?.title, layoutTitle: layout.title,
    places: scene && scene.seats > 0 ? scene.seats : undefined, revision: revision > 0 ? revision : undefined, fingerprint: fingerprint?.slice(0, 16), locale: venue.locale,
    reference, drawn: drawnOn && formatDay(drawnOn, venue.locale, "date"), agreed: agreedOn && `${venue.name}, ${formatDay(agreedOn, venue.locale, "date")}`,
  };
}

/** A plan within a page takes the page's colours, light or dark, by its classes; its ids are its own. */
function withinPage({ venue, layout, scene, rooms, was, pixelWidth = PIXELS }: PlanInput): string {
  const drawing = composePlan(venue, layout, scene, { pixelWidth, rooms, was, frame: false });
  return toSvg(drawing, { theme: "css", pixelWidth, idPrefix: `${layout.id}-${scene}-`, reads: "image" });
}

/** The same plan as marks, for the page's own painter. */
function listed({ venue, layout, scene, pixelWidth, rooms, was, ways, dimensions, findings }: PlanDrawingInput): DrawnPlan {
  return { drawing: composePlan(venue, layout, scene, { pixelWidth, rooms, frame: false, was, ways, dimensions, findings }), idPrefix: `${layout.id}-${scene}-` };
}

async function printed({ venue, paperLocale, brief, layout, quote: fees, reference, revision, fingerprint, sentOn, agreedOn, drawnOn, url, now }: ProposalPdfInput): Promise<Uint8Array> {
  return proposalPdf({ venue, paperLocale, brief, layout, quote: fees, meta: { reference, revision, fingerprint, sentOn, agreedOn, drawnOn, url, now: new Date(now) } });
}
