import { seatPolygon, type Layout } from "../../layout";
import { contextOf, judge } from "../../rules";
import { seatRows, type RowPlan } from "../rows";
import { meets, type Placed } from "../place";
import { clearsRows, turnoverAllowed, type Plan } from "./assign";
import { spend, STEPS } from "../effort";
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
  const fixed = day.statics.filter((p) => !p.walkable);
  const standingOnly = day.statics.filter((p) => "standing" in p.item.from);
  const music = ctx.brief.music.atCeremony ? fixed.filter((p) => p.item.kind === "dj" || p.item.kind === "band") : [];
  // Rooms that are turned over anyway may do without the meal's pieces; a room that is not keeps them.
  const tries = clears ? [fixed, [...new Set([...standingOnly, ...music])], standingOnly] : [fixed];
  // More chairs than guests change nothing.
  const spare = clears ? ctx.chair.count : Math.min(ctx.chair.count, ctx.chair.all - mealChairs);
  const fetched = spare < ctx.demand.ceremonyGuests - ctx.demand.wheelchairs && mayFetch(ctx, plan);
  const chairs = Math.min(ctx.demand.ceremonyGuests, fetched ? ctx.chair.count : spare);
  const asks = [...new Set([ctx.values.comfort.rowPitch, ctx.values.most.rowPitch])].flatMap((pitch) => tries.map((keep) => ({ pitch, keep, chairs })));
  let second: { readonly rows: RowPlan; readonly keep: readonly Placed[] } | null = null, most = 0;
  for (const ask of asks) {
    const found = remembered(ctx, `rows ${ask.pitch} ${day.f.id} ${chairs} ${ask.keep.map((p) => `${p.item.id}@${p.item.at.join()}`).join(" ")}`, () => rowsFor(ctx, day, ask));
    most = Math.max(most, found.most);
    if (!found.rows) continue;
    if (found.clean) return { rooms: placed(rooms, day, { rows: found.rows, keep: ask.keep, fetched }) };
    second ??= { rows: found.rows, keep: ask.keep };
  }
  return second ? { rooms: placed(rooms, day, { ...second, fetched }) } : { rooms: null, most, chairs };
}

/** Chairs are carried from the ceremony to the meal where a turnover is allowed, and the guests are elsewhere meanwhile than about the laid tables. */
const mayFetch = (ctx: Context, plan: Plan): boolean =>
  plan.meal.length > 0 && !plan.drinks.some((r) => plan.meal.includes(r)) && turnoverAllowed(ctx.pack, ctx.brief);

type Stood = { readonly rows: RowPlan; readonly keep: readonly Placed[]; readonly fetched: boolean };
function placed(rooms: ReadonlyMap<string, RoomDay>, day: RoomDay, { rows, keep, fetched }: Stood): Map<string, RoomDay> {
  const gone = day.statics.filter((p) => !keep.includes(p) || conflicts(p, rows));
  return new Map(rooms).set(day.f.id, { ...day, rows, ...(fetched ? { fetched } : {}), mealOnly: new Set(gone.map((p) => p.item.id)) });
}

type RowsAsk = { readonly pitch: number; readonly keep: readonly Placed[]; readonly chairs: number };
function rowsFor(ctx: Context, day: RoomDay, { pitch, keep, chairs }: RowsAsk): { readonly rows: RowPlan | null; readonly clean: boolean; readonly most: number } {
  const people = ctx.demand.ceremonyGuests;
  spend(ctx.effort, STEPS.rows(people, ctx.demand.wheelchairs));
  const found = seatRows({
    room: day.f.id, floor: day.f.floor, solids: [...day.f.room.obstacles.map((o) => o.outline), ...keep.map((p) => p.body)],
    zones: [...day.f.doorFloor, ...day.f.room.keepClear.map((k) => k.outline)], axis: day.f.axis, gates: day.f.gates,
    features: day.f.room.walls.filter((w) => w.is === "feature"), windows: day.f.room.windows,
  }, {
    people, wheelchairs: Math.min(ctx.demand.wheelchairs, people), chair: { id: ctx.chair.stock ?? "chair", width: ctx.chair.width, depth: ctx.chair.depth },
    rowPitch: pitch, aisle: ctx.brief.ceremony.aisle, frontDepth: ctx.values.frontDepth, curve: ctx.brief.ceremony.seating === "curve", chairsLeft: chairs,
  }), plans = found.filter((p) => p.places >= people);
  const clean = plans.find((p) => isClean(ctx, day, p, keep));
  const first = clean ?? plans[0];
  return { rows: first ?? null, clean: clean !== undefined, most: Math.max(0, ...found.map((p) => p.places)) };
}

function isClean(ctx: Context, day: RoomDay, rows: RowPlan, keep: readonly Placed[]): boolean {
  const items = [...keep.map((p) => p.item), ...rows.items];
  const layout: Layout = {
    id: "rows", title: "", why: [], turnovers: [], findings: [],
    scenes: [{ id: "ceremony", title: "", rooms: [day.f.id], drapes: ctx.site.drapes.map((d) => d.id), items, seats: rows.places, numbers: [] }],
  };
  const c = contextOf(ctx.venue, layout, ctx.brief), v = c.scenes[0];
  return v !== undefined && judge(c, v, RULES).every((f) => f.level !== "must");
}

/** True when a piece stands where a row's chair, the aisle or the couple will be. */
export function conflicts(p: Placed, rows: RowPlan): boolean {
  if (rows.aisle && meets(p.body, rows.aisle)) return true;
  if (meets(p.body, rows.front.zone)) return true;
  return rows.items.some((i) => i.seats.some((s) => meets(p.body, seatPolygon(s))));
}
