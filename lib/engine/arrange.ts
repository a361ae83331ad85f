import type { Clock } from "../base";
import { briefSchema, type Brief } from "../brief";
import type { ArrangeResult, Finding, Instead, Layout } from "../layout";
import { ruleValues, siteFor } from "../rules";
import type { Package, Venue } from "../venue";
import { proofs } from "./bounds";
import { askedProofs } from "./bounds/asked";
import { effortOf, TRIED_EFFORT, type Effort } from "./effort";
import { insteadOf } from "./instead";
import { refusal } from "./refusal";
import { search } from "./search";
import { packageRooms } from "./stages/assign";
import { chairOf, type Context } from "./stages/context";
import { demandOf } from "./stages/demand";
import { drapeChoices } from "./stages/draped";
import { stopwatch, type Stopwatch } from "./stopwatch";
import { ENGINE_VERSION } from "./version";
import { withWishes } from "./wishes";

export type ArrangeOptions = {
  readonly seed?: number;
  /** Most layouts returned (default 3). */
  readonly layouts?: number;
  /** For `timing` alone; without it all times are 0. */
  readonly clock?: Clock;
  readonly onProgress?: (step: { readonly stage: string; readonly done: number; readonly of: number }) => void;
  /** Asked between attempts; true ends the search with what has been found. */
  readonly stop?: () => boolean;
  /** Ways of laying the day that are tried, at the most (default 10). */
  readonly attempts?: number;
  /** Steps of work, at the most (`EFFORT` when left out). */
  readonly effort?: number;
  /** Whether to look for smaller changes that would help, when the answer is no (default true). */
  readonly instead?: boolean;
  /** Whether to lay the wet-weather twin of a day with rooms outdoors (default true). */
  readonly wet?: boolean;
};

/** Attempts where a smaller change of the brief is only tried out. */
const TRIED_OUT = 8;

export const packageOf = (venue: Venue, brief: Brief): Package | undefined => venue.packages.find((p) => p.id === brief.package);

export function contextOf(venue: Venue, pack: Package, brief: Brief, seed: number, effort: Effort = effortOf(), watch: Stopwatch = stopwatch()): Context {
  return { known: new Map(), effort, watch, venue, pack, brief, seed, site: siteFor(venue, []), demand: watch.time("demand", () => demandOf(venue, pack, brief)), values: ruleValues(venue), chair: chairOf(venue) };
}

/**
 * Arranges a day: up to K layouts that pass every `must` of `check`, or a proof that none can be, or an honest not-found with
 * the closest attempt. The same venue, brief and seed give the same answer on every machine.
 * @throws when the brief names a package that the venue lacks: `briefAgainstVenue` refuses that at the edge.
 */
export function arrange(venue: Venue, brief: Brief, options: ArrangeOptions = {}): ArrangeResult {
  const { seed = 1, layouts: most = 3 } = options;
  const watch = stopwatch(options.clock);
  const pack = packageOf(venue, brief);
  if (!pack) throw new Error(`package ${brief.package} is not among ${venue.packages.map((p) => p.id).join(", ")}`);
  const ctx = contextOf(venue, pack, brief, seed, effortOf(options.effort), watch);
  const done = (answer: Pick<ArrangeResult, "status" | "reasons" | "instead" | "layouts"> & { readonly closest?: Layout }): ArrangeResult => ({
    format: "marquetry.result/1", engine: { version: ENGINE_VERSION, seed }, ...answer, taken: takenFrom(brief), timing: watch.read(),
  });
  const proved = watch.time("bounds", () => everyProof(ctx));
  if (proved.length > 0) return done({ status: "impossible", reasons: proved, instead: help(venue, brief, options, null), layouts: [] });
  const found = search(ctx, most, options, watch);
  if (found.layouts.length > 0) return done({ status: "arranged", reasons: [], instead: [], layouts: lettered(watch.time("wishes", () => found.layouts.map((l) => withWishes(ctx, l)))) });
  return done({
    status: "not-found", reasons: shortFirst(found.reasons), instead: help(venue, brief, options, found.seated), layouts: [], ...(found.closest ? { closest: found.closest } : {}),
  });
}

