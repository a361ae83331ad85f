import type { Venue } from "../venue";

export type Gaps = { readonly tableGap: number; readonly wallGap: number; readonly rowPitch: number };
export type Factors = { readonly rows: number; readonly tables: number; readonly standing: number };

/** Every number that the rules compare with; lengths in mm, areas in m2. */
/** Gaps between the least (slack 0) and those of comfort (slack 1), whole millimetres. */
export function gapsBetween({ most, comfort }: Pick<RuleValues, "most" | "comfort">, slack: number): Gaps {
  const mix = (a: number, b: number): number => Math.round(a + (b - a) * slack);
  return { tableGap: mix(most.tableGap, comfort.tableGap), wallGap: mix(most.wallGap, comfort.wallGap), rowPitch: mix(most.rowPitch, comfort.rowPitch) };
}

export type RuleValues = {
  readonly profile: "model-code" | "uk-guide" | "house";
  readonly comfort: Gaps;
  readonly most: Gaps;
  readonly source: { readonly gaps: string; readonly factors: string; readonly front: string; readonly travel: string };
  /** Line of seated chairs out from a table, path from a place, first free walk. */
  readonly tableLine: number;
  readonly path: number;
  readonly freeWalk: number;
  readonly route: number;
  readonly routeDoor: number;
  /** Clear floor ahead of a row chair. */
  readonly rowClear: number;
  readonly centreAisle: number;
  /** Seats in a ceremony past which the centre aisle has a least width. */
  readonly aisleFrom: number;
  readonly endWall: number;
  readonly endEnd: number;
  readonly seatNear: number;
  readonly seatFar: number;
  readonly wheelchairFar: number;
  /** Floor a person, m2: rows of chairs, tables, standing; and the least that any posting allows. */
  readonly factors: Factors;
  readonly densest: number;
  /** Dance floor a dancer, m2. */
  readonly danceArea: number;
  /** People past which two, three, four ways out are needed. */
  readonly exitSteps: readonly [number, number, number];
  /** Width of exits a person, mm. */
  readonly exitWidth: number;
  readonly exitLeast: number;
  /** Share of the width asked that must be left with the widest way out shut. */
  readonly exitLeft: number;
  /** How far apart two ways out stand, as a share of the rooms' greatest span; with sprinklers throughout, likewise. */
  readonly exitsApart: number;
  readonly exitsApartSprinklered: number;
  readonly sightBefore: number;
  /** Floor between the first row of a ceremony and the wall ahead. */
  readonly frontDepth: number;
  /** Longest way to a choice of two ways out, from 50 people and under. */
  readonly commonPath: number;
  readonly commonPathFew: number;
  /** Longest walk to a way out, mm: where there are two, and where there is one alone; from chairs in rows, and from any other place. */
  readonly travel: Readonly<Record<"two" | "one", { readonly open: number; readonly rows: number }>>;
  /** Chairs in rows past which they are fastened together, and in what lengths. */
  readonly fastened: { readonly from: number; readonly least: number; readonly most: number | null; readonly source: string };
};

const FT2 = 0.09290304;
const trade = "common practice, no source";

/** Gaps that hold the code's path between the lines of two tables (19 + 12 + 19 in) and between a line and a wall (19 + 12 in), each rounded up to whole millimetres. */
const CODE_GAPS: Gaps = { tableGap: 483 + 305 + 483, wallGap: 483 + 305, rowPitch: 500 + 305 };

/** One walk for every place. */
const travelOf = (mm: number): RuleValues["travel"] => ({ two: { open: mm, rows: mm }, one: { open: mm, rows: mm } });
const SPRINKLERED_TRAVEL = travelOf(250 * 304.8);

const COMMON = {
  tableLine: 483, path: 305, freeWalk: 1829, route: 914, routeDoor: 800, rowClear: 305, centreAisle: 1067, aisleFrom: 50,
  endWall: 450, endEnd: 914, seatNear: 100, seatFar: 450, wheelchairFar: 700, densest: 7 * FT2, danceArea: 4.5 * FT2,
  exitSteps: [49, 500, 1000], exitWidth: 5.08, exitLeast: 813, exitLeft: 0.5, exitsApart: 1 / 2, exitsApartSprinklered: 1 / 3, sightBefore: 900,
  frontDepth: 1829, commonPath: 30 * 304.8, commonPathFew: 75 * 304.8, travel: travelOf(200 * 304.8),
  fastened: { from: 200, least: 3, most: null, source: "IBC 2018 1029.15, exception 1" },
} as const;

