import type { Brief, BriefFile } from "../brief";
import type { ArrangeResult, Capacity, Finding, Layout, Quote, SceneId } from "../layout";
import type { Venue } from "../venue";

/**
 * The heavy works behind the use cases: engine, check, fees, drawing, print. They are handed in by the server, so that
 * the pages' bundle holds none of them and they may run on another thread.
 */
export type Works = {
  /** Part of every kept result's key: a new engine answers anew. */
  readonly engineVersion: string;
  readonly arrange: (venue: Venue, brief: Brief, options: ArrangeAsk) => Promise<ArrangeResult>;
  readonly capacity: (venue: Venue) => Promise<Capacity>;
  readonly check: (venue: Venue, layout: Layout, brief: Brief) => Promise<readonly Finding[]>;
  readonly quote: (venue: Venue, brief: Brief, layout: Layout) => Promise<Quote>;
  /** A layout changed by hand, made whole again: turnovers, findings, fees as the pieces stand now. */
  readonly settle: (venue: Venue, brief: Brief, layout: Layout) => Promise<Layout>;
  /** Puts a layout right round the pieces that are held. */
  /** A new brief on a layout that stands, with as little moved as can be. */
  readonly change: (venue: Venue, layout: Layout, brief: Brief) => Promise<ArrangeResult>;
  readonly repair: (venue: Venue, brief: Brief, ask: RepairAsk) => Promise<ArrangeResult>;
  readonly planSvg: (plan: PlanInput) => Promise<string>;
  readonly planDrawing: (plan: PlanDrawingInput) => Promise<DrawnPlan>;
  readonly proposalPdf: (proposal: ProposalPdfInput) => Promise<Uint8Array>;
  readonly sheetsPdf: (sheets: SheetsPdfInput) => Promise<Uint8Array>;
  readonly calendar: (calendar: CalendarAsk) => Promise<string>;
};

/** `flag`: one 32-bit figure that is looked at between attempts; 1 ends the search with what has been found. */
export type ArrangeAsk = {
  readonly seed: number; readonly layouts: number; readonly flag?: SharedArrayBuffer;
  readonly onProgress?: (progress: { readonly done: number; readonly of: number }) => void;
};

export type RepairAsk = { readonly layout: Layout; readonly held: readonly string[] };

/** What a plan within a page shows beside what stands. */
export type PlanLayers = { readonly ways?: boolean; readonly dimensions?: boolean; readonly findings?: boolean };
export type PlanDrawingInput = PlanLayers & {
  readonly venue: Venue; readonly layout: Layout; readonly scene: SceneId; readonly pixelWidth: number;
  /** Only these rooms. */
  readonly rooms?: readonly string[];
  /** An earlier layout: what changed since is drawn over the plan. */
  readonly was?: Layout;
};
/** A plan as a list of marks, and how its ids begin. What the marks are the pages know; it passes through here as it is. */
export type DrawnPlan = { readonly drawing: unknown; readonly idPrefix: string };

export type PlanInput = {
  readonly venue: Venue; readonly layout: Layout; readonly scene: SceneId; readonly sheet: boolean;
  /** The width at which a plan within a page is shown, CSS pixels: its words are sized for it. */
  readonly pixelWidth?: number;
  /** An earlier layout: what changed since is drawn over the plan. */
  readonly was?: Layout;
  /** Only these rooms, so that several layouts can be compared at one scale. */
  readonly rooms?: readonly string[];
  readonly brief?: Brief; readonly revision?: number; readonly fingerprint?: string;
  /** For the title block of a sheet: the booking, the day that it was drawn and the day that it was agreed, YYYY-MM-DD at the venue. */
  readonly reference?: string; readonly drawnOn?: string; readonly agreedOn?: string;
};

export type ProposalPdfInput = {
  /** As the couple have it: language and lengths are theirs. */
  readonly venue: Venue;
  /** The venue's own locale, by which its paper is cut. */
  readonly paperLocale: string;
  readonly brief: BriefFile;
  readonly layout: Layout;
  readonly quote: Quote;
  readonly reference: string;
  /** 0: not sent yet. */
  readonly revision: number;
  readonly fingerprint?: string;
  /** YYYY-MM-DD at the venue. */
  readonly sentOn?: string; readonly agreedOn?: string; readonly drawnOn?: string;
  readonly url?: string;
  /** The moment printed into the file, milliseconds since 1970 UTC. */
  readonly now: number;
};

export type SheetsPdfInput = {
  readonly venue: Venue;
  readonly brief: Brief;
  readonly layout: Layout;
  readonly reference: string;
  readonly revision: number;
  readonly fingerprint?: string;
  /** Day that it was agreed, YYYY-MM-DD at the venue. */
  readonly agreedOn?: string;
  /** The moment printed into the file, milliseconds since 1970 UTC. */
  readonly now: number;
};

/** What a calendar file is made from; `due` as YYYY-MM-DD, `now` in milliseconds since 1970 UTC. */
export type CalendarAsk = { readonly venue: Venue; readonly brief: Brief; readonly layout: Layout; readonly reference: string; readonly revision: number; readonly due: string; readonly now: number };
