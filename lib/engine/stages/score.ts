import { axisOf } from "../../venue";
import type { Finding, Item, Layout, Scene, Turnover } from "../../layout";
import { segmentClearance, polygonShape } from "../../geometry";
import type { Context } from "./context";
import type { Day } from "./day";

type Score = NonNullable<Layout["score"]>;
const clamp = (x: number): number => Math.round(Math.max(0, Math.min(1, x)) * 100) / 100;

/** Guests who see the couple: turned less than 120 degrees from them, and no column on the line between. */
export function facing(ctx: Pick<Context, "venue">, meal: Scene | undefined): { readonly see: number; readonly of: number } {
  const top = meal?.items.filter((i) => i.role === "top") ?? [];
  const first = top[Math.floor(top.length / 2)];
  if (!meal || !first) return { see: 0, of: 0 };
  const columns = ctx.venue.rooms.filter((r) => meal.rooms.includes(r.id)).flatMap((r) => r.obstacles.filter((o) => o.height === undefined || o.height >= 1500).map((o) => polygonShape(o.outline)));
  let see = 0, of = 0;
  for (const t of meal.items) if (t.kind === "table" && t.role !== "top" && t.role !== "work") for (const s of t.seats) {
    of++;
    const to = (Math.atan2(first.at[1] - s.y, first.at[0] - s.x) * 180) / Math.PI;
    const off = Math.abs((((to - s.facing) % 360) + 540) % 360 - 180);
    if (off < 120 && t.room === first.room && !columns.some((c) => segmentClearance(c, [[s.x, s.y], first.at]) < 1)) see++;
  }
  return { see, of };
}

/**
 * Each part of the score, 0 to 1: comfort (which gaps and how many to a table), flow (mean walk from places to bar or buffet,
 * 20 m is none), sight (share of guests who see the couple), tidiness (share of tables true to the room's axes),
 * moves (turnover minutes, two hours is none).
 */
export function scoreOf(ctx: Pick<Context, "venue">, day: Pick<Day, "ease" | "removed">, scenes: readonly Scene[], turnovers: readonly Turnover[], findings: readonly Finding[]): Score {
  const meal = scenes.find((s) => s.id === "meal");
  const tables = meal?.items.filter((i) => i.seats.length > 0 && i.role !== "work") ?? [];
  const should = findings.filter((f) => f.level === "should").length;
  const served = meal?.items.filter((i) => i.kind === "bar" || i.kind === "buffet").map((i) => i.at) ?? [];
  const walks = served.length === 0 ? [] : tables.map((t) => Math.min(...served.map((b) => Math.hypot(b[0] - t.at[0], b[1] - t.at[1]))) / 1000);
  const mean = walks.length === 0 ? 6 : walks.reduce((a, b) => a + b, 0) / walks.length;
  const sight = facing(ctx, meal);
  const minutes = turnovers.reduce((n, t) => n + t.minutes, 0);
  return {
    comfort: clamp((day.ease.gaps === "comfort" ? 0.6 : day.ease.gaps === "close" ? 0.45 : 0.3) + (day.ease.perTable === "comfort" ? 0.4 : 0.2) - 0.02 * should),
    flow: clamp(1 - mean / 20),
    sight: clamp(sight.of === 0 ? 0.7 : sight.see / sight.of),
    tidiness: clamp(tables.length === 0 ? 1 : tables.filter((t) => straight(ctx, t)).length / tables.length),
    moves: clamp(1 - minutes / 120 - 0.05 * day.removed.length),
  };
}

function straight(ctx: Pick<Context, "venue">, t: Item): boolean {
  if ("diameter" in t.shape) return true;
  const room = ctx.venue.rooms.find((r) => r.id === t.room);
  const off = (((t.angle - (room ? axisOf(room.outline) : 0)) % 90) + 90) % 90;
  return off < 0.5 || off > 89.5;
}
