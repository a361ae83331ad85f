import { add, boxesNear, clearance, roundPoint, sub, turn, type Point } from "../geometry";
import { footprint, isRound, movedTo, type Item, type Scene } from "../layout";

/** Tables whose edges come this near, and that bear one number, are one run, mm. */
const JOINED = 10;

/** A table with those joined to it that bear its number, itself first; any other piece is alone. */
export function runOf(scene: Pick<Scene, "items">, item: Item): readonly Item[] {
  if (item.kind !== "table" || isRound(item.shape)) return [item];
  const rest = scene.items.filter((i) => i.id !== item.id && i.kind === "table" && i.label === item.label && i.room === item.room && !isRound(i.shape));
  const run: Item[] = [item];
  for (let k = 0; k < run.length; k++) {
    const from = run[k];
    if (!from) break;
    const own = footprint(from);
    for (const other of rest) {
      if (run.includes(other)) continue;
      const shape = footprint(other);
      if (boxesNear(own.box, shape.box, JOINED) && clearance(own, shape) <= JOINED) run.push(other);
    }
  }
  return run;
}

/** Where a run turns about: the mean of its pieces. */
export const middleOfRun = (run: readonly Item[]): Point => [run.reduce((n, i) => n + i.at[0], 0) / run.length, run.reduce((n, i) => n + i.at[1], 0) / run.length];

/** A piece moved as one body with another that goes from one spot and turn to the next. */
export function carried(item: Item, { from, to, by }: { readonly from: Point; readonly to: Point; readonly by: number }): Item {
  const at = roundPoint(add(to, turn(sub(item.at, from), by)));
  return movedTo(item, at, ((((item.angle + by) % 360) + 360) % 360));
}
