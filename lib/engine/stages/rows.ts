import { sinCos, type Polygon } from "../../geometry";
import { CHAIR, seatPolygon, type Layout, type Seat } from "../../layout";
import { contextOf, judge } from "../../rules";
import { AHEAD, rowPlans, standsAmong, type RowPlan } from "../rows";
import { meets, type Placed } from "../place";
import { clearsRows, turnoverAllowed, type Plan } from "./assign";
import { spend, spent, STEPS } from "../effort";
import { remembered, type Context } from "./context";
import type { RoomDay } from "./day";

/** What the check says of rows by themselves. */
const RULES = ["rowClear", "rowLength", "centreAisle", "aisles", "frontStrip", "ways", "route"];

/** The rooms with the rows; or the most places that rows were found for where these are too few, and the chairs that the laid meal leaves. */
type Laid = { readonly rooms: Map<string, RoomDay> } | { readonly rooms: null; readonly most: number; readonly chairs: number };

/**
 * Adds the ceremony's rows, or says how many the ceremony's room takes. The pitch of comfort goes before the least one, and rows
 * that the check has nothing against before any others.
 */
export function withRows(ctx: Context, plan: Plan, rooms: ReadonlyMap<string, RoomDay>, mealChairs: number): Laid {
  const seating = ctx.brief.ceremony.seating;
  const day = plan.ceremony ? rooms.get(plan.ceremony) : undefined;
  if (!day || plan.atTables || seating === "standing") return { rooms: new Map(rooms) };
  const clears = clearsRows(plan, day.f.id);
  const fixed = day.statics.filter((p) => !p.walkable), standing = fixed.filter((p) => "standing" in p.item.from);
  const music = ctx.brief.music.atCeremony ? fixed.filter((p) => p.item.kind === "dj" || p.item.kind === "band") : [];
  const kept = [...new Set([...standing, ...music])];
  // More chairs than guests change nothing.
  const spare = clears ? ctx.chair.count : Math.min(ctx.chair.count, ctx.chair.all - mealChairs);
  const fetched = spare < ctx.demand.ceremonyGuests - ctx.demand.wheelchairs && mayFetch(ctx, plan);
  const chairs = Math.min(ctx.demand.ceremonyGuests, fetched ? ctx.chair.count : spare);
  let second: Found["rows"] = null, most = 0, begun = false;
  // Rows that are never cleared leave the bar its floor, or nobody would get a drink; where they do not go past it, past the bar alone.
  const lanes = clears || fixed.every((p) => p.item.kind !== "bar") ? [false] : [true, false];
  const pitches = [...new Set([ctx.values.comfort.rowPitch, ctx.values.most.rowPitch])];
  for (const { lane, pitch } of lanes.flatMap((on) => pitches.map((of) => ({ lane: on, pitch: of })))) {
    const lay: Lay = (keep, stood, limit = Infinity) => {
      // The first is ended whatever it takes; no more are begun once all that may be spent is spent.
      if (begun && spent(ctx.effort)) return NOTHING;
      begun = true;
      const found = remembered(ctx, `rows ${pitch} ${day.f.id} ${chairs} ${namesOf(keep)} / ${namesOf(stood)} ${limit} ${lane}`, () => rowsFor(ctx, day, { pitch, keep, stood, chairs, limit, clears, lane }));
      most = Math.max(most, found.most);
      second ??= found.rows;
      return found;
    };
    const clean = clears ? leastOf(lay, { fixed, kept, standing }) : lay(fixed, []);
    if (clean.clean && clean.rows) return { rooms: placed(rooms, day, clean.rows, fetched) };
  }
  return second ? { rooms: placed(rooms, day, second, fetched) } : { rooms: null, most, chairs };
}

/** Lays rows past the first pieces, and past the others where those are in nobody's way; for less than a cost, if one is given. */
type Lay = (keep: readonly Placed[], stood: readonly Placed[], limit?: number) => Found;
type Pieces = { readonly fixed: readonly Placed[]; readonly kept: readonly Placed[]; readonly standing: readonly Placed[] };

