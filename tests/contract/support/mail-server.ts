import { spawnSync } from "node:child_process";
import { readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { SMTPServer, type SMTPServerOptions } from "smtp-server";
import { tempFolder } from "./temp";

/** What the server answers to a command instead of "go on". "never" answers nothing at all; "taken" keeps the letter and does not say so. */
export type Verdict = { readonly at: "MAIL" | "RCPT" | "DATA"; readonly code: number; readonly words: string } | "never" | "taken";
export type MailServer = {
  readonly url: string; readonly port: number;
  /** Each letter as it came over the wire, oldest first. */
  readonly got: string[];
  verdict: Verdict | undefined;
  readonly close: () => Promise<void>;
};

/** A real SMTP server on a free port of this machine. */
export async function mailServer(options: SMTPServerOptions = { disabledCommands: ["AUTH", "STARTTLS"] }): Promise<MailServer> {
  const got: string[] = [];
  const judge = (at: "MAIL" | "RCPT" | "DATA", done: (error?: Error | null) => void): void => {
    const { verdict } = made;
    if (verdict === "never") return;
    if (verdict === "taken") { done(null); return; }
    done(verdict?.at === at ? Object.assign(new Error(verdict.words), { responseCode: verdict.code }) : null);
  };
  const server = new SMTPServer({
    logger: false,
    onMailFrom: (_address, _session, done) => { judge("MAIL", done); },
    onRcptTo: (_address, _session, done) => { judge("RCPT", done); },
    onData: (stream, _session, done) => {
      const chunks: Buffer[] = [];
      stream.on("data", (chunk: Buffer) => chunks.push(chunk));
      stream.on("end", () => {
        if (made.verdict === "taken") { got.push(Buffer.concat(chunks).toString("utf8")); return; }
        judge("DATA", (error) => {
          if (!error) got.push(Buffer.concat(chunks).toString("utf8"));
          done(error);
        });
      });
    },
    ...options,
  });
  // A client that hangs up in the middle is what some tests are about.
  server.on("error", () => undefined);
  await new Promise<void>((resolve) => { server.listen(0, "127.0.0.1", resolve); });
  const address = server.server.address();
  if (address === null || typeof address === "string") throw new Error("no port");
  const made: MailServer = {
    url: `smtp://127.0.0.1:${address.port}`, port: address.port, got, verdict: undefined,
    close: () => new Promise<void>((resolve) => { server.close(resolve); }),
  };
  return made;
}

export type Papers = { readonly ca: string; readonly key: string; readonly cert: string };

/** A certificate for `localhost` and 127.0.0.1 by an authority of our own that no system knows, made for this run. */
export function ownPapers(): Papers {
  const folder = tempFolder();
  const at = (name: string): string => join(folder.path, name);
  const openssl = (...args: readonly string[]): void => {
    const run = spawnSync("openssl", args, { cwd: folder.path, encoding: "utf8" });
    if (run.status !== 0) throw new Error(`openssl ${args[0]}: ${run.stderr || String(run.error)}`);
  };
  const fresh = ["-newkey", "ec", "-pkeyopt", "ec_paramgen_curve:prime256v1", "-nodes"];
  openssl("req", "-x509", ...fresh, "-keyout", "ca.key", "-out", "ca.pem", "-subj", "/CN=Tidewheel test authority", "-days", "2");
  openssl("req", ...fresh, "-keyout", "server.key", "-out", "server.csr", "-subj", "/CN=localhost");
  writeFileSync(at("ext"), "subjectAltName=DNS:localhost,IP:127.0.0.1\n");
  openssl("x509", "-req", "-in", "server.csr", "-CA", "ca.pem", "-CAkey", "ca.key", "-CAcreateserial", "-out", "server.pem", "-days", "2", "-extfile", "ext");
  const papers = { ca: readFileSync(at("ca.pem"), "utf8"), key: readFileSync(at("server.key"), "utf8"), cert: readFileSync(at("server.pem"), "utf8") };
  folder.remove();
  return papers;
}
