import { getDocument, OPS } from "pdfjs-dist/legacy/build/pdf.mjs";

/** What a reader of another make finds in a PDF. */
export async function open(bytes: Uint8Array) {
  return getDocument({ data: Uint8Array.from(bytes), useSystemFonts: false, verbosity: 0 }).promise;
}

export type Shape = { readonly xs: readonly number[]; readonly ys: readonly number[] };

type Matrix = readonly [number, number, number, number, number, number];
const times = (m: Matrix, n: Matrix): Matrix => [
  m[0] * n[0] + m[2] * n[1], m[1] * n[0] + m[3] * n[1], m[0] * n[2] + m[2] * n[3], m[1] * n[2] + m[3] * n[3],
  m[0] * n[4] + m[2] * n[5] + m[4], m[1] * n[4] + m[3] * n[5] + m[5],
];

/** The end points of every path of a page in points from the page's lower left corner, transformations applied. */
export async function shapesOf(bytes: Uint8Array, pageNumber: number): Promise<readonly Shape[]> {
  const doc = await open(bytes);
  const list = await (await doc.getPage(pageNumber)).getOperatorList();
  const shapes: Shape[] = [];
  let matrix: Matrix = [1, 0, 0, 1, 0, 0];
  const stack: Matrix[] = [];
  list.fnArray.forEach((fn: number, i: number) => {
    const args = list.argsArray[i];
    if (fn === OPS.save) stack.push(matrix);
    else if (fn === OPS.restore) matrix = stack.pop() ?? matrix;
    else if (fn === OPS.transform) matrix = times(matrix, args);
    else if (fn === OPS.constructPath) {
      const data: Float32Array | null = args[1][0];
      if (!data) return;
      const xs: number[] = [];
      const ys: number[] = [];
      const add = (x: number, y: number): void => {
        xs.push(matrix[0] * x + matrix[2] * y + matrix[4]);
        ys.push(matrix[1] * x + matrix[3] * y + matrix[5]);
      };
      // pdfjs writes each step as its number (0 move, 1 line, 2 cubic, 3 quadratic, 4 close) and its coordinates.
      for (let at = 0; at < data.length;) {
        const step = data[at] ?? 4;
        const coordinates = [2, 2, 6, 4, 0][step] ?? 0;
        if (coordinates > 0) add(data[at + coordinates - 1] ?? NaN, data[at + coordinates] ?? NaN);
        at += 1 + coordinates;
      }
      shapes.push({ xs, ys });
    }
  });
  return shapes;
}

export const extent = (s: Shape) => ({ left: Math.min(...s.xs), right: Math.max(...s.xs), bottom: Math.min(...s.ys), top: Math.max(...s.ys) });

export type Node = { readonly role: string; readonly alt?: string; readonly lang?: string; readonly children: readonly Node[] };

/** The structure tree of all pages in reading order. */
export async function rolesOf(bytes: Uint8Array): Promise<readonly Node[]> {
  const doc = await open(bytes);
  const trees: Node[] = [];
  for (let i = 1; i <= doc.numPages; i += 1) {
    const tree = await (await doc.getPage(i)).getStructTree();
    if (tree) trees.push(tree as unknown as Node);
  }
  return trees;
}

export function flat(nodes: readonly Node[]): readonly Node[] {
  return nodes.flatMap((n) => [n, ...flat(n.children ?? [])]);
}

export async function textOf(bytes: Uint8Array): Promise<string> {
  const doc = await open(bytes);
  const pages: string[] = [];
  for (let i = 1; i <= doc.numPages; i += 1) {
    const { items } = await (await doc.getPage(i)).getTextContent();
    pages.push(items.map((item) => ("str" in item ? item.str : "")).join(" "));
  }
  return pages.join("\n").replace(/\s+/g, " ");
}

/** Each stretch of text by itself, as a reader of another make turns it about. */
export async function itemsOf(bytes: Uint8Array): Promise<readonly string[]> {
  const doc = await open(bytes);
  const out: string[] = [];
  for (let i = 1; i <= doc.numPages; i += 1) {
    const { items } = await (await doc.getPage(i)).getTextContent();
    out.push(...items.flatMap((item) => ("str" in item && item.str !== "" ? [item.str] : [])));
  }
  return out;
}
