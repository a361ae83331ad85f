import type { Problem } from "../base";

/** What is wrong with what a command was given: each problem with the file (or "command line") that it stands in. */
export type Fault = { readonly file: string; readonly problem: Problem };

export const COMMAND_LINE = "command line";

/** Thrown by the reading of arguments and files, caught in one place: nothing has been printed by then. */
export class BadInput extends Error {
  constructor(readonly faults: readonly Fault[]) {
    super(faults.map(line).join("\n"));
  }
}

const MOST_LINES = 200;

/** `file: path: what is wrong and what is allowed`, on one line whatever the text holds. */
export function line({ file, problem }: Fault): string {
  return `${file}: ${problem.path}: ${problem.message}`.replaceAll(/[\u0000-\u001f\u007f\u2028\u2029]+/g, " ");
}

export function lines(faults: readonly Fault[]): readonly string[] {
  const shown = faults.slice(0, MOST_LINES).map(line);
  const rest = faults.length - shown.length;
  return rest > 0 ? [...shown, `${faults[0]?.file ?? COMMAND_LINE}: file: ${rest} more problems; allowed: none`] : shown;
}

export const badLine = (path: string, message: string): BadInput => new BadInput([{ file: COMMAND_LINE, problem: { path, message } }]);
