import clipping from "polygon-clipping";
import { orient2d } from "robust-predicates";
import { describe, expect, it } from "vitest";
import { seeded } from "../../lib/base";
import {
  aroundCircle, clearance, contains, disc, intersect, minus, offset, polygonShape, rectangle, regionArea, regionContains, segmentsCross, subtract, union, unite,
  type Point, type Polygon,
} from "../../lib/geometry";

const random = seeded(20240611);
const whole = (n: number): number => Math.floor(random() * n);

/** A random star-shaped polygon, so that it never crosses itself. */
function star(n: number): Polygon {
  const c: Point = [whole(4000), whole(4000)];
  return Array.from({ length: n }, (_, i) => {
    const a = (2 * Math.PI * (i + random() * 0.8)) / n, r = 300 + random() * 2500;
    return [Math.round(c[0] + r * Math.cos(a)), Math.round(c[1] + r * Math.sin(a))] as const;
  });
}
type Multi = ReturnType<typeof clipping.union>;
const asMulti = (p: Polygon): [number, number][][] => [p.map(([x, y]) => [x, y])];
const ring = (r: readonly (readonly [number, number])[]): number => Math.abs(r.reduce((s, [x, y], i) => { const [u, v] = r[(i + 1) % r.length] ?? [0, 0]; return s + x * v - u * y; }, 0) / 2);
const multiArea = (m: Multi): number => m.reduce((s, poly) => s + ring(poly[0] ?? []) - poly.slice(1).reduce((h, r) => h + ring(r), 0), 0);

describe("polygon-clipping 0.15 (an independent library): booleans", () => {
  it("gives the same areas of union, intersection and difference for random polygons", () => {
    for (let k = 0; k < 150; k++) {
      const a = star(5 + whole(12)), b = star(5 + whole(12));
      const slack = 60 + 1e-4 * ring(a);
      expect(Math.abs(regionArea(union([a, b])) - multiArea(clipping.union(asMulti(a), asMulti(b))))).toBeLessThan(slack);
      expect(Math.abs(regionArea(intersect(union([a]), [b])) - multiArea(clipping.intersection(asMulti(a), asMulti(b))))).toBeLessThan(slack);
      expect(Math.abs(regionArea(subtract(union([a]), [b])) - multiArea(clipping.difference(asMulti(a), asMulti(b))))).toBeLessThan(slack);
    }
  });

  it("keeps area: union and intersection together are both parts", () => {
    for (let k = 0; k < 50; k++) {
      const a = union([star(9)]), b = union([star(9)]);
      const parts = regionArea(minus(a, b)) + regionArea(minus(b, a)) + regionArea(intersect(a, b.map((p) => p.outer)));
      expect(Math.abs(regionArea(unite(a, b)) - parts)).toBeLessThan(60);
    }
  });
});

describe("closed forms: offsets", () => {
  it("grows a rectangle to w d + 2 (w + d) r + pi r2 and shrinks it to (w - 2r)(d - 2r)", () => {
    for (const [w, d, r, angle] of [[4000, 2500, 483, 0], [1829, 762, 152, 17], [9000, 300, 457, 33.3]] as const) {
      const region = union([rectangle([5000, 5000], w, d, angle)]);
      const grown = w * d + 2 * (w + d) * r + Math.PI * r * r;
      expect(Math.abs(regionArea(offset(region, r)) / grown - 1)).toBeLessThan(2e-4);
      const left = Math.max(0, w - 2 * r) * Math.max(0, d - 2 * r);
      expect(Math.abs(regionArea(offset(region, -r)) - left)).toBeLessThan(0.02 * (w + d) + 1);
    }
  });

  it("grows a disc of radius a by r to a disc of radius a + r", () => {
    const region = union([aroundCircle([0, 0], 762, 360)]);
    expect(Math.abs(regionArea(offset(region, 483)) / (Math.PI * (762 + 483) ** 2) - 1)).toBeLessThan(5e-4);
  });
});

describe("robust-predicates 3.0 (Shewchuk's exact predicates)", () => {
  const inside = (p: Polygon, [x, y]: Point): boolean => {
    let n = 0;
    p.forEach(([x1, y1], i) => {
      const [x2, y2] = p[(i + 1) % p.length] ?? [x1, y1];
      if (y1 > y === y2 > y) return;
      const up = y2 > y1;
      const side = orient2d(x1, y1, x2, y2, x, y);
      if (up ? side < 0 : side > 0) n++;
    });
    return n % 2 === 1;
  };
  it("agree on which points lie in a polygon, points on the boundary apart", () => {
    for (let k = 0; k < 60; k++) {
      const p = star(5 + whole(14)), region = union([p]);
      for (let j = 0; j < 60; j++) {
        const q: Point = [whole(6000) - 1000 + 0.25, whole(6000) - 1000 + 0.25];
        expect(contains(p, q)).toBe(inside(p, q));
        expect(regionContains(region, q)).toBe(inside(p, q));
      }
    }
  });

  it("agree on which segments cross", () => {
    const side = (a: Point, b: Point, c: Point): number => Math.sign(orient2d(a[0], a[1], b[0], b[1], c[0], c[1]));
    for (let k = 0; k < 4000; k++) {
      const [a, b, c, d] = [0, 1, 2, 3].map((): Point => [whole(40), whole(40)]) as [Point, Point, Point, Point];
      const cross = side(a, b, c) * side(a, b, d) < 0 && side(c, d, a) * side(c, d, b) < 0;
      expect(segmentsCross([a, b], [c, d])).toBe(cross);
    }
  });
});

describe("clearance of bodies against areas of their booleans", () => {
  it("is negative exactly where two turned rectangles, or a disc and one, share floor", () => {
    for (let k = 0; k < 300; k++) {
      const a = rectangle([whole(2000), whole(2000)], 1829, 762, whole(360)), b = rectangle([whole(2000), whole(2000)], 900, 450, whole(360));
      const shared = regionArea(intersect(union([a]), [b]));
      const gap = clearance(polygonShape(a), polygonShape(b));
      if (Math.abs(gap) > 0.1) expect(gap < 0).toBe(shared > 0.01);
      const at: Point = [whole(2500), whole(2500)];
      const round = clearance(disc(at, 500), polygonShape(a));
      if (Math.abs(round) > 2) expect(round < 0).toBe(regionArea(intersect(union([a]), [aroundCircle(at, 500, 256)])) > 0.5);
    }
  });
});
