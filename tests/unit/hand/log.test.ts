import { describe, expect, it } from "vitest";
import { seeded, type Random } from "../../../lib/base";
import { additionsOf, beginWork, perform, performMend, redo, undo, type Edit, type Work } from "../../../lib/hand";
import { repair } from "../../../lib/engine/repair";
import { answers, atMeal, day, mill, piece } from "./mill";

/** Kept: the same hundred sequences every time. */
const SEEDS = Array.from({ length: 100 }, (_, i) => i + 1);
const DEEDS = 24;

const pick = <T>(from: readonly T[], random: Random): T => { const one = from[Math.floor(random() * from.length)]; if (one === undefined) throw new Error("nothing to pick from"); return one; };

/** Any deed on any piece, some of which are refused. */
function anyEdit(work: Work, random: Random): Edit {
  const scene = pick(work.layout.scenes, random), item = pick(scene.items, random), other = pick(scene.items, random);
  const on = { scene: scene.id, piece: item.id, ...(random() < 0.3 ? { only: true } : {}) };
  const run = random() < 0.5 ? { run: true } : {};
  const whole = (n: number): number => Math.round(random() * n);
  switch (whole(8)) {
    case 0: case 1: return { do: "place", ...on, ...run, room: random() < 0.9 ? item.room : pick(mill.rooms, random).id, at: [whole(16_000), whole(9_000)], ...(random() < 0.5 ? { angle: whole(720) - 360 } : {}) };
    case 2: return { do: "turn", ...on, ...run, angle: whole(359) };
    case 3: return { do: "swap", ...on, with: other.id };
    case 4: return { do: "exchange", ...on, stock: pick(mill.stock, random).id };
    case 5: return { do: "lay", ...on, places: whole(10) };
    case 6: return { do: "remove", ...on, ...run };
    case 7: return random() < 0.5 ? { do: "hold", piece: item.id, on: random() < 0.6 } : { do: "note", ...on, text: random() < 0.3 ? "" : `By the ${whole(9)}th window` };
    default: {
      const offers = additionsOf(mill, { layout: work.layout, scene, brought: answers.brought ?? [] });
      return { do: "add", scene: scene.id, what: pick(offers, random).what, room: pick(scene.rooms, random), ...(random() < 0.5 ? { at: [whole(16_000), whole(9_000)] as const } : {}), ...(random() < 0.3 ? { only: false } : {}) };
    }
  }
}

const bytes = (w: Work): string => JSON.stringify([w.layout, w.held]);

describe("what was done by hand", () => {
  it("is taken back byte for byte, and done again byte for byte, in a hundred random sequences", () => {
    let done = 0;
    for (const seed of SEEDS) {
      const random = seeded(seed);
      const states = [bytes(beginWork(day()))];
      let work = beginWork(day());
      for (let i = 0; i < DEEDS; i++) {
        const next = perform(mill, work, anyEdit(work, random));
        if (!next.ok) continue;
        work = next.value;
        states.push(bytes(work));
      }
      done += work.done;
      for (let i = states.length - 2; i >= 0; i--) { const back = undo(work); if (!back) throw new Error("nothing to take back"); work = back; expect(bytes(work)).toBe(states[i]); }
      expect(undo(work)).toBeNull();
      for (let i = 1; i < states.length; i++) { const on = redo(work); if (!on) throw new Error("nothing to do again"); work = on; expect(bytes(work)).toBe(states[i]); }
      expect(redo(work)).toBeNull();
    }
    // Most deeds are done, not refused.
    expect(done).toBeGreaterThan((SEEDS.length * DEEDS) / 2);
  });

  it("survives being written down and read again between any two deeds", () => {
    const random = seeded(7);
    let work = beginWork(day());
    for (let i = 0; i < DEEDS; i++) {
      const next = perform(mill, work, anyEdit(work, random));
      if (next.ok) work = JSON.parse(JSON.stringify(next.value)) as Work;
    }
    for (let back = undo(work); back; back = undo(work)) work = back;
    expect(bytes(work)).toBe(bytes(beginWork(day())));
  });

  it("is forgotten where something else is done after it was taken back", () => {
    const table = piece(day(), (i) => i.role === "dining");
    const first = perform(mill, beginWork(day()), { do: "turn", scene: "meal", piece: table.id, angle: 45 });
    if (!first.ok) throw new Error(first.error.code);
    const back = undo(first.value);
    const other = back && perform(mill, back, { do: "note", scene: "meal", piece: table.id, text: "By the window" });
    if (!other?.ok) throw new Error("the note was refused");
    expect(other.value.entries.map((e) => e.said)).toEqual([`Note on ${table.label}`]);
    expect(redo(other.value)).toBeNull();
  });

  it("holds the engine's mending as one deed, round what is held", () => {
    const [a, b] = atMeal(day()).filter((i) => i.role === "dining" && "diameter" in i.shape);
    if (!a || !b) throw new Error("two rounds are needed");
    const moved = perform(mill, beginWork(day()), { do: "place", scene: "meal", piece: a.id, room: a.room, at: [b.at[0] + 300, b.at[1]] });
    const held = moved.ok ? perform(mill, moved.value, { do: "hold", piece: a.id, on: true }) : moved;
    if (!held.ok) throw new Error(held.error.code);
    const mended = repair(mill, answers, held.value.layout, held.value.held);
    const layout = mended.layouts[0] ?? mended.closest;
    if (!layout) throw new Error("nothing came back");
    const next = performMend(mill, held.value, layout, mended.moved?.length ?? 0);
    if (!next.ok) throw new Error(next.error.code);
    expect(piece(next.value.layout, (i) => i.id === a.id).at).toEqual([b.at[0] + 300, b.at[1]]);
    const back = undo(next.value);
    expect(back && bytes(back)).toBe(bytes(held.value));
  });
});
