import { deflateSync } from "node:zlib";

type Part = { readonly id: number; readonly bytes: Buffer };

const HEAD = /^(\d+) 0 obj\n/;
const num = (text: string | undefined): number => Number(text ?? "0");

/** The objects of a file as its own table of contents lists them, in the order they stand, and its trailer. */
function readObjects(file: Buffer): { readonly parts: readonly Part[]; readonly trailer: string } | null {
  const tail = file.toString("latin1", Math.max(0, file.length - 64));
  const table = num(/startxref\n(\d+)\n%%EOF/.exec(tail)?.[1]);
  const text = file.toString("latin1", table);
  const head = /^xref\n0 (\d+)\n/.exec(text);
  const trailer = /trailer\n<<([\s\S]*)>>\nstartxref/.exec(text)?.[1];
  if (!head || trailer === undefined) return null;
  const offsets = Array.from({ length: num(head[1]) - 1 }, (_, i) => num(text.slice(head[0].length + (i + 1) * 20, head[0].length + (i + 1) * 20 + 10))).sort((a, b) => a - b);
  const parts = offsets.map((from, i): Part => {
    const bytes = file.subarray(from, offsets[i + 1] ?? table);
    return { id: num(HEAD.exec(bytes.toString("latin1", 0, 24))?.[1]), bytes };
  });
  return { parts, trailer };
}

const END = "endobj\n";
const isStream = (bytes: Buffer): boolean => bytes.toString("latin1", Math.max(0, bytes.length - 20)).includes("endstream");

/** Objects packed into one stream (ISO 32000-1, 7.5.7): their numbers and places first, then they themselves. */
function packed(parts: readonly Part[]): { readonly dict: string; readonly body: Buffer } {
  const bodies = parts.map((p) => p.bytes.toString("latin1").replace(HEAD, "").slice(0, -END.length).trim());
  let at = 0;
  const places = bodies.map((b, i) => { const place = `${parts[i]?.id ?? 0} ${at}`; at += b.length + 1; return place; });
  const first = `${places.join(" ")}\n`;
  return { dict: `/Type/ObjStm/N ${parts.length}/First ${first.length}`, body: deflateSync(Buffer.from(`${first}${bodies.join("\n")}\n`, "latin1"), { level: 9 }) };
}

/** Where each object is, as a stream of table entries (ISO 32000-1, 7.5.8): kind, place of three bytes, place within of two. */
function tableOf(entries: readonly (readonly [kind: number, place: number, within: number])[]): Buffer {
  const out = Buffer.alloc(entries.length * 6);
  entries.forEach(([kind, place, within], i) => { out.writeUInt8(kind, i * 6); out.writeUIntBE(place, i * 6 + 1, 3); out.writeUInt16BE(within, i * 6 + 4); });
  return deflateSync(out, { level: 9 });
}

/**
 * The same document with its many small objects packed and its table compressed: a third off the file of a tagged paper, whose tree of
 * tags is longer than its pages. A file that is not as this printer's writer leaves it comes back as it was.
 */
export function pack(file: Buffer): Buffer {
  const read = readObjects(file);
  if (!read || file.length >= 1 << 24 || read.parts.some((p) => p.id === 0)) return file;
  const loose = read.parts.filter((p) => !isStream(p.bytes)), streams = read.parts.filter((p) => isStream(p.bytes));
  const size = read.parts.length + 3, holder = size - 2, table = size - 1;
  const header = file.subarray(0, file.indexOf("\n", file.indexOf("\n") + 1) + 1);
  const out: Buffer[] = [header];
  let at = header.length;
  const entries = new Map<number, readonly [number, number, number]>([[0, [0, 0, 0xffff]]]);
  const put = (id: number, bytes: Buffer): void => { entries.set(id, [1, at, 0]); out.push(bytes); at += bytes.length; };
  const stream = (id: number, dict: string, body: Buffer): Buffer =>
    Buffer.concat([Buffer.from(`${id} 0 obj\n<<${dict}/Filter/FlateDecode/Length ${body.length}>>\nstream\n`, "latin1"), body, Buffer.from("\nendstream\nendobj\n", "latin1")]);
  for (const p of streams) put(p.id, p.bytes);
  const { dict, body } = packed(loose);
  put(holder, stream(holder, dict, body));
  loose.forEach((p, i) => entries.set(p.id, [2, holder, i]));
  entries.set(table, [1, at, 0]);
  const rows = Array.from({ length: size }, (_, id) => entries.get(id) ?? ([0, 0, 0xffff] as const));
  const rest = read.trailer.replace(/\/Size \d+/, "").replace(/\s*\n\s*/g, " ");
  out.push(stream(table, `/Type/XRef/Size ${size}/W[1 3 2]${rest}`, tableOf(rows)), Buffer.from(`startxref\n${at}\n%%EOF\n`, "latin1"));
  return Buffer.concat(out);
}
