import { inflateSync } from "node:zlib";

const HEADER = 44, ENTRY = 20, SFNT_HEADER = 12, SFNT_ENTRY = 16;
const SIGNATURE = 0x774f4646;

const padded = (n: number): number => (n + 3) & ~3;

/**
 * A WOFF 1.0 file as the plain font it wraps (W3C, WOFF File Format 1.0, sections 3 to 5); any other file as it is.
 * The font library's own inflating fails on some well-formed tables and is slower than the platform's.
 */
export function plainFont(file: Buffer): Buffer {
  if (file.length < HEADER || file.readUInt32BE(0) !== SIGNATURE) return file;
  const count = file.readUInt16BE(12);
  const entries = Array.from({ length: count }, (_, i) => {
    const at = HEADER + i * ENTRY;
    const [offset, packed, length] = [file.readUInt32BE(at + 4), file.readUInt32BE(at + 8), file.readUInt32BE(at + 12)];
    const stored = file.subarray(offset, offset + packed);
    return { tag: file.readUInt32BE(at), sum: file.readUInt32BE(at + 16), data: packed < length ? inflateSync(stored) : stored };
  });
  const start = SFNT_HEADER + count * SFNT_ENTRY;
  const out = Buffer.alloc(start + entries.reduce((sum, e) => sum + padded(e.data.length), 0));
  const power = Math.floor(Math.log2(count));
  out.writeUInt32BE(file.readUInt32BE(4), 0);
  out.writeUInt16BE(count, 4);
  out.writeUInt16BE(16 * 2 ** power, 6);
  out.writeUInt16BE(power, 8);
  out.writeUInt16BE(16 * (count - 2 ** power), 10);
  let offset = start;
  entries.forEach((e, i) => {
    const at = SFNT_HEADER + i * SFNT_ENTRY;
    out.writeUInt32BE(e.tag, at);
    out.writeUInt32BE(e.sum, at + 4);
    out.writeUInt32BE(offset, at + 8);
    out.writeUInt32BE(e.data.length, at + 12);
    e.data.copy(out, offset);
    offset += padded(e.data.length);
  });
  return out;
}
