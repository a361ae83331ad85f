import { describe, expect, it } from "vitest";
import { additionsOf, applyEdit, nearWalls, runOf, spotByWalls, wallGap, type Edit, type Standing } from "../../../lib/hand";
import { check } from "../../../lib/rules";
import { turn, type Point } from "../../../lib/geometry";
import type { Item, Layout } from "../../../lib/layout";
import type { Room } from "../../../lib/venue";
import { answers, atMeal, day, grain, mill, piece } from "./mill";

const start = (): Standing => ({ layout: day(), held: [] });
function done(now: Standing, edit: Edit): Standing {
  const next = applyEdit(mill, now, edit);
  if (!next.ok) throw new Error(next.error.code);
  return next.value;
}
const why = (now: Standing, edit: Edit): string => { const next = applyEdit(mill, now, edit); return next.ok ? "done" : next.error.code; };
const round = (): Item => piece(day(), (i) => i.role === "dining" && "diameter" in i.shape);
const long = (): Item => piece(day(), (i) => i.role === "dining" && "width" in i.shape);
const names = (l: Layout): readonly string[] => atMeal(l).map((i) => `${i.id} ${i.label}`);

describe("a place by two walls", () => {
  it("is measured from the piece's edge: a round of 1.68 m at 1.20 m has its middle at 2.04 m", () => {
    const t = round();
    const spot = spotByWalls(grain, t, [{ wall: "left", mm: 1200 }, { wall: "upper", mm: 1500 }]);
    expect(spot).toEqual({ ok: true, value: [1200 + 1680 / 2, 1500 + 1680 / 2] });
    const far = spotByWalls(grain, t, [{ wall: "right", mm: 1200 }, { wall: "lower", mm: 1500 }]);
    expect(far).toEqual({ ok: true, value: [16_200 - 1200 - 1680 / 2, 9_400 - 1500 - 1680 / 2] });
  });

  it("counts a turned table by its turned sides", () => {
    const t = { shape: { width: 1830, depth: 760 }, at: [8000, 4700] as Point, angle: 90 };
    expect(spotByWalls(grain, t, [{ wall: "left", mm: 1200 }])).toEqual({ ok: true, value: [1200 + 760 / 2, 4700] });
  });

  it("refuses two walls that face each other", () => {
    expect(spotByWalls(grain, round(), [{ wall: "left", mm: 900 }, { wall: "right", mm: 900 }])).toEqual({ ok: false, error: { code: "walls" } });
  });

  it("holds along the axes of a room that stands askew, to a millimetre", () => {
    const askew: Room = { ...grain, outline: grain.outline.map((p) => { const [x, y] = turn(p, 17); return [Math.round(x), Math.round(y)] as const; }) };
    const [x, y] = turn([8000, 4700], 17);
    const t = { shape: { width: 1830, depth: 760 }, at: [Math.round(x), Math.round(y)] as Point, angle: 17 };
    const spot = spotByWalls(askew, t, [{ wall: "left", mm: 1200 }, { wall: "lower", mm: 900 }]);
    if (!spot.ok) throw new Error(spot.error.code);
    const there = { ...t, at: spot.value };
    expect(Math.abs((wallGap(askew, there, "left") ?? 0) - 1200)).toBeLessThan(1.5);
    expect(Math.abs((wallGap(askew, there, "lower") ?? 0) - 900)).toBeLessThan(1.5);
  });

  it("takes the wall that the piece would meet, in a room with a corner cut out", () => {
    const l: Room = { ...grain, outline: [[0, 0], [10_000, 0], [10_000, 4_000], [4_000, 4_000], [4_000, 9_000], [0, 9_000]] };
    expect(wallGap(l, { shape: { diameter: 1000 }, at: [2_000, 7_000], angle: 0 }, "right")).toBe(4_000 - 2_500);
    expect(wallGap(l, { shape: { diameter: 1000 }, at: [2_000, 2_000], angle: 0 }, "right")).toBe(10_000 - 2_500);
  });
});