/** Named profiles. Comfort is the trade's; most is what the code's paths need. */
export const PROFILE_VALUES: Readonly<Record<RuleValues["profile"], RuleValues>> = {
  "model-code": {
    ...COMMON, profile: "model-code",
    comfort: { tableGap: 1524, wallGap: 1067, rowPitch: 914 }, most: CODE_GAPS,
    factors: { rows: 7 * FT2, tables: 15 * FT2, standing: 5 * FT2 },
    source: { gaps: `most: IBC 2018 1029.13.1, 1029.13.2; comfort: ${trade}`, factors: "IBC 2018 Table 1004.5", front: trade, travel: "IBC 2018 Table 1017.2" },
  },
  "uk-guide": {
    ...COMMON, profile: "uk-guide",
    comfort: { tableGap: 1500, wallGap: 1000, rowPitch: 900 }, most: CODE_GAPS,
    factors: { rows: 0.65, tables: 1, standing: 0.3 },
    // The guides let 60 people have one way out; the stricter 49 of the code is kept. They discount the widest way out wholly.
    exitLeft: 1, frontDepth: 3000, travel: { two: { open: 45_000, rows: 32_000 }, one: { open: 18_000, rows: 15_000 } },
    fastened: { from: 50, least: 4, most: 14, source: "Warwickshire Fire and Rescue Service, loose seating" },
    source: {
      gaps: `most: IBC 2018 1029.13.1, 1029.13.2; comfort: ${trade}`, factors: "HM Government fire risk guides, floor-space factors (second-hand)",
      front: "Warwickshire Fire and Rescue Service, rooms for marriages (3 m across the front)", travel: "Warwickshire Fire and Rescue Service, travel distances",
    },
  },
  house: {
    ...COMMON, profile: "house",
    comfort: { tableGap: 1500, wallGap: 1000, rowPitch: 900 }, most: CODE_GAPS,
    factors: { rows: 7 * FT2, tables: 15 * FT2, standing: 5 * FT2 },
    source: { gaps: "rule of the house", factors: "IBC 2018 Table 1004.5", front: trade, travel: "IBC 2018 Table 1017.2" },
  },
};

/** Rules that a venue may tighten by `rules.house`: the stricter of the two figures holds. */
const TIGHTEN: Readonly<Record<string, { readonly field: keyof typeof COMMON; readonly stricter: "more" | "less" }>> = {
  route: { field: "route", stricter: "more" }, "route-door": { field: "routeDoor", stricter: "more" },
  "row-clear": { field: "rowClear", stricter: "more" }, "centre-aisle": { field: "centreAisle", stricter: "more" },
  path: { field: "path", stricter: "more" }, "table-line": { field: "tableLine", stricter: "more" },
  "end-wall": { field: "endWall", stricter: "more" }, "end-end": { field: "endEnd", stricter: "more" },
  "free-walk": { field: "freeWalk", stricter: "less" }, "front-depth": { field: "frontDepth", stricter: "more" },
};
/** A fact of the building told as a house rule: sprinklers throughout, where its limit is not 0. */
const SPRINKLERED = "sprinklered";
export const HOUSE_RULES: readonly string[] = [...Object.keys(TIGHTEN), SPRINKLERED];

/** The values that hold for a venue: its profile, its own gaps, and what its house rules tighten. */
export function ruleValues(venue: Pick<Venue, "rules">): RuleValues {
  const rules = venue.rules;
  const base = PROFILE_VALUES[rules?.profile ?? "model-code"];
  const most = { ...base.most, ...given(rules?.most) };
  const asked = { ...base.comfort, ...given(rules?.comfort) };
  // Comfort is never tighter than most, whatever a file says of one of them alone.
  const comfort: Gaps = {
    tableGap: Math.max(asked.tableGap, most.tableGap), wallGap: Math.max(asked.wallGap, most.wallGap), rowPitch: Math.max(asked.rowPitch, most.rowPitch),
  };
  const house: Record<string, number> = {};
  for (const { rule, limit } of rules?.house ?? []) {
    const t = TIGHTEN[rule];
    if (!t) continue;
    const now = house[t.field] ?? base[t.field];
    if (typeof now === "number") house[t.field] = t.stricter === "more" ? Math.max(now, limit) : Math.min(now, limit);
  }
  const sprinklered = rules?.house?.some((h) => h.rule === SPRINKLERED && h.limit !== 0) ?? false;
  return { ...base, ...house, ...(sprinklered ? { exitsApart: base.exitsApartSprinklered, ...(base.profile === "uk-guide" ? {} : { travel: SPRINKLERED_TRAVEL }) } : {}), comfort, most };
}

const given = (g: Partial<Gaps> | undefined): Partial<Gaps> => ({
  ...(g?.tableGap === undefined ? {} : { tableGap: g.tableGap }),
  ...(g?.wallGap === undefined ? {} : { wallGap: g.wallGap }),
  ...(g?.rowPitch === undefined ? {} : { rowPitch: g.rowPitch }),
});
