import { execFileSync } from "node:child_process";
import { existsSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { briefSchema } from "../../lib/brief";
import { printProposal, printSheets } from "../../lib/print";
import { briefFile, layout, quote, venue } from "../unit/papers/fixture";
import { readPng, unlike } from "./png";

/** UPDATE_GOLDEN=1 writes the pictures anew: look at them before they are kept. */
const UPDATE = process.env["UPDATE_GOLDEN"] === "1";
const kept = fileURLToPath(new URL("papers/", import.meta.url));
const pdftoppm = (process.env["PATH"] ?? "").split(":").map((p) => join(p, "pdftoppm")).find((p) => existsSync(p));
const folder = mkdtempSync(join(tmpdir(), "marquetry-papers-"));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const meta = { reference: "QK7M-31", revision: 3, fingerprint: "9f3c 71a0 5be2 c418", drawnOn: "2027-05-09", sentOn: "2027-05-09", agreedOn: "2027-05-10", url: "https://saltings.example/p/QK7M-31", now: new Date("2027-05-09T12:00:00Z") };
const brief = briefFile({ times: { ceremony: "13:30", drinks: "14:15", meal: "16:00" } });
const PAPERS = {
  proposal: () => printProposal({ venue: venue(), brief, layout: layout(), quote: quote(), meta }),
  sheets: () => printSheets({ venue: venue(), brief: briefSchema.parse(brief), layout: layout(), meta }),
  "letter-sheets": () => printSheets({ venue: venue({ locale: "en-US", lengths: "imperial" }), brief: briefSchema.parse(brief), layout: layout(), meta }),
} as const;

/** Points of a picture to the inch: enough to see a line that moved, few enough to keep. */
const FINE = 72;

describe.skipIf(!pdftoppm).each(Object.entries(PAPERS))("the pages of the %s stay as they are", (name, print) => {
  let pages = 0;
  beforeAll(async () => {
    const { bytes, pages: n } = await print();
    pages = n;
    writeFileSync(join(folder, `${name}.pdf`), bytes);
    execFileSync(pdftoppm ?? "", ["-r", String(FINE), "-png", join(folder, `${name}.pdf`), join(folder, name)], { timeout: 60_000 });
  }, 120_000);
  it("page by page, seen by another program", () => {
    expect(pages).toBeGreaterThan(1);
    for (let page = 1; page <= pages; page += 1) {
      const file = join(kept, `${name}-${page}.png`);
      const drawn = readFileSync(join(folder, `${name}-${String(page).padStart(String(pages).length, "0")}.png`));
      if (UPDATE) {
        mkdirSync(kept, { recursive: true });
        writeFileSync(file, drawn);
      }
      expect(existsSync(file), `${name}-${page}.png is missing: UPDATE_GOLDEN=1 writes it`).toBe(true);
      const [now, before] = [readPng(drawn), readPng(readFileSync(file))];
      expect([now.width, now.height]).toEqual([before.width, before.height]);
      // Another version of the program may draw edges softer; a word that moved by its own height is found out.
      expect(unlike(now, before), `page ${page}`).toBeLessThan(0.0005);
      expect(unlike(before, now), `page ${page}`).toBeLessThan(0.0005);
    }
  }, 120_000);
});
