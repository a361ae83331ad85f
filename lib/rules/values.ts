import type { Venue } from "../venue";

export type Gaps = { readonly tableGap: number; readonly wallGap: number; readonly rowPitch: number };
export type Factors = { readonly rows: number; readonly tables: number; readonly standing: number };

/** Every number that the rules compare with; lengths in mm, areas in m2. */
export type RuleValues = {
  readonly profile: "model-code" | "uk-guide" | "house";
  readonly comfort: Gaps;
  readonly most: Gaps;
  readonly source: { readonly gaps: string; readonly factors: string };
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
  readonly sightBefore: number;
};

const FT2 = 0.09290304;
const trade = "common practice, no source";

/** Gaps that hold the code's path between the lines of two tables (19 + 12 + 19 in) and between a line and a wall (19 + 12 in), each rounded up to whole millimetres. */
const CODE_GAPS: Gaps = { tableGap: 483 + 305 + 483, wallGap: 483 + 305, rowPitch: 500 + 305 };

const COMMON = {
  tableLine: 483, path: 305, freeWalk: 1829, route: 914, routeDoor: 800, rowClear: 305, centreAisle: 1067, aisleFrom: 50,
  endWall: 450, endEnd: 914, seatNear: 100, seatFar: 450, wheelchairFar: 700, densest: 7 * FT2, danceArea: 4.5 * FT2,
  exitSteps: [49, 500, 1000], exitWidth: 5.08, exitLeast: 813, sightBefore: 900,
} as const;

/** Named profiles. Comfort is the trade's; most is what the code's paths need. */
export const PROFILE_VALUES: Readonly<Record<RuleValues["profile"], RuleValues>> = {
  "model-code": {
    ...COMMON, profile: "model-code",
    comfort: { tableGap: 1524, wallGap: 1067, rowPitch: 914 }, most: CODE_GAPS,
    factors: { rows: 7 * FT2, tables: 15 * FT2, standing: 5 * FT2 },
    source: { gaps: `most: IBC 2018 1029.13.1, 1029.13.2; comfort: ${trade}`, factors: "IBC 2018 Table 1004.5" },
  },
  "uk-guide": {
    ...COMMON, profile: "uk-guide",
    comfort: { tableGap: 1500, wallGap: 1000, rowPitch: 900 }, most: CODE_GAPS,
    factors: { rows: 0.65, tables: 1, standing: 0.3 },
    source: { gaps: `most: IBC 2018 1029.13.1, 1029.13.2; comfort: ${trade}`, factors: "HM Government fire risk guides, floor-space factors (second-hand)" },
  },
  house: {
    ...COMMON, profile: "house",
    comfort: { tableGap: 1500, wallGap: 1000, rowPitch: 900 }, most: CODE_GAPS,
    factors: { rows: 7 * FT2, tables: 15 * FT2, standing: 5 * FT2 },
    source: { gaps: "rule of the house", factors: "IBC 2018 Table 1004.5" },
  },
};

/** Rules that a venue may tighten by `rules.house`: the stricter of the two figures holds. */
const TIGHTEN: Readonly<Record<string, { readonly field: keyof typeof COMMON; readonly stricter: "more" | "less" }>> = {
  route: { field: "route", stricter: "more" }, "route-door": { field: "routeDoor", stricter: "more" },
  "row-clear": { field: "rowClear", stricter: "more" }, "centre-aisle": { field: "centreAisle", stricter: "more" },
  path: { field: "path", stricter: "more" }, "table-line": { field: "tableLine", stricter: "more" },
  "end-wall": { field: "endWall", stricter: "more" }, "end-end": { field: "endEnd", stricter: "more" },
  "free-walk": { field: "freeWalk", stricter: "less" },
};
export const HOUSE_RULES: readonly string[] = Object.keys(TIGHTEN);

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
    const now = house[t.field] ?? COMMON[t.field];
    if (typeof now === "number") house[t.field] = t.stricter === "more" ? Math.max(now, limit) : Math.min(now, limit);
  }
  return { ...base, ...house, comfort, most };
}

const given = (g: Partial<Gaps> | undefined): Partial<Gaps> => ({
  ...(g?.tableGap === undefined ? {} : { tableGap: g.tableGap }),
  ...(g?.wallGap === undefined ? {} : { wallGap: g.wallGap }),
  ...(g?.rowPitch === undefined ? {} : { rowPitch: g.rowPitch }),
});
