import { add, scale, turn } from "../../geometry";
import { CHAIR, isRound, type Item, type Layout, type SceneId } from "../../layout";
import { isRowChair, isWheelchairSpace, runsOf } from "../../rules";
import { addPiece, freshId, mapPiece, sceneOf } from "./edit";
import { addsNone, type Bench } from "./judge";
import { scenesWith } from "./region";

const lookOf = (i: Item): number => i.seats[0]?.facing ?? (i.angle + 90) % 360;

/** A chair beside another, `columns` to its right and `rows` behind. */
function beside(layout: Layout, i: Item, columns: number, back: number): Item {
  const look = lookOf(i), width = isRound(i.shape) ? i.shape.diameter : i.shape.width;
  const at = add(i.at, add(turn([0, columns * width], look), turn([-back, 0], look)));
  const spot = [Math.round(at[0]), Math.round(at[1])] as const;
  const by = [spot[0] - i.at[0], spot[1] - i.at[1]] as const;
  return { ...i, id: freshId(layout, "row-more-chair"), label: "Chair", at: spot, seats: i.seats.map((s) => ({ ...s, x: s.x + by[0], y: s.y + by[1] })) };
}

/** Distance from one row to the next, mm: as the rows stand, else a chair and the least clear floor ahead. */
function pitchOf(chairs: readonly Item[]): number {
  const first = chairs[0];
  if (!first) return CHAIR.depth + 420;
  const depths = [...new Set(chairs.map((c) => Math.round(turn(c.at, -lookOf(first))[0])))].sort((a, b) => a - b);
  const steps = depths.slice(1).map((d, k) => d - (depths[k] ?? d)).filter((d) => d > 300);
  return steps.length > 0 ? Math.min(...steps) : CHAIR.depth + 420;
}

/** Adds chairs to the ceremony's rows: at the ends of rows, the last row first, then in a new row behind. */
export function addRowChairs(b: Bench, start: Layout, need: number): Layout {
  let layout = start;
  for (let left = need; left > 0; left--) {
    const scene = sceneOf(layout, "ceremony");
    const chairs = scene?.items.filter((i) => isRowChair(i) && !isRound(i.shape)) ?? [];
    const one = chairs[0];
    if (!scene || !one) return layout;
    const behind = (i: Item): number => turn(i.at, -lookOf(i))[0];
    const runs = [...runsOf(chairs)].sort((x, y) => (x[0] && y[0] ? behind(x[0]) - behind(y[0]) : 0));
    const ends = runs.flatMap((r): readonly Item[] => { const a = r[0], z = r.at(-1); return a && z ? [beside(layout, a, 1, 0), beside(layout, a, -1, 0), beside(layout, z, 1, 0), beside(layout, z, -1, 0)] : []; });
    const pitch = pitchOf(chairs);
    const last = chairs.filter((c) => Math.abs(behind(c) - Math.min(...chairs.map(behind))) < 5);
    const options = [...ends, ...last.map((c) => beside(layout, c, 0, pitch))];
    const own = scenesWith(layout, one);
    const next = options.filter((o) => !chairs.some((c) => Math.hypot(c.at[0] - o.at[0], c.at[1] - o.at[1]) < 300)).reduce<Layout | null>((found, o) => {
      if (found || b.budget.left <= 0) return found;
      const trial = addPiece(layout, o, new Set(own.map((s): SceneId => s.id)));
      return addsNone(b, layout, trial, (f) => f.items.includes(o.id)) ? trial : null;
    }, null);
    if (!next) return layout;
    layout = next;
  }
  return layout;
}

/** Puts wheelchairs' spaces in the rows: in the stead of one to three chairs at the end of a row, where a route comes by. */
export function addRowWheels(b: Bench, start: Layout, need: number): Layout {
  let layout = start;
  for (let left = need; left > 0; left--) {
    const next = oneWheel(b, layout);
    if (!next) return layout;
    layout = next;
  }
  return layout;
}

function oneWheel(b: Bench, layout: Layout): Layout | null {
  const scene = sceneOf(layout, "ceremony");
  const chairs = scene?.items.filter((i) => isRowChair(i) && !b.fixed.has(i.id)) ?? [];
  const there = scene?.items.find(isWheelchairSpace);
  for (const run of [...runsOf(chairs)].reverse()) for (const end of [run, [...run].reverse()]) for (const taken of [2, 1, 3]) for (const shift of [0, -1, 1]) {
    const first = end[0], second = end[taken - 1];
    if (!first || !second || b.budget.left <= 0) continue;
    const look = lookOf(first);
    const depth = isRound(first.shape) ? first.shape.diameter : first.shape.depth;
    const middle = scale(add(first.at, second.at), 0.5);
    const at = add(middle, turn([shift * ((1220 - depth) / 2), 0], look)).map(Math.round);
    const item: Item = {
      id: freshId(layout, there ? "wheelchair-space-more" : "wheelchair-space"), kind: "other", role: "wheelchair-space", label: "Wheelchair space", room: first.room, from: { brought: true },
      shape: { width: 760, depth: 1220 }, at: [at[0] ?? 0, at[1] ?? 0], angle: (((look - 90) % 360) + 360) % 360, seats: [{ x: at[0] ?? 0, y: at[1] ?? 0, facing: look, place: "wheelchair" }],
    };
    const scenes = new Set(scenesWith(layout, first).map((s): SceneId => s.id));
    const without = end.slice(0, taken).reduce((l, c) => mapPiece(l, c, () => null), layout);
    const trial = addPiece(without, item, scenes);
    const guests = b.brief.guests.ceremony ?? b.brief.guests.adults + b.brief.guests.children;
    const short = guests - (sceneOf(trial, "ceremony")?.seats ?? 0);
    const filled = short > 0 ? addRowChairs(b, trial, short) : trial;
    if (addsNone(b, layout, filled, (f) => f.items.includes(item.id))) return filled;
  }
  return null;
}