describe("a deed", () => {
  it("moves a table with its places and renames nothing", () => {
    const t = round();
    const next = done(start(), { do: "place", scene: "meal", piece: t.id, room: t.room, at: [t.at[0] + 100, t.at[1] - 40] });
    const moved = piece(next.layout, (i) => i.id === t.id);
    expect(moved.seats.map((s) => [s.x, s.y])).toEqual(t.seats.map((s) => [s.x + 100, s.y - 40]));
    expect(names(next.layout)).toEqual(names(day()));
  });

  it("turns the places with the table", () => {
    const t = long();
    const next = piece(done(start(), { do: "turn", scene: "meal", piece: t.id, angle: t.angle + 90 }).layout, (i) => i.id === t.id);
    expect(next.angle).toBe((t.angle + 90) % 360);
    t.seats.forEach((s, i) => {
      const [x, y] = turn([s.x - t.at[0], s.y - t.at[1]], 90), now = next.seats[i];
      expect([now?.x, now?.y]).toEqual([Math.round(t.at[0] + x), Math.round(t.at[1] + y)]);
    });
  });

  it("lets two pieces change places", () => {
    const [a, b] = [round(), long()];
    const next = done(start(), { do: "swap", scene: "meal", piece: a.id, with: b.id }).layout;
    expect(piece(next, (i) => i.id === a.id).at).toEqual(b.at);
    expect(piece(next, (i) => i.id === b.id).at).toEqual(a.at);
  });

  it("takes a table away without renumbering those that stand, and counts the places anew", () => {
    const t = round(), meal = day().scenes.find((s) => s.id === "meal");
    const next = done(start(), { do: "remove", scene: "meal", piece: t.id, only: true }).layout.scenes.find((s) => s.id === "meal");
    expect(next?.items.map((i) => i.label)).toEqual(meal?.items.filter((i) => i.id !== t.id).map((i) => i.label));
    expect(next?.seats).toBe((meal?.seats ?? 0) - t.seats.length);
  });

  it("adds what is left of the stock, under the next number, on floor that nothing else takes", () => {
    const scene = day().scenes.find((s) => s.id === "meal");
    if (!scene) throw new Error("no meal");
    const taken = done(start(), { do: "remove", scene: "meal", piece: round().id, only: true });
    const next = done(taken, { do: "add", scene: "meal", what: { kind: "stock", id: "round" }, room: "grain-floor" });
    const fresh = atMeal(next.layout).at(-1);
    const highest = Math.max(...scene.items.map((i) => Number(/Table (\d+)/.exec(i.label)?.[1] ?? 0)));
    expect(fresh).toMatchObject({ kind: "table", role: "dining", label: `Table ${highest + 1}`, from: { stock: "round" }, shape: { diameter: 1680 } });
    expect(fresh?.seats).toHaveLength(8);
    expect(check(mill, next.layout, answers).filter((f) => f.items.includes(fresh?.id ?? "") && ["overlap", "in-room", "same-id", "stock"].includes(f.code))).toEqual([]);
  });

  it("offers no more than is left, and what the couple bring until it stands", () => {
    const scene = day().scenes.find((s) => s.id === "meal");
    if (!scene) throw new Error("no meal");
    const offered = (l: Layout): readonly string[] => additionsOf(mill, { layout: l, scene: l.scenes.find((s) => s.id === "meal") ?? scene, brought: [{ what: "Sweet trolley", width: 900, depth: 500 }] }).map((o) => o.name);
    expect(offered(day())).toContain("Sweet trolley");
    const next = done(start(), { do: "add", scene: "meal", what: { kind: "brought", what: "Sweet trolley", width: 900, depth: 500 }, room: "grain-floor" });
    expect(offered(next.layout)).not.toContain("Sweet trolley");
    const rounds = scene.items.filter((i) => "stock" in i.from && i.from.stock === "round").length;
    let all = start();
    for (let i = rounds; i < 7; i++) all = done(all, { do: "add", scene: "meal", what: { kind: "stock", id: "round" }, room: "grain-floor", at: [100, 100] });
    expect(offered(all.layout)).not.toContain("Round table");
    expect(why(all, { do: "add", scene: "meal", what: { kind: "stock", id: "round" }, room: "grain-floor" })).toBe("none-left");
  });

  it("refuses to move what is held, or what the venue never moves", () => {
    const t = round();
    const held = done(start(), { do: "hold", piece: t.id, on: true });
    expect(why(held, { do: "turn", scene: "meal", piece: t.id, angle: 10 })).toBe("held");
    expect(why(done(held, { do: "hold", piece: t.id, on: false }), { do: "turn", scene: "meal", piece: t.id, angle: 10 })).toBe("done");
    const gear = day().scenes.find((s) => s.items.some((i) => "standing" in i.from && i.from.standing === "mill-gear"));
    expect(gear && why(start(), { do: "remove", scene: gear.id, piece: "mill-gear" })).toBe("fixed");
  });

  it("lays a table for fewer and for more, up to what it seats, and keeps a wheelchair's place where it is", () => {
    const t = piece(day(), (i) => i.role === "dining" && i.seats.some((s) => s.place === "wheelchair"));
    const wheel = t.seats.find((s) => s.place === "wheelchair");
    const fewer = piece(done(start(), { do: "lay", scene: "meal", piece: t.id, places: t.seats.length - 1 }).layout, (i) => i.id === t.id);
    expect(fewer.seats).toHaveLength(t.seats.length - 1);
    expect(fewer.seats).toContainEqual(wheel);
    expect(why(start(), { do: "lay", scene: "meal", piece: t.id, places: 60 })).toBe("places");
  });

  it("puts another kind of table on the same spot", () => {
    const t = round();
    const next = piece(done(start(), { do: "exchange", scene: "meal", piece: t.id, stock: "long" }).layout, (i) => i.id === t.id);
    expect(next).toMatchObject({ at: t.at, label: t.label, from: { stock: "long" }, shape: { width: 1830, depth: 760 } });
    expect(next.seats).toHaveLength(Math.min(8, t.seats.length));
  });

  it("moves a piece through the whole day where it stands alike, and in one part alone where that is asked", () => {
    const item = piece(day(), (i) => "standing" in i.from && i.from.standing === "oak-settle");
    const to = { do: "place", scene: "meal", piece: item.id, room: item.room, at: [item.at[0] - 500, item.at[1]] } as const;
    const alikeIn = (l: Layout): number => l.scenes.filter((s) => s.items.some((i) => i.id === item.id && i.at[0] === item.at[0] - 500)).length;
    const before = day().scenes.filter((s) => s.items.some((i) => i.id === item.id && i.at[0] === item.at[0])).length;
    expect(alikeIn(done(start(), to).layout)).toBe(before);
    expect(alikeIn(done(start(), { ...to, only: true }).layout)).toBe(1);
  });
});

