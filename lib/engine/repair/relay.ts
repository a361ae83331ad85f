import { bearing, sub } from "../../geometry";
import { isRound, type Item, type Layout, type Seat } from "../../layout";
import { chairOf, type Raw } from "../../rules";
import { moveSeats, ringSeats } from "../seating/seats";
import { pieceOf } from "./covers";
import { mapPiece } from "./edit";
import { keyOf, mustsOf, type Bench } from "./judge";

/** Turns of a ring of chairs that are tried, within the gap from one chair to the next. */
const TURNS = 12;

/** Findings about floor that a place faces or backs on to. */
const FACED = new Set(["wall-gap", "table-gap"]);

/** Tables that are fixed and of which a finding names a chair or a place: the table stays, and its chairs may stand elsewhere about it. */
const tablesWithChairAtFault = (b: Bench, layout: Layout, f: Raw): readonly Item[] => (["a", "b"] as const).flatMap((k) => {
  const id = f.data?.[k], is = f.data?.[`${k}Is`];
  const item = typeof id === "string" && (is === "chair" || FACED.has(f.code)) && b.fixed.has(id) ? pieceOf(layout, f, id) : undefined;
  return item?.kind === "table" ? [item] : [];
});

/** Ways to lay a table that stays: the chairs of a round turned about it, then one chair, or two side by side, taken away. */
function lays(b: Bench, t: Item): readonly (readonly Seat[])[] {
  const n = t.seats.length, [first] = t.seats;
  const wheels = t.seats.some((s) => s.place === "wheelchair");
  const turned = isRound(t.shape) && first && !wheels && n > 1 ? Array.from({ length: TURNS - 1 }, (_, k) => {
    const start = bearing(sub([first.x, first.y], t.at)) + ((k + 1) * 360) / n / TURNS;
    return isRound(t.shape) ? moveSeats(ringSeats(t.shape.diameter, n, chairOf(b.venue), ((start % 360) + 360) % 360), t.at, 0) : t.seats;
  }) : [];
  const chairs = t.seats.flatMap((s, i) => (s.place === "chair" ? [i] : []));
  const fewer = [1, 2].flatMap((out) => (n - out < 2 ? [] : chairs.map((i) => t.seats.filter((_, k) => !(k === i || (out === 2 && k === (i + 1) % n && t.seats[k]?.place === "chair"))))));
  return [...turned, ...fewer];
}

/** Guests left without a place by a chair that goes are seated elsewhere afterwards. */
const ofNumbers = (f: Raw): boolean => f.code === "places-short" || f.code === "seats-count";

/** Lays the chairs of fixed tables anew where one of them stands wrongly; tables, and chairs that stand well, stay as they are. */
export function relayFixed(b: Bench, start: Layout): Layout {
  let layout = start;
  const tried = new Set<string>();
  for (let round = 0; round < 8; round++) {
    const musts = mustsOf(b, layout), keys = new Set(musts.map(keyOf));
    const [table] = musts.flatMap((f) => tablesWithChairAtFault(b, layout, f)).filter((t) => !tried.has(t.id));
    if (!table) return layout;
    tried.add(table.id);
    let best: { readonly layout: Layout; readonly left: number } = { layout, left: musts.filter((f) => !ofNumbers(f)).length };
    for (const seats of lays(b, table)) {
      if (best.left === 0 || b.budget.left <= 0) break;
      const trial = mapPiece(layout, table, (i) => ({ ...i, seats }));
      const after = mustsOf(b, trial).filter((x) => !ofNumbers(x)).map(keyOf);
      if (after.length < best.left && after.every((k) => keys.has(k))) best = { layout: trial, left: after.length };
    }
    layout = best.layout;
  }
  return layout;
}
