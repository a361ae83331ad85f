import { readdirSync, readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { briefSchema } from "../../../lib/brief";
import { tidewheel } from "../../../lib/demo";
import { arrange } from "../../../lib/engine";
import { beginWork, perform, type Edit } from "../../../lib/hand";
import { venueSchema } from "../../../lib/venue";
import { HAND_PHRASES, handVoice } from "../../../lib/words/hand";
import { LANGUAGES } from "../../../lib/words/pages";
import { englishIn } from "./left-over";

const mill = venueSchema.parse(tidewheel);
const slots = (text: string): string => [...new Set(text.match(/\{\w+\}/g) ?? [])].filter((slot) => slot !== "{n}").sort().join();

describe("a layout under the hand, in words", () => {
  it.each(LANGUAGES)("has every phrase in %s, with the slots of the British one and no others", (language) => {
    for (const phrase of HAND_PHRASES) for (const n of [1, 2]) expect(slots(handVoice(language)(phrase, { n })), phrase).toBe(slots(phrase));
  });

  it("is said by some page or deed, every phrase of it", () => {
    const read = (dir: string): string => readdirSync(new URL(`../../../${dir}`, import.meta.url)).filter((f) => /\.tsx?$/.test(f)).map((f) => readFileSync(new URL(`../../../${dir}/${f}`, import.meta.url), "utf8")).join("\n");
    const code = ["components/plan/hand", "lib/hand", "app/_parts", "app/(couple)/request/layout/adjust", "lib/service"].map(read).join("\n");
    const walls = /from the (left|right|upper|lower) wall$/;
    expect(HAND_PHRASES.filter((phrase) => !walls.test(phrase) && !code.includes(JSON.stringify(phrase)))).toEqual([]);
  });

  it("tells each deed in Spanish, the venue's own names left", { timeout: 120_000 }, () => {
    const brief = briefSchema.parse({ format: "marquetry.brief/1", package: mill.packages[0]?.id, date: "2029-06-16", guests: { adults: 40 }, meal: { tables: "rounds" } });
    const layout = arrange(mill, brief, { seed: 1, layouts: 1 }).layouts[0];
    const [one, two] = layout?.scenes.find((s) => s.id === "meal")?.items.filter((i) => i.role === "dining") ?? [];
    if (!layout || !one || !two) throw new Error("forty sit at several rounds");
    const on = { scene: "meal" as const, piece: one.id };
    const deeds: readonly Edit[] = [
      { do: "place", ...on, room: one.room, at: [one.at[0] + 100, one.at[1]] }, { do: "turn", ...on, angle: 45 }, { do: "swap", ...on, with: two.id }, { do: "lay", ...on, places: 5 },
      { do: "hold", piece: one.id, on: true }, { do: "note", ...on, text: "·" }, { do: "remove", ...on },
    ];
    const said = deeds.map((edit) => { const done = perform({ ...mill, locale: "es-ES" }, beginWork(layout), edit); return done.ok ? done.value.entries[0]?.said : done.error.code; });
    expect(said.map((text) => englishIn(text ?? "", mill)).filter((left) => left !== undefined)).toEqual([]);
    expect(said.slice(1, 3)).toEqual([`${one.label.replace("Table", "Mesa")} con giro de 45°`, `${one.label.replace("Table", "Mesa")} y ${two.label.replace("Table", "Mesa")} cambian de sitio`]);
    expect(said[0]).toMatch(/^Mesa \d+ a \d+,\d\d\sm de la pared (izquierda|derecha), \d+,\d\d\sm de la pared de (arriba|abajo)$/);
  });
});
