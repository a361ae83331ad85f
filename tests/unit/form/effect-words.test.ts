import { describe, expect, it } from "vitest";
import { effectOf, type EffectInput } from "../../../components/form/effect";
import { givesUpWords } from "../../../components/plan/gives-up";
import { tidewheel } from "../../../lib/demo";
import type { Capacity, Layout } from "../../../lib/layout";
import { venueSchema } from "../../../lib/venue";
import { ENGLISH, sayIn } from "../../../lib/words/pages";

const venue = venueSchema.parse(tidewheel);
const fit = (seats: number) => ({ seats, tables: 1, items: [] });
const counted = (style: "rows" | "mixed", comfort: number, most: number): Capacity =>
  ({ format: "marquetry.capacity/1", rooms: [{ room: "grain-floor", drape: null, styles: { [style]: { comfort: fit(comfort), most: fit(most), ceiling: { seats: most, because: "the authority's posted figure" } } } }] });
const asked = (more: Partial<EffectInput> & Pick<EffectInput, "step">): EffectInput =>
  ({ venue, rooms: venue.rooms, capacity: null, result: null, guests: 0, brief: undefined, tables: "mixed", drape: "no", say: ENGLISH, ...more });

describe("what a step's answers do, in a sentence", () => {
  it("asks for nothing that is known: while 90 are laid out, a display is drawn as soon as that is done", () => {
    for (const step of ["music", "displays", "extras"] as const) {
      expect(effectOf(asked({ step })).sentence).toMatch(/^Once we know how many you are/);
      expect(effectOf(asked({ step, guests: 90 })).sentence).toMatch(/as soon as your answers are laid out\.$/);
    }
  });

  it("names one count where rows seat no more than in comfort", () => {
    expect(effectOf(asked({ step: "ceremony", capacity: counted("rows", 140, 140) })).sentence).toBe("Rows in the Grain Floor seat 140 in comfort, and nobody more.");
    expect(effectOf(asked({ step: "ceremony", capacity: counted("rows", 120, 140) })).sentence).toBe("Rows in the Grain Floor seat 120 in comfort, 140 at the most.");
  });

  it("tells of a layout that seats more than stands in comfort how they sit, not what sets it apart", () => {
    const layout: Layout = {
      id: "a", title: "·", why: ["Of these layouts it has the fewest moves.", "All 90 sit in comfort in the Grain Floor."], scenes: [], turnovers: [], findings: [],
      told: { why: [{ code: "best-of-these" }, { code: "all-in-comfort" }], givesUp: [] },
    };
    const result = { format: "marquetry.result/1" as const, status: "arranged" as const, layouts: [layout], reasons: [], instead: [], engine: { version: "0", seed: 1 }, timing: { totalMs: 0, stages: {} } };
    expect(effectOf(asked({ step: "guests", guests: 90, capacity: counted("mixed", 88, 130), result })).sentence)
      .toBe("As the Grain Floor stands, round and long tables together seat 88 of your 90 in comfort, 130 at the most. Laid out for you: all 90 sit in comfort in the Grain Floor.");
  });
});

describe("where displays and extras are drawn", () => {
  const piece = (id: string, role: string, room: string) => ({ id, kind: "other" as const, role, label: id, from: { brought: true } as const, room, at: [0, 0] as const, angle: 0, shape: { width: 1000, depth: 500 }, seats: [] });
  const layout: Layout = {
    id: "a", title: "·", why: [], turnovers: [], findings: [],
    scenes: [{ id: "meal", title: "Meal", rooms: ["grain-floor", "wheel-room"], drapes: [], seats: 0, numbers: [], items: [piece("c", "cake", "grain-floor"), piece("w", "lounge", "wheel-room")] }],
  };
  const result = { format: "marquetry.result/1" as const, status: "arranged" as const, layouts: [layout], reasons: [], instead: [], engine: { version: "0", seed: 1 }, timing: { totalMs: 0, stages: {} } };
  it("names what was asked for, and not what stands in the house anyway", () => {
    const with1 = { displays: ["cake"], extras: [] } as const;
    expect(effectOf(asked({ step: "displays", guests: 90, result, brief: with1 })).sentence).toBe("Cake: drawn in the Grain Floor.");
    expect(effectOf(asked({ step: "extras", guests: 90, result, brief: with1 })).sentence).toBe("No extra is drawn yet.");
    expect(effectOf(asked({ step: "extras", guests: 90, result, brief: { displays: [], extras: ["lounge"] } })).sentence).toBe("A lounge corner: drawn in the Wheel Room.");
  });
});

describe("what a layout gives up", () => {
  const out = (name: string, n: number) => ({ code: "carried-out", data: { name, n } });
  const layout = {
    givesUp: ["Tables are laid for as many as they take, not for comfort.", "Oak settle is carried out.", "Stool: 3 are carried out.", "Another layout here is more comfortable."],
    told: { why: [], givesUp: [{ code: "tables-full" }, out("Oak settle", 1), out("Stool", 3), { code: "less-comfort" }] },
  };
  it("names all pieces that are carried out in one sentence, where the first of them stood", () => {
    expect(givesUpWords(layout, ENGLISH)).toBe("Tables are laid for as many as they take, not for comfort. Carried out: Oak settle, 3 × Stool. Another layout here is more comfortable.");
    expect(givesUpWords(layout, sayIn("es"))).toContain("Se retira de la sala: Oak settle, 3 × Stool.");
  });
  it("leaves sentences as they are where one piece is carried out, or nothing is told of them", () => {
    expect(givesUpWords({ givesUp: ["Oak settle is carried out."], told: { why: [], givesUp: [out("Oak settle", 1)] } }, ENGLISH)).toBe("Oak settle is carried out.");
    expect(givesUpWords({ givesUp: layout.givesUp }, ENGLISH)).toBe(layout.givesUp.join(" "));
    expect(givesUpWords({ givesUp: [] }, ENGLISH)).toBeNull();
  });
});
