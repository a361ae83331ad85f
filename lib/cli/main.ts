import { run } from "./run";

/** What a shell calls a fault of the program itself (EX_SOFTWARE of sysexits.h): never to be read as the answer "no". */
const OWN_FAULT = 70;

// A reader who has seen enough closes the pipe; that is no fault.
process.stdout.on("error", (error: NodeJS.ErrnoException) => { if (error.code === "EPIPE") process.exit(0); throw error; });

try {
  process.exitCode = await run(process.argv.slice(2), {
    out: (text) => { process.stdout.write(text); },
    err: (text) => { process.stderr.write(text); },
    clock: { now: () => Math.round(performance.now()) },
  });
} catch (error) {
  process.stderr.write(`fault of the program: ${error instanceof Error ? (error.stack ?? error.message) : String(error)}\n`);
  process.exitCode = OWN_FAULT;
}
