import { BadInput, COMMAND_LINE, type Fault } from "./problem";

/** What one command takes: files by their names in the usage line, options with a value, switches. */
export type Usage = {
  readonly name: string;
  readonly files: readonly string[];
  readonly options: readonly string[];
  readonly switches: readonly string[];
};

export type Args = {
  readonly files: readonly string[];
  readonly option: (name: string) => string | undefined;
  readonly has: (name: string) => boolean;
};

export const usageLine = (u: Usage): string =>
  [`npm run --silent ${u.name} --`, ...u.files, ...u.options.map((o) => `[${o} …]`), ...u.switches.map((s) => `[${s}]`)].join(" ");

/** Sorts the words of a command line; everything wrong with them is told at once. */
export function readArgs(usage: Usage, argv: readonly string[]): Args {
  const files: string[] = [];
  const given = new Map<string, string>();
  const faults: Fault[] = [];
  const fault = (path: string, message: string): void => { faults.push({ file: COMMAND_LINE, problem: { path, message } }); };
  for (let i = 0; i < argv.length; i++) {
    const word = argv[i] ?? "";
    if (!word.startsWith("--") || word === "--") { if (word !== "--") files.push(word); continue; }
    const cut = word.indexOf("=");
    const name = cut < 0 ? word : word.slice(0, cut);
    const inline = cut < 0 ? undefined : word.slice(cut + 1);
    if (given.has(name)) fault(name, "stands twice; allowed: once");
    if (usage.switches.includes(name)) {
      if (inline !== undefined) fault(name, "takes no value; allowed: the word alone");
      given.set(name, "");
    } else if (usage.options.includes(name)) {
      const value = inline ?? argv[++i];
      if (value === undefined || value === "" || (inline === undefined && value.startsWith("--"))) fault(name, "has no value; allowed: the option and its value");
      given.set(name, value ?? "");
    } else {
      fault(name, `unknown option; allowed: ${[...usage.options, ...usage.switches].join(", ") || "none"}`);
    }
  }
  usage.files.slice(files.length).forEach((f) => fault(f, `missing; allowed: ${usageLine(usage)}`));
  files.slice(usage.files.length).forEach((f) => fault(f, `one file too many; allowed: ${usageLine(usage)}`));
  if (faults.length > 0) throw new BadInput(faults);
  return { files, option: (n) => given.get(n), has: (n) => given.has(n) };
}

export type WholeRange = { readonly least: number; readonly most: number; readonly otherwise: number };

/** A whole number option within bounds, or what is taken without it. */
export function wholeOption(args: Args, name: string, { least, most, otherwise }: WholeRange): number {
  const text = args.option(name);
  if (text === undefined) return otherwise;
  const n = /^\d{1,15}$/.test(text) ? Number(text) : NaN;
  if (n >= least && n <= most) return n;
  throw new BadInput([{ file: COMMAND_LINE, problem: { path: name, message: `"${text}" is not allowed; allowed: a whole number from ${least} to ${most}` } }]);
}
