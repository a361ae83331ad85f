import { inflateSync } from "node:zlib";

/** Pixels, three bytes each, row by row. */
export type Raster = { readonly width: number; readonly height: number; readonly rgb: Uint8Array };

const paeth = (a: number, b: number, c: number): number => {
  const p = a + b - c, da = Math.abs(p - a), db = Math.abs(p - b), dc = Math.abs(p - c);
  return da <= db && da <= dc ? a : db <= dc ? b : c;
};

/** Reads a PNG of eight bits a channel, not interlaced, with or without alpha (ISO/IEC 15948, 9 and 11). Throws on any other. */
export function readPng(file: Buffer): Raster {
  const width = file.readUInt32BE(16), height = file.readUInt32BE(20);
  const channels = file[25] === 6 ? 4 : file[25] === 2 ? 3 : 0;
  if (file[24] !== 8 || channels === 0 || file[28] !== 0) throw new Error("a PNG of another kind");
  const parts: Buffer[] = [];
  for (let at = 8; at < file.length;) {
    const long = file.readUInt32BE(at);
    if (file.toString("latin1", at + 4, at + 8) === "IDAT") parts.push(file.subarray(at + 8, at + 8 + long));
    at += long + 12;
  }
  const raw = inflateSync(Buffer.concat(parts));
  const stride = width * channels;
  const lines = Buffer.alloc(stride * height);
  for (let y = 0; y < height; y++) for (let x = 0; x < stride; x++) {
    const filter = raw[y * (stride + 1)] ?? 0, value = raw[y * (stride + 1) + 1 + x] ?? 0;
    const left = x >= channels ? (lines[y * stride + x - channels] ?? 0) : 0, up = y > 0 ? (lines[(y - 1) * stride + x] ?? 0) : 0;
    const corner = x >= channels && y > 0 ? (lines[(y - 1) * stride + x - channels] ?? 0) : 0;
    const add = filter === 1 ? left : filter === 2 ? up : filter === 3 ? (left + up) >> 1 : filter === 4 ? paeth(left, up, corner) : 0;
    lines[y * stride + x] = (value + add) & 255;
  }
  const rgb = new Uint8Array(width * height * 3);
  for (let i = 0; i < width * height; i++) for (let c = 0; c < 3; c++) rgb[i * 3 + c] = lines[i * channels + c] ?? 0;
  return { width, height, rgb };
}

/** Reads a plain colour pixmap, P6 with 255 as its most (Netpbm). */
export function readPpm(file: Buffer): Raster {
  const head = /^P6\s+(\d+)\s+(\d+)\s+255\s/.exec(file.toString("latin1", 0, 40));
  if (!head) throw new Error("no pixmap");
  return { width: Number(head[1]), height: Number(head[2]), rgb: new Uint8Array(file.subarray(head[0].length)) };
}

/** A picture made smaller by a whole number, each pixel the mean of those it stands for. */
export function shrunk({ width, height, rgb }: Raster, by: number): Raster {
  const w = Math.floor(width / by), h = Math.floor(height / by);
  const out = new Uint8Array(w * h * 3);
  for (let y = 0; y < h; y++) for (let x = 0; x < w; x++) for (let c = 0; c < 3; c++) {
    let sum = 0;
    for (let dy = 0; dy < by; dy++) for (let dx = 0; dx < by; dx++) sum += rgb[((y * by + dy) * width + x * by + dx) * 3 + c] ?? 0;
    out[(y * w + x) * 3 + c] = Math.round(sum / (by * by));
  }
  return { width: w, height: h, rgb: out };
}

/** The share of pixels of one picture that have none like them in the other, within a pixel's reach: an edge drawn softer is no difference. */
export function unlike(a: Raster, b: Raster, by = 200): number {
  const off = (i: number, j: number): number => Math.abs((a.rgb[i] ?? 0) - (b.rgb[j] ?? 0)) + Math.abs((a.rgb[i + 1] ?? 0) - (b.rgb[j + 1] ?? 0)) + Math.abs((a.rgb[i + 2] ?? 0) - (b.rgb[j + 2] ?? 0));
  let n = 0;
  for (let y = 1; y < a.height - 1; y++) for (let x = 1; x < a.width - 1; x++) {
    const i = (y * a.width + x) * 3;
    let like = off(i, i) <= by;
    for (let dy = -1; dy <= 1 && !like; dy++) for (let dx = -1; dx <= 1 && !like; dx++) like = off(i, i + (dy * a.width + dx) * 3) <= by;
    if (!like) n++;
  }
  return n / (a.width * a.height);
}
