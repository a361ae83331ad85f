import type { Drawing } from "../../../lib/drawing";
import { polygonClearance, type Polygon } from "../../../lib/geometry";
import { footprintPolygon, seatPolygon, type Item } from "../../../lib/layout";
import { corners, flat, texts, type Text } from "./marks";

/** Two shapes far apart need no closer look. */
function near(a: Polygon, b: Polygon): boolean {
  const of = (p: Polygon, k: 0 | 1): readonly [number, number] => [Math.min(...p.map((c) => c[k])), Math.max(...p.map((c) => c[k]))];
  return ([0, 1] as const).every((k) => { const [l, h] = of(a, k), [m, n] = of(b, k); return l <= n && m <= h; });
}

const show = (t: Text): string => `"${t.text}" at ${t.at.map((v) => v.toFixed(1)).join(" ")}`;

/** True for words that lie wholly on a plain ground laid for them alone: the mark before them. */
function grounded(d: Drawing): ReadonlySet<Text> {
  const all = flat(d.marks);
  return new Set(all.filter((m, i): m is Text => {
    const under = all[i - 1];
    if (m.kind !== "text" || !under) return false;
    if (under.kind === "circle") return under.fill !== undefined && corners(m).every(([x, y]) => Math.hypot(x - under.at[0], y - under.at[1]) <= under.radius + 0.05);
    if (under.kind !== "path" || !under.fill) return false;
    const ring = under.steps.flatMap((s) => (s.op === "Z" ? [] : [s.to]));
    return corners(m).every((c) => polygonClearance([c, [c[0] + 0.01, c[1]], [c[0], c[1] + 0.01]], ring) <= 0.05);
  }));
}

/** Pieces and chairs as they lie on the paper. */
function onPaper(d: Drawing, items: readonly Item[]): readonly { readonly name: string; readonly polygon: Polygon }[] {
  const k = d.perMetre / 1000;
  return items.flatMap((i) => {
    const [ox, oy] = d.origins?.[i.room] ?? d.origin;
    const put = (p: Polygon): Polygon => p.map(([x, y]) => [ox + x * k, oy + y * k]);
    return [{ name: i.id, polygon: put(footprintPolygon(i)) }, ...i.seats.map((s, n) => ({ name: `${i.id}, seat ${n + 1}`, polygon: put(seatPolygon(s)) }))];
  });
}

/** The filled mass of the walls as it is drawn: rings of one path, filled by the even-odd rule. */
function inMass(d: Drawing): (p: readonly [number, number]) => boolean {
  const rings = flat(d.marks).flatMap((m) => {
    if (m.kind !== "path" || m.fill !== "wall" || !m.evenOdd) return [];
    const out: (readonly [number, number])[][] = [];
    for (const s of m.steps) { if (s.op === "M") out.push([s.to]); else if (s.op !== "Z") out.at(-1)?.push(s.to); }
    return out;
  });
  return ([x, y]) => rings.reduce((odd, ring) => ring.reduce((o, a, i) => {
    const b = ring[(i + 1) % ring.length] ?? a;
    return (a[1] > y) !== (b[1] > y) && x < a[0] + ((y - a[1]) / (b[1] - a[1])) * (b[0] - a[0]) ? !o : o;
  }, odd), false);
}

/** Whatever is wrong with the words of a plan: two that cross, one over the edge of a piece or chair, one on a wall, one off the paper. */
export function faultsOf(d: Drawing, items: readonly Item[]): readonly string[] {
  const list = texts(d).filter((t) => t.text.trim() !== "");
  const boxes = list.map(corners);
  const faults: string[] = [];
  boxes.forEach((box, i) => {
    const t = list[i];
    if (!t) return;
    if (box.some(([x, y]) => x < 0 || y < 0 || x > d.width || y > d.height)) faults.push(`${show(t)} leaves the paper`);
    boxes.slice(i + 1).forEach((other, k) => { const o = list[i + 1 + k]; if (o && near(box, other) && polygonClearance(box, other) < -0.05) faults.push(`${show(t)} crosses ${show(o)}`); });
  });
  const pieces = onPaper(d, items), plain = grounded(d), wall = inMass(d);
  list.forEach((t, i) => {
    const box = boxes[i];
    if (!box || plain.has(t)) return;
    const [a = [0, 0] as const, , c = [0, 0] as const] = box;
    if ([...box, [(a[0] + c[0]) / 2, (a[1] + c[1]) / 2] as const].some(wall)) faults.push(`${show(t)} stands on a wall`);
    for (const p of pieces) {
      if (!near(box, p.polygon)) continue;
      const deep = polygonClearance(box, p.polygon);
      if (deep >= -0.05) continue;
      // On its own piece a word may lie, with all its corners.
      if (box.every((c) => polygonClearance([c, [c[0] + 0.01, c[1]], [c[0], c[1] + 0.01]], p.polygon) <= 0)) continue;
      faults.push(`${show(t)} crosses the edge of ${p.name}`);
    }
  });
  return faults;
}
