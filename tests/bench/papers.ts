/**
 * The proposal against the same pages printed by Chromium in one run, and against bare pdfkit drawing as many primitives.
 * Run by `npx tsx tests/bench/papers.ts`; prints one line a figure. Times are of this machine as it is loaded now: the three are
 * measured one after another, so that they may be compared with each other.
 */
import { execFileSync } from "node:child_process";
import { mkdtempSync, readFileSync, statSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { pathToFileURL } from "node:url";
import PDFDocument from "pdfkit";
import { briefSchema, type BriefFile } from "../../lib/brief";
import { tidewheel } from "../../lib/demo";
import { PALETTES, toSvg, type Drawing, type Mark } from "../../lib/drawing";
import { paint, type PdfSurface } from "../../lib/drawing/pdf";
import { arrange } from "../../lib/engine";
import { quote } from "../../lib/fees";
import type { Content, Element, PaperDocument } from "../../lib/papers";
import { printProposal, printSheets, proposalDocument, type ProposalPrint } from "../../lib/print";
import { venueSchema } from "../../lib/venue";

const CHROMIUM = process.env["CHROMIUM"] ?? "/usr/bin/chromium";
const BRIEF: BriefFile = {
  format: "marquetry.brief/1", package: "hosted-day", date: "2027-06-12", couple: ["Ines Calloway", "Theo Brandt"], reference: "TM-101",
  guests: { adults: 86, children: 6, highChairs: 2, wheelchairs: 1, suppliers: 4 }, meal: { service: "buffet", tables: "mixed" },
  music: { by: "dj", dancing: 0.4 }, displays: ["welcome", "cards", "cake", "seating-plan"], turnover: true,
};

function inputOf(): ProposalPrint {
  const venue = venueSchema.parse(tidewheel), brief = briefSchema.parse(BRIEF);
  const layout = arrange(venue, brief, { seed: 1, layouts: 1 }).layouts[0];
  if (!layout) throw new Error("the bench's own brief has no layout");
  return { venue, brief: BRIEF, layout, quote: quote(venue, brief, layout), meta: { reference: "TM-101", revision: 3, fingerprint: "9f3c 71a0 5be2 c418", now: new Date("2027-05-09T12:00:00Z") } };
}

type Leaf = Content;
const leavesOf = (paper: PaperDocument): readonly Leaf[] => {
  const within = (e: Element): readonly Leaf[] => e.children.flatMap((c) => (c.kind === "content" ? [c] : within(c)));
  return [...paper.pages.flatMap((p) => p.artifacts), ...paper.elements.flatMap(within)];
};

/** The same marks as a page of HTML holds them: one SVG a leaf, laid where it stands. */
function htmlOf(paper: PaperDocument): string {
  const face = (family: string, file: string, weight: string, style = "normal"): string =>
    `@font-face{font-family:'${family}';src:url(${pathToFileURL(path.resolve("node_modules/@fontsource", file)).href});font-weight:${weight};font-style:${style}}`;
  const { width, height } = paper.size;
  const svg = (c: Leaf): string => {
    const { at, scale } = c.placing ?? { at: [0, 0] as const, scale: 1 };
    const drawing: Drawing = { width, height, perMetre: 0, origin: [0, 0], title: "", words: [], marks: c.marks as readonly Mark[] };
    return toSvg(drawing, { theme: "print" }).replace("<svg ", `<svg style="position:absolute;left:${at[0]}mm;top:${at[1]}mm;width:${width * scale}mm;height:${height * scale}mm;overflow:visible" `);
  };
  const leaves = leavesOf(paper);
  const pages = paper.pages.map((_, i) => `<div class=p>${leaves.filter((l) => l.page === i).map(svg).join("")}</div>`);
  return `<!doctype html><meta charset=utf-8><style>${[
    face("Newsreader", "newsreader/files/newsreader-latin-400-normal.woff2", "400"), face("Newsreader", "newsreader/files/newsreader-latin-500-normal.woff2", "500"),
    face("Newsreader", "newsreader/files/newsreader-latin-600-normal.woff2", "600"), face("Newsreader", "newsreader/files/newsreader-latin-400-italic.woff2", "400", "italic"),
    face("Public Sans", "public-sans/files/public-sans-latin-400-normal.woff2", "400"), face("Public Sans", "public-sans/files/public-sans-latin-600-normal.woff2", "600"),
  ].join("")}@page{size:${width}mm ${height}mm;margin:0}body{margin:0}.p{position:relative;width:${width}mm;height:${height}mm;overflow:hidden;break-after:page}</style>${pages.join("")}`;
}

type Call = (doc: InstanceType<typeof PDFDocument>) => void;

/** Every primitive of the paper as a bare call, by page. */
function callsOf(paper: PaperDocument): { readonly pages: readonly (readonly Call[])[]; readonly count: number } {
  const pages = paper.pages.map((): Call[] => []);
  let count = 0;
  for (const leaf of leavesOf(paper)) {
    const put = (call: Call): void => { count += 1; pages[leaf.page]?.push(call); };
    const surface: PdfSurface = {
      path: ({ steps, fill, stroke }) => put((doc) => {
        for (const s of steps) {
          if (s.op === "M") doc.moveTo(...s.to); else if (s.op === "L") doc.lineTo(...s.to);
          else if (s.op === "C") doc.bezierCurveTo(...s.c1, ...s.c2, ...s.to); else doc.closePath();
        }
        if (stroke) doc.lineWidth(stroke.weight).strokeColor(stroke.color);
        if (fill && stroke) doc.fillColor(fill).fillAndStroke(); else if (fill) doc.fillColor(fill).fill(); else doc.stroke();
      }),
      circle: ({ at, radius, fill }) => put((doc) => { doc.circle(at[0], at[1], radius); if (fill) doc.fillColor(fill).fill(); else doc.stroke(); }),
      clip: (_steps, body) => body(),
      text: ({ at, text, size, color }) => put((doc) => { doc.fontSize(size).fillColor(color).text(text, at[0], at[1], { lineBreak: false }); }),
    };
    paint(leaf.marks, { surface, colours: (ink) => PALETTES.print[ink], ...(leaf.placing ? { placing: leaf.placing } : {}) });
  }
  return { pages, count };
}

async function bare(paper: PaperDocument, pages: readonly (readonly Call[])[]): Promise<number> {
  const doc = new PDFDocument({ autoFirstPage: false, font: path.resolve("node_modules/@fontsource/public-sans/files/public-sans-latin-400-normal.woff") as never });
  let size = 0;
  doc.on("data", (chunk: Buffer) => { size += chunk.length; });
  const done = new Promise((resolve) => { doc.on("end", resolve); });
  for (const page of pages) {
    doc.addPage({ size: [(paper.size.width * 72) / 25.4, (paper.size.height * 72) / 25.4], margin: 0 });
    page.forEach((call) => call(doc));
  }
  doc.end();
  await done;
  return size;
}

type Figure = { readonly ms: number; readonly kb: number };
/** The least of some runs: what the machine can do when nothing else asks for it. */
async function best(times: number, run: () => Promise<number>): Promise<Figure> {
  let ms = Infinity, bytes = 0;
  for (let i = 0; i < times; i += 1) {
    const from = performance.now();
    bytes = await run();
    ms = Math.min(ms, performance.now() - from);
  }
  return { ms, kb: bytes / 1024 };
}

const line = (name: string, f: Figure): void => { process.stdout.write(`${name.padEnd(44)} ${f.ms.toFixed(0).padStart(7)} ms ${f.kb.toFixed(0).padStart(7)} kB\n`); };

export async function papers(): Promise<void> {
  const input = inputOf();
  const paper = proposalDocument(input);
  const { pages, count } = callsOf(paper);
  const first = await best(1, async () => (await printProposal(input)).bytes.length);
  const ours = await best(5, async () => (await printProposal(input)).bytes.length);
  const sheets = await best(3, async () => (await printSheets({ venue: input.venue, brief: briefSchema.parse(input.brief), layout: input.layout, meta: input.meta })).bytes.length);
  const plain = await best(5, () => bare(paper, pages));
  const folder = mkdtempSync(path.join(tmpdir(), "papers-"));
  const [html, pdf] = [path.join(folder, "p.html"), path.join(folder, "p.pdf")];
  writeFileSync(html, htmlOf(paper));
  const browser = await best(2, async () => {
    execFileSync(CHROMIUM, ["--headless", "--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run", "--disable-background-networking", "--allow-file-access-from-files", "--no-pdf-header-footer", `--user-data-dir=${folder}`, `--print-to-pdf=${pdf}`, html], { stdio: "ignore" });
    return statSync(pdf).size;
  });
  const printed = (readFileSync(pdf, "latin1").match(/\/Type\s*\/Page\b/g) ?? []).length;
  line(`proposal, ${paper.pages.length} pages, first in the process`, first);
  line("proposal, again", ours);
  line("sheets", sheets);
  line(`bare pdfkit, ${count} primitives`, plain);
  line(`Chromium, ${printed} pages`, browser);
  process.stdout.write(`Chromium's time is ${(browser.ms / ours.ms).toFixed(1)} of ours (${(browser.ms / first.ms).toFixed(1)} of the first), our size ${(ours.kb / browser.kb).toFixed(2)} of its; ours ${(ours.ms / plain.ms).toFixed(1)} of bare pdfkit\n`);
}