/**
 * Where a room is turned over anyway, the rows are laid as if the meal's pieces were not there, and those in their way are set aside;
 * or past all of them, where that costs less.
 */
function leastOf(lay: Lay, { fixed, kept, standing }: Pieces): Found {
  const free = lay(kept, fixed.filter((p) => !kept.includes(p)));
  if (free.clean && free.rows?.aside.length === 0) return free;
  // What finds no room among fewer pieces finds none among more.
  const past = kept.length < fixed.length && free.rows ? lay(fixed, [], free.clean ? costOf(free) : Infinity) : free;
  if (past.clean && !(free.clean && costOf(free) <= costOf(past))) return past;
  if (free.clean) return free;
  return standing.length < kept.length ? lay(standing, fixed.filter((p) => !standing.includes(p))) : free;
}

/** What it costs to set a piece aside, as if the farthest guest sat so many millimetres farther off: a band or a DJ sets up before guests who wait. */
const ASIDE = 3_000, MUSIC_ASIDE = 6_000;
const costOf = ({ rows }: Found): number =>
  rows ? rows.plan.cost + rows.aside.reduce((n, p) => n + (p.item.kind === "dj" || p.item.kind === "band" ? MUSIC_ASIDE : ASIDE), 0) : Infinity;

/** Chairs are carried from the ceremony to the meal where a turnover is allowed, and the guests are elsewhere meanwhile than about the laid tables. */
const mayFetch = (ctx: Context, plan: Plan): boolean =>
  plan.meal.length > 0 && !plan.drinks.some((r) => plan.meal.includes(r)) && turnoverAllowed(ctx.pack, ctx.brief);

function placed(rooms: ReadonlyMap<string, RoomDay>, day: RoomDay, { plan, aside }: NonNullable<Found["rows"]>, fetched: boolean): Map<string, RoomDay> {
  const gone = day.statics.filter((p) => p.walkable || aside.includes(p) || conflicts(p, plan));
  return new Map(rooms).set(day.f.id, { ...day, rows: plan, ...(fetched ? { fetched } : {}), mealOnly: new Set(gone.map((p) => p.item.id)) });
}

/** A piece nearer to the rows than this narrows the lane beside them, mm (36 in, IBC 2018 1029.9.1). */
const BESIDE = 914;

/** Pieces that the rows must pass, a bar with the floor about it where `lane` is set, and those that stand on only where they are in nobody's way. */
type RowsAsk = { readonly pitch: number; readonly keep: readonly Placed[]; readonly stood: readonly Placed[]; readonly chairs: number; readonly limit: number; readonly clears: boolean; readonly lane: boolean };
/** The rows, what is set aside for them, whether the check has nothing against them; and the most places found. */
type Found = { readonly rows: { readonly plan: RowPlan; readonly aside: readonly Placed[] } | null; readonly clean: boolean; readonly most: number };

const NOTHING: Found = { rows: null, clean: false, most: 0 };

function rowsFor(ctx: Context, day: RoomDay, { stood, ...ask }: RowsAsk): Found {
  let first: Found["rows"] = null, most = 0;
  const plans = plansOf(ctx, day, ask);
  for (let i = 0, plan = plans(0); plan && plan.places >= ctx.demand.ceremonyGuests; plan = plans(++i)) {
    most = Math.max(most, plan.places);
    // The couple's floor takes in a piece that stands at its edge: it is carried out, where it may be.
    const lost = ask.clears ? ask.keep.filter((p) => conflicts(p, plan)) : [];
    if (lost.some((p) => staysPut(ctx, p))) continue;
    const inWay = (p: Placed): boolean => conflicts(p, plan) || standsAmong(plan.field, p.body);
    // What stands in the rows' way, then what narrows the lanes about them, then all of it.
    const steps = [stood.filter(inWay), stood.filter((p) => inWay(p) || meets(p.body, plan.field, BESIDE)), stood];
    for (const gone of steps.filter((s, k) => k === 0 || s.length > (steps[k - 1]?.length ?? 0))) {
      const aside = [...lost, ...gone];
      first ??= { plan, aside };
      if (isClean(ctx, day, plan, [...ask.keep, ...stood].filter((p) => !aside.includes(p)))) return { rows: { plan, aside }, clean: true, most };
    }
  }
  return { rows: first, clean: false, most: Math.max(most, plans(0)?.places ?? 0) };
}

