import { boxesNear, clearance, polygonShape, regionArea, type Point } from "../../geometry";
import { isRound } from "../../layout";
import { isRoundFamily, lay, type Draft, type Work } from "./drafts";
import { composedGrids } from "./grids";
import { groundFor, groupFooting, type Hall } from "./hall";
import { standingOf } from "./items";
import { shareSides, sideReach } from "./seats";
import type { Family, Laid, Sides } from "./types";
import { placesAt, roundUnit, type Unit } from "./units";

/** What tables on the slant look like beside tables true to the walls, to those who did not ask for them. */
const UNASKED = 0.45;
/** The share of the floor that slanting tables may ask for, and no more is tried. */
const ROOMY = 0.8;
/** Let go for whole millimetres: a slanting table comes to rest on none. */
const SLACK = 1.5;

/**
 * A long table at 45 degrees to the hall's axes, either way round. Neighbours in a column lie side by side, a pitch of sqrt(2) widths
 * and gaps apart; neighbours in a row may stand crosswise, half a length and half a width and a gap apart along the slant.
 */
function slantUnit(hall: Hall, family: Family, perTable: number): Unit | null {
  const { shape } = family;
  if (isRound(shape) || perTable < 1) return null;
  const { width: w, depth: d } = shape, gap = Math.max(hall.tableGap, 2 * sideReach(hall.chair) + 10) + SLACK;
  const sides: Sides = shareSides(shape, perTable, [true, family.ends, true, family.ends], 0);
  const laid = sides.map((n) => n > 0);
  const footing = groupFooting({ ...hall, slack: SLACK }, `slant ${family.stock} ${perTable}`, shape, [45, 135].map((angle) => ({ at: [0, 0] as Point, angle, laid })));
  const px = Math.ceil(Math.SQRT2 * ((w + d) / 2 + gap)), py = Math.ceil(Math.SQRT2 * (d + gap)), over = Math.ceil((w + d) / Math.SQRT2);
  return { family, count: 1, round: false, places: sides.reduce((a, b) => a + b, 0), perTable, w: over, h: over, px, py, upright: false, ends: family.ends, footing };
}

/**
 * Tables on the slant. Rounds in a level grid turned by 45 degrees; long tables about a line of symmetry as a chevron whose ends point at
 * the couple, and without such a line in a herringbone, column by column. Post: the drafts hold the places.
 */
export function diagonalDrafts(work: Work, f: Family, places: number): readonly Draft[] {
  const { hall, ask } = work, per = placesAt(f, ask, ask.chair), round = isRoundFamily(f);
  const unit = round ? roundUnit(hall, f, per) : slantUnit(hall, f, per);
  const n = unit ? Math.ceil(places / unit.places) : 0;
  if (!unit || n < 2 || n > f.count || n * unit.px * unit.py > ROOMY * regionArea(hall.floor)) return [];
  const ground = groundFor(hall, unit.footing), less = ask.form === "diagonal" ? 0 : UNASKED;
  return composedGrids(hall, unit, ground, n, { keep: 3, rough: round ? undefined : 12, turned: round ? onSlant : undefined }).flatMap((s): Draft[] => {
    const laid = round ? (onSlant(s.points) ? lay(unit, s.points) : null) : slanted(hall, unit, s.points);
    return laid ? [{ laid, kind: round ? "rounds" : "long", form: "diagonal", score: s.score - less }] : [];
  });
}

/** Most tables of a grid on the slant have their nearest neighbour on it; how far off 45 degrees it may lie, as a ratio. */
const MOSTLY = 0.7, TILT = 0.6;
/** Whether what was chosen of a turned grid still shows its slant, and is no level grid of every second row. */
function onSlant(points: readonly Point[]): boolean {
  const tilted = points.filter((p) => {
    const [near] = points.filter((q) => q !== p).map((q): Point => [Math.abs(q[0] - p[0]), Math.abs(q[1] - p[1])]).sort((a, b) => Math.hypot(a[0], a[1]) - Math.hypot(b[0], b[1]));
    return near !== undefined && Math.min(near[0], near[1]) >= TILT * Math.max(near[0], near[1]);
  });
  return tilted.length >= MOSTLY * points.length;
}

/** The tables at their slants; null where one stands so near the line of symmetry that its image would cross it, or two too near each other. */
function slanted(hall: Hall, unit: Unit, points: readonly Point[]): readonly Laid[] | null {
  const { family, perTable } = unit, { shape } = family;
  if (isRound(shape)) return null;
  const { mirrorX, mirrorY, focus } = hall, columns = [...new Set(points.map((p) => p[0]))].sort((a, b) => a - b);
  const off = (p: Point): number | null => (mirrorX !== null ? p[0] - mirrorX : mirrorY !== null ? p[1] - mirrorY : null);
  const angleAt = (p: Point): number => {
    const across = off(p);
    if (across === null) return columns.indexOf(p[0]) % 2 === 0 ? 45 : 135;
    const along = mirrorX !== null ? (focus?.[1] ?? 0) - p[1] : (focus?.[0] ?? 0) - p[0];
    return along * across > 0 ? 135 : 45;
  };
  const sides = shareSides(shape, perTable, [true, family.ends, true, family.ends], 0);
  const out = points.map((at, group): Laid => ({ family, at, angle: angleAt(at), ring: 0, sides, group }));
  const bodies = out.map((l) => polygonShape(standingOf(l).polygon));
  if (points.some((p) => Math.abs(off(p) ?? Infinity) < unit.px / 2 - 1)) return null;
  return bodies.every((a, i) => bodies.every((b, j) => j <= i || !boxesNear(a.box, b.box, hall.tableGap) || clearance(a, b) >= hall.tableGap)) ? out : null;
}
