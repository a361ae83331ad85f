import { seeded } from "../../lib/base";

/** Random choices that follow from a seed alone. */
export type Dice = {
  readonly next: () => number;
  /** A whole number from least to most. */
  readonly whole: (least: number, most: number) => number;
  readonly chance: (p: number) => boolean;
  readonly pick: <T>(list: readonly T[]) => T;
  readonly some: <T>(list: readonly T[], p: number) => T[];
};

export function diceOf(seed: number): Dice {
  const next = seeded(Math.imul(seed + 1, 2654435761) >>> 0);
  const whole = (least: number, most: number): number => least + Math.floor(next() * (most - least + 1));
  const chance = (p: number): boolean => next() < p;
  const pick = <T>(list: readonly T[]): T => {
    const one = list[whole(0, list.length - 1)];
    if (one === undefined) throw new Error("nothing to pick from");
    return one;
  };
  return { next, whole, chance, pick, some: (list, p) => list.filter(() => chance(p)) };
}