/** Standing furniture that the venue lets nobody move. */
const staysPut = (ctx: Context, { item: { from, room } }: Placed): boolean =>
  "standing" in from && ctx.site.rooms.get(room)?.room.standing.find((s) => s.id === from.standing)?.move === null;

/** The plans of rows past these pieces, the best first, each worked out when it is first asked for. */
function plansOf(ctx: Context, day: RoomDay, { pitch, keep, chairs, limit, lane }: Omit<RowsAsk, "stood">): (i: number) => RowPlan | undefined {
  return remembered(ctx, `row plans ${pitch} ${day.f.id} ${chairs} ${namesOf(keep)} ${limit} ${lane}`, () => {
    const people = ctx.demand.ceremonyGuests;
    spend(ctx.effort, STEPS.rows(people, ctx.demand.wheelchairs));
    const bodies = keep.map((p) => (lane && p.item.kind === "bar" ? p.use ?? p.body : p.body)), known: RowPlan[] = [];
    const plans = rowPlans({
      room: day.f.id, floor: day.f.floor, solids: [...day.f.room.obstacles.map((o) => o.outline), ...bodies], pieces: bodies,
      zones: [...day.f.doorFloor, ...day.f.room.keepClear.map((k) => k.outline)], axis: day.f.axis, gates: day.f.gates,
      features: day.f.room.walls.filter((w) => w.is === "feature"), windows: day.f.room.windows,
    }, {
      people, wheelchairs: Math.min(ctx.demand.wheelchairs, people), chair: { id: ctx.chair.stock ?? "chair", width: ctx.chair.width, depth: ctx.chair.depth },
      rowPitch: pitch, aisle: ctx.brief.ceremony.aisle, frontDepth: ctx.values.frontDepth, curve: ctx.brief.ceremony.seating === "curve", chairsLeft: chairs,
    }, limit);
    return (i) => {
      for (let next = known.length <= i ? plans.next() : null; next && !next.done; next = known.length <= i ? plans.next() : null) known.push(next.value);
      return known[i];
    };
  });
}
const namesOf = (list: readonly Placed[]): string => list.map((p) => `${p.item.id}@${p.item.at.join()}`).join(" ");

function isClean(ctx: Context, day: RoomDay, rows: RowPlan, keep: readonly Placed[]): boolean {
  const items = [...keep.map((p) => p.item), ...rows.items];
  const layout: Layout = {
    id: "rows", title: "", why: [], turnovers: [], findings: [],
    scenes: [{ id: "ceremony", title: "", rooms: [day.f.id], drapes: ctx.site.drapes.map((d) => d.id), items, seats: rows.places, numbers: [] }],
  };
  const c = contextOf(ctx.venue, layout, ctx.brief), v = c.scenes[0];
  return v !== undefined && judge(c, v, RULES).every((f) => f.level !== "must");
}

/** True when a piece stands where a row's chair, the floor ahead of it, the aisle or the couple will be. */
export function conflicts(p: Placed, rows: RowPlan): boolean {
  if (rows.aisle && meets(p.body, rows.aisle)) return true;
  if (meets(p.body, rows.front.zone)) return true;
  return rows.items.some((i) => i.seats.some((s) => meets(p.body, seatPolygon(s)) || (s.place === "chair" && meets(p.body, aheadOf(s)))));
}
function aheadOf(s: Seat): Polygon {
  const { sin, cos } = sinCos(s.facing), by = (CHAIR.depth + AHEAD) / 2;
  return seatPolygon({ ...s, x: s.x + cos * by, y: s.y + sin * by }, { width: CHAIR.width, depth: AHEAD });
}
