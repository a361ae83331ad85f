import { readFileSync } from "node:fs";
import { fail, ok, type Result } from "../base";
import type { Config } from "../config";
import { mailbox, nowhere, smtp, type Transport } from "../mail";

/** The way that mails go by the settings. Fails, in words, where the file of certificates cannot be read. */
export function transportOf({ mailUrl, mailCa, demo }: Config): Result<Transport, string> {
  if (mailUrl === undefined) return ok(demo ? mailbox : nowhere);
  if (mailCa === undefined) return ok(smtp({ url: mailUrl }));
  try {
    return ok(smtp({ url: mailUrl, ca: readFileSync(mailCa, "utf8") }));
  } catch (error) {
    return fail(`MARQUETRY_MAIL_CA: the file ${mailCa} cannot be read (${error instanceof Error ? error.message : String(error)}).`);
  }
}
