import { describe, expect, it } from "vitest";
import { changesOf } from "../../../lib/drawing";
import type { Item, Layout, Scene } from "../../../lib/layout";
import { CHANGE_PHRASES, changeVoice } from "../../../lib/words/changes";
import { LANGUAGES } from "../../../lib/words/pages";
import { mill, millCeremony, millMeal } from "../drawing/mill";
import { englishIn } from "./left-over";

const slots = (text: string): string => [...new Set(text.match(/\{\w+\}/g) ?? [])].filter((slot) => slot !== "{n}").sort().join();
const scene = (layout: Layout): Scene => { const [first] = layout.scenes; if (!first) throw new Error("a part of the day"); return first; };
const spanish = { ...mill, locale: "es-ES" };
const told = (was: Scene, change: (i: Item) => readonly Item[]): readonly string[] => changesOf(spanish, was, { ...was, items: was.items.flatMap(change) }).map((c) => c.text);

describe("what changed between two layouts, in words", () => {
  it.each(LANGUAGES)("has every phrase in %s, with the slots of the British one and no others", (language) => {
    for (const phrase of CHANGE_PHRASES) for (const n of [1, 2]) expect(slots(changeVoice(language)(phrase, { n })), phrase).toBe(slots(phrase));
  });

  it("tells in Spanish what moved, is laid anew, came and went, the venue's own names left", () => {
    const meal = scene(millMeal()), rows = scene(millCeremony());
    const said = [
      ...told(meal, (i) => (i.id === "table-7" ? [{ ...i, at: [i.at[0] + 600, i.at[1] - 250], seats: i.seats.slice(1) }] : i.id === "table-1" ? [{ ...i, seats: i.seats.slice(1) }] : i.id === "plan" ? [] : [i])),
      ...told(meal, (i) => (i.id === "plan" ? [i, { ...i, id: "plan-2", at: [i.at[0] + 900, i.at[1]] }] : [i])),
      ...told(rows, (i) => (i.id.startsWith("chair-6-") ? [] : [i])), ...told(rows, (i) => (i.id === "chair-6-0" ? [{ ...i, at: [i.at[0] + 40, i.at[1]] }] : [i])),
    ];
    expect(said.slice(0, 2)).toEqual(["Mesa 7 está 0,60\u00a0m más a la derecha y 0,25\u00a0m más arriba en el plano y tiene 7 plazas, ya no 8.", "Mesa 1 tiene 7 plazas, ya no 8."]);
    expect(said.length).toBeGreaterThanOrEqual(5);
    // What the venue's file or an earlier sheet calls a piece is no word of ours.
    const labels = [...meal.items, ...rows.items].map((i) => i.label).filter((label) => label.length > 2);
    expect(said.map((text) => englishIn(labels.reduce((left, label) => left.replaceAll(label, "·"), text), mill)).filter((left) => left !== undefined)).toEqual([]);
  });
});
