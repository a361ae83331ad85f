/**
 * The preferred smallest set of wishes that cannot hold together (QuickXplain: Junker, AAAI 2004); null where all hold. `list` has
 * the most important first; `holds` tells whether a set can be met. None can be left out of the answer without it holding, and the
 * less important ones are blamed where there is a choice.
 */
export function quickXplain<T>(list: readonly T[], holds: (set: readonly T[]) => boolean): readonly T[] | null {
  if (list.length === 0 || holds(list)) return null;
  if (!holds([])) return [];
  return split([], false, list, holds);
}

function split<T>(background: readonly T[], grown: boolean, list: readonly T[], holds: (set: readonly T[]) => boolean): readonly T[] {
  if (grown && !holds(background)) return [];
  if (list.length === 1) return list;
  const half = Math.ceil(list.length / 2), first = list.slice(0, half), rest = list.slice(half);
  const late = split([...background, ...first], first.length > 0, rest, holds);
  const early = split([...background, ...late], late.length > 0, first, holds);
  return [...early, ...late];
}