const tells = (f: Finding): boolean => f.code.endsWith("-short") || f.code === "places-not-found";
/** What the closest attempt lacks, guests without a place before all else: that they are told first. */
const shortFirst = (list: readonly Finding[]): readonly Finding[] => [...list].sort((a, b) => Number(tells(b)) - Number(tells(a)));

const lettered = (list: readonly Layout[]): readonly Layout[] => list.map((l, i): Layout => ({ ...l, id: "abcdefgh"[i] ?? `l${i + 1}` }));

/** Why nothing can be, from what the rooms hold and from what the venue owns or lets. */
const everyProof = (ctx: Context): readonly Finding[] => [...proofs(ctx.venue, ctx.brief), ...askedProofs(ctx.venue, ctx.brief), ...panelProof(ctx), ...buffetProof(ctx), ...drapeProof(ctx)];

/** The venue's panels laid side by side are smaller than the floor asked for (4.5 sq ft a dancer, rental trade). */
function panelProof(ctx: Context): readonly Finding[] {
  const short = ctx.demand.floorShort;
  if (!short) return [];
  const [owned, needed] = [Math.floor(short.owned * 100) / 100, Math.ceil(short.needed * 100) / 100];
  return [refusal(ctx.venue, {
    code: "bound-dance-panels", level: "must", source: "the venue's stock; 4.5 sq ft a dancer, five rental houses", scene: "dancing", items: [],
    measured: owned, limit: needed, unit: "m2", data: { owned, needed, short: Math.round((needed - owned) * 100) / 100 },
  })];
}

/** A couple who ask for a drape, where no drape hangs between two rooms of their package. */
function drapeProof(ctx: Context): readonly Finding[] {
  if (ctx.brief.drape !== "yes" || drapeChoices(ctx.venue, ctx.pack, ctx.brief).length > 0) return [];
  return [refusal(ctx.venue, {
    code: "bound-drape", level: "must", source: "the venue's drapes and the package's rooms", items: [], measured: 0, limit: 1, unit: "drapes",
    data: { package: ctx.pack.id },
  })];
}

/** Rooms are used each for its uses alone: without one let for a buffet there is none. */
function buffetProof(ctx: Context): readonly Finding[] {
  if (!ctx.demand.buffet || packageRooms(ctx.venue, ctx.pack).some((r) => r.uses.includes("buffet"))) return [];
  return [refusal(ctx.venue, {
    code: "bound-buffet", level: "must", source: "the venue's rooms and their uses", scene: "meal", items: [], measured: 0, limit: 1, unit: "rooms",
    data: { package: ctx.pack.id },
  })];
}

const help = (venue: Venue, brief: Brief, options: ArrangeOptions, seated: number | null): readonly Instead[] => options.instead === false ? [] : insteadOf(venue, brief, {
  run: (b) => arrange(venue, b, { ...options, clock: undefined, layouts: 1, instead: false, wet: false, attempts: TRIED_OUT, effort: TRIED_EFFORT, onProgress: undefined }),
  proved: (b) => { const pack = packageOf(venue, b); return pack ? everyProof(contextOf(venue, pack, b, 1)) : []; }, seated, stop: options.stop,
});

/** What was taken where the brief leaves a field out. */
function takenFrom(brief: Brief): ArrangeResult["taken"] {
  const bare = briefSchema.parse({ format: brief.format, package: brief.package, date: brief.date, guests: { adults: brief.guests.adults } });
  const out: { field: string; value: unknown }[] = [];
  for (const part of ["ceremony", "meal", "music"] as const) for (const [field, value] of Object.entries(bare[part])) {
    if (JSON.stringify((brief[part] as Record<string, unknown>)[field]) === JSON.stringify(value)) out.push({ field: `${part}.${field}`, value });
  }
  return out;
}
