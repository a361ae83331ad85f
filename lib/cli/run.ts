import { readArgs } from "./args";
import type { Command, Io } from "./command";
import { BadInput, lines } from "./problem";

/** Each command is loaded when it is called: none waits for what another one needs. */
const COMMANDS: Readonly<Record<string, () => Promise<{ readonly command: Command }>>> = {
  arrange: () => import("./commands/arrange"),
  capacity: () => import("./commands/capacity"),
  change: () => import("./commands/change"),
  check: () => import("./commands/check"),
  draw: () => import("./commands/draw"),
  proposal: () => import("./commands/proposal"),
  quote: () => import("./commands/quote"),
  sheets: () => import("./commands/sheets"),
  repair: () => import("./commands/repair"),
  schema: () => import("./commands/schema"),
};

/** Runs one of the file commands. 0: done; 1: done, and the answer is "no"; 2: bad input, told line by line, nothing printed. */
export async function run(argv: readonly string[], io: Io): Promise<0 | 1 | 2> {
  const [name = "", ...rest] = argv;
  try {
    const load = Object.hasOwn(COMMANDS, name) ? COMMANDS[name] : undefined;
    if (!load) {
      io.err(`command line: COMMAND: "${name}" is not a command; allowed: ${Object.keys(COMMANDS).join(", ")}\n`);
      return 2;
    }
    const { command } = await load();
    return await command.run(readArgs(command.usage, rest), io);
  } catch (error) {
    if (!(error instanceof BadInput)) throw error;
    for (const l of lines(error.faults)) io.err(`${l}\n`);
    return 2;
  }
}
