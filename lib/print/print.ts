import PDFDocument from "pdfkit";
import type { Mark } from "../drawing/display";
import { paint, plainRuns, toPoints, type Colours } from "../drawing/pdf";
import type { Content, Element, PaperDocument, Tag } from "../papers/document";
import type { Han } from "./faces";
import { pack } from "./pack";
import { shape } from "./runs";
import { pdfkitSurface } from "./surface";

export type Printed = {
  readonly bytes: Uint8Array;
  readonly pages: number;
  /** Letters that no embedded face holds, each once, in the order met. Never printed as boxes. */
  readonly missing: readonly string[];
};

type Doc = InstanceType<typeof PDFDocument>;
type Struct = ReturnType<Doc["struct"]>;

function newDocument(paper: PaperDocument, now: Date): Doc {
  return new PDFDocument({
    // The published types do not know PDF/UA yet; the library does.
    subset: "PDF/UA" as never,
    tagged: true, pdfVersion: "1.7", lang: paper.language, displayTitle: true, autoFirstPage: false, bufferPages: true, font: "",
    info: { Title: paper.title, Author: paper.author, Creator: "Marquetry", Producer: "Marquetry", CreationDate: now, ModDate: now },
  });
}

function collect(doc: Doc): Promise<Uint8Array> {
  return new Promise((resolve, reject) => {
    const chunks: Buffer[] = [];
    doc.on("data", (chunk: Buffer) => chunks.push(chunk));
    doc.on("end", () => resolve(new Uint8Array(pack(Buffer.concat(chunks)))));
    doc.on("error", reject);
  });
}

const boxOf = (e: Element): [number, number, number, number] | undefined => e.box && [
  toPoints(e.box.at[0]), toPoints(e.box.at[1]), toPoints(e.box.at[0] + e.box.width), toPoints(e.box.at[1] + e.box.height),
];

const textsOf = (marks: readonly Mark[]): readonly (Mark & { readonly kind: "text" })[] =>
  marks.flatMap((m) => (m.kind === "text" ? [m] : m.kind === "group" || m.kind === "clip" ? textsOf(m.marks) : []));

/** Where the letters as printed would not give the words back (another order, joined forms, none at all), the words as they are read. */
function actualText(e: Element): string | undefined {
  if (e.tag === "Figure") return undefined;
  const texts = e.children.flatMap((c) => (c.kind === "content" ? textsOf(c.marks) : []));
  const read = texts.map((t) => shape(t.text, { face: t.face, weight: t.weight ?? "regular", italic: t.italic ?? false }).read);
  return read.some((r) => r !== undefined) ? texts.map((t, i) => read[i] ?? t.text).join(" ") : undefined;
}

function structOf(doc: Doc, e: Element): Struct {
  const bbox = boxOf(e);
  const actual = actualText(e);
  const options = {
    ...(actual === undefined ? {} : { actual }),
    ...(e.alt === undefined ? {} : { alt: e.alt }), ...(e.scope ? { scope: e.scope } : {}),
    ...(bbox && e.tag === "Figure" ? { bbox, placement: "Block" } : {}),
  };
  return doc.struct(e.tag, options);
}

type Painted = ReadonlyMap<Content, ReturnType<Doc["markStructureContent"]>>;

/** Every leaf with the tag it stands under; ornament has none. */
function leavesOf(paper: PaperDocument): readonly { readonly leaf: Content; readonly tag: Tag | null }[] {
  const within = (e: Element): readonly { readonly leaf: Content; readonly tag: Tag }[] =>
    e.children.flatMap((c) => (c.kind === "content" ? [{ leaf: c, tag: e.tag }] : within(c)));
  return [...paper.pages.flatMap((p) => p.artifacts).map((leaf) => ({ leaf, tag: null })), ...paper.elements.flatMap(within)];
}

/** Paints the pages in the order of their layers; what was painted for a leaf is kept for the tree, whose order is that of reading. */
function paintAll(doc: Doc, paper: PaperDocument, put: (c: Content) => void): Painted {
  const marked = new Map<Content, ReturnType<Doc["markStructureContent"]>>();
  const layer = (l: { readonly leaf: Content; readonly tag: Tag | null }): number => l.leaf.layer ?? (l.tag === null ? 0 : 1);
  for (const { leaf, tag } of [...leavesOf(paper)].sort((a, b) => layer(a) - layer(b))) {
    doc.switchToPage(leaf.page);
    if (tag === null) doc.markContent("Artifact", { type: "Layout" });
    else marked.set(leaf, doc.markStructureContent(tag));
    put(leaf);
    doc.endMarkedContent();
  }
  return marked;
}

function addTree(doc: Doc, paper: PaperDocument, painted: Painted): void {
  const addTo = (parent: Struct, e: Element): void => {
    const struct = structOf(doc, e);
    parent.add(struct);
    for (const child of e.children) {
      const marked = child.kind === "content" ? painted.get(child) : undefined;
      if (child.kind === "element") addTo(struct, child);
      else if (marked) struct.add(marked);
    }
    if (e.tag === "Link" && e.leads && e.box) {
      doc.switchToPage(e.box.page);
      // What a link leads to is said in words too (ISO 14289-1, 7.18.5). The types know neither that nor a link to a page.
      const options = { structParent: struct, Contents: new String(e.leads.says) };
      doc.link(toPoints(e.box.at[0]), toPoints(e.box.at[1]), toPoints(e.box.width), toPoints(e.box.height), e.leads.to as string, options as never);
    }
    struct.end();
  };
  const root = doc.struct("Document");
  doc.addStructure(root);
  for (const e of paper.elements) addTo(root, e);
  root.end();
}

/** Prints a paper as a tagged PDF (ISO 14289-1). The same paper and moment give the same bytes. */
export async function printPaper(paper: PaperDocument, by: { readonly colours: Colours; readonly now: Date; /** The forms of Chinese characters where the words do not tell. */ readonly han?: Han }): Promise<Printed> {
  const doc = newDocument(paper, by.now);
  const done = collect(doc);
  const missing = new Set<string>();
  const surface = pdfkitSurface({ doc, han: by.han ?? "chinese", missing: (letters) => letters.forEach((l) => missing.add(l)) });
  const size = [toPoints(paper.size.width), toPoints(paper.size.height)];
  const paintOn = (marks: readonly Mark[], c: Content): void => paint(marks, { surface, colours: by.colours, ...(c.placing ? { placing: c.placing } : {}) });
  const put = (c: Content): void => { paintOn(c.marks, c); surface.flush(); };
  // What looks the same is one form, wherever it stands and on whatever page: tables of one size, the walls of a plan, a page's frame.
  for (const { leaf } of leavesOf(paper)) for (const run of plainRuns(leaf.marks)) surface.keep(run, () => paintOn(run, leaf));

  paper.pages.forEach(() => doc.addPage({ size, margin: 0 }));
  const marked = paintAll(doc, paper, put);
  addTree(doc, paper, marked);

  for (const mark of paper.bookmarks) doc.outline.addItem(mark.title, { pageNumber: mark.page, fit: true } as never);
  doc.end();
  return { bytes: await done, pages: paper.pages.length, missing: [...missing] };
}