describe("joined tables", () => {
  const runs = (): readonly (readonly Item[])[] => day().scenes.flatMap((s) => s.items.filter((i) => s.id === "meal" && i.role === "dining").map((i) => runOf(s, i))).filter((r) => r.length > 1);

  it("go together, stay joined, and turn about their middle", () => {
    const [run] = runs();
    const [first, second] = run ?? [];
    if (!run || !first || !second) throw new Error("no joined tables at the meal");
    const next = done(start(), { do: "place", scene: "meal", piece: first.id, room: first.room, at: [first.at[0] + 200, first.at[1] + 50], run: true });
    expect(piece(next.layout, (i) => i.id === second.id).at).toEqual([second.at[0] + 200, second.at[1] + 50]);
    const turned = done(start(), { do: "turn", scene: "meal", piece: first.id, angle: first.angle + 90, run: true });
    const meal = turned.layout.scenes.find((s) => s.id === "meal");
    const now = piece(turned.layout, (i) => i.id === first.id);
    expect(meal && runOf(meal, now)).toHaveLength(run.length);
    expect(now.angle).toBe((first.angle + 90) % 360);
  });

  it("are parted where one of them is moved alone", () => {
    const first = runs()[0]?.[0], second = runs()[0]?.[1];
    if (!first || !second) throw new Error("no joined tables at the meal");
    const next = done(start(), { do: "place", scene: "meal", piece: first.id, room: first.room, at: [first.at[0] + 500, first.at[1] + 500] });
    expect(piece(next.layout, (i) => i.id === second.id).at).toEqual(second.at);
  });
});

describe("nearest walls", () => {
  it("are one of each two that face each other", () => {
    expect(nearWalls(grain, { shape: { diameter: 1000 }, at: [2000, 8000], angle: 0 })).toEqual([{ wall: "left", mm: 1500 }, { wall: "lower", mm: 900 }]);
  });
});
