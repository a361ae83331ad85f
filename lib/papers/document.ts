import type { Mark, Paper } from "../drawing/display";

/**
 * A paper before it is printed: pages of a known size, and one tree of elements in reading order whose leaves say on which
 * page and where they stand. An element may run over several pages. All lengths are millimetres of paper.
 */
export type Tag =
  | "Sect" | "H1" | "H2" | "H3" | "P" | "Note" | "Figure" | "Caption" | "Link" | "L" | "LI" | "Lbl" | "LBody"
  | "Table" | "THead" | "TBody" | "TR" | "TH" | "TD";

export type Placed = { readonly page: number; readonly at: Paper; readonly width: number; readonly height: number };

export type Content = {
  readonly kind: "content"; readonly page: number; readonly marks: readonly Mark[];
  /** A drawing's own paper is moved by `at` and enlarged by `scale`. */
  readonly placing?: { readonly at: Paper; readonly scale: number };
  /** Painted in this order on its page, whatever the order of reading: ornament 0, the rest 1, unless it says otherwise. */
  readonly layer?: number;
};

export type Element = {
  readonly kind: "element"; readonly tag: Tag; readonly children: readonly (Element | Content)[];
  /** What a figure shows, for those who do not see it. */
  readonly alt?: string;
  readonly box?: Placed;
  readonly scope?: "Column" | "Row" | "Both";
  /** Where a Link leads: an address, or a page of this paper. */
  readonly leads?: { readonly to: string | number; readonly says: string };
};

export type Page = {
  /** Said by nobody who reads the page aloud: frames, rules, running titles. */
  readonly artifacts: readonly Content[];
};

export type Bookmark = { readonly title: string; readonly page: number };

export type PaperDocument = {
  readonly title: string; readonly author: string; readonly language: string;
  readonly size: { readonly width: number; readonly height: number };
  readonly pages: readonly Page[];
  readonly elements: readonly Element[];
  readonly bookmarks: readonly Bookmark[];
};

/** Neighbours on one page become one piece of marked content: fewer marks, same order. */
function joined(children: Element["children"]): Element["children"] {
  const out: (Element | Content)[] = [];
  for (const child of children) {
    const last = out.at(-1);
    const joins = last?.kind === "content" && child.kind === "content" && last.page === child.page && !last.placing && !child.placing && last.layer === child.layer;
    if (joins) out[out.length - 1] = { ...last, marks: [...last.marks, ...child.marks] };
    else out.push(child);
  }
  return out;
}

export const element = (tag: Tag, children: Element["children"], more: Omit<Element, "kind" | "tag" | "children"> = {}): Element =>
  ({ kind: "element", tag, children: joined(children), ...more });

export const content = (page: number, marks: readonly Mark[], more: Pick<Content, "placing" | "layer"> = {}): Content =>
  ({ kind: "content", page, marks, ...more });
