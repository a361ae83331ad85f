import { describe, expect, it } from "vitest";
import { briefSchema, type Brief } from "../../../lib/brief";
import { tidewheel } from "../../../lib/demo";
import { arrange } from "../../../lib/engine";
import type { ArrangeResult } from "../../../lib/layout";
import { venueSchema, type Venue } from "../../../lib/venue";
import { engineIn } from "../../../lib/words/engine";
import { resultIn } from "../../../lib/words/layout";
import { sayIn } from "../../../lib/words/pages";

const mill: Venue = venueSchema.parse(tidewheel);
const asked = (changes: Readonly<Record<string, unknown>>): Brief => briefSchema.parse({
  format: "marquetry.brief/1", package: mill.packages.find((one) => one.coordinator)?.id, date: "2029-06-16", guests: { adults: 60, children: 4, wheelchairs: 1, suppliers: 3 }, ...changes,
});
const BRIEFS: readonly Brief[] = [
  asked({ displays: ["welcome", "cards", "guest-book", "photographs", "cake", "favours", "seating-plan"], extras: ["photo-booth", "lounge", "cocktail-tables", "appetisers", "children-corner", "second-bar"], music: { by: "dj", dancing: 0.3 }, ceremony: { here: true } }),
  asked({ guests: { adults: 4_000 } }),
  asked({ guests: { adults: 92 }, meal: { tables: "rounds", service: "buffet", top: "one-sided" }, music: { by: "band", dancing: 0.4 }, wishes: [{ put: "cake", near: "window" }, { put: "dj", "away-from": "top" }] }),
];

/** The words of ours that a result shows. */
const wordsOf = (r: ArrangeResult): readonly string[] => [
  ...r.reasons.map((one) => one.text), ...r.instead.map((one) => one.text),
  ...r.layouts.flatMap((l) => [l.title, ...l.why, ...(l.givesUp ?? []), ...l.findings.map((f) => f.text), ...[...l.scenes, ...(l.wet?.scenes ?? [])].flatMap((s) => [s.title, ...s.items.map((i) => i.label)])]),
];

/** English that is left once the venue's own names are taken out. */
function english(text: string): string | undefined {
  const own = [...mill.rooms.map((r) => r.name), ...mill.stock.map((s) => s.name), ...mill.rooms.flatMap((r) => r.standing.map((s) => s.name)), ...mill.drapes.map((d) => d.name), ...mill.packages.map((p) => p.name)];
  const bare = own.sort((a, b) => b.length - a.length).reduce((left, name) => left.replaceAll(new RegExp(name.replace(/[.*+?^${}()|[\]\\]/g, "\\$&"), "gi"), "·"), text);
  return /\b(the|and|with|of|is|are|in|on|for|table|round|rounds|long|chair|row|guest|guests|place|places|dance|cake|cards|book|couple|meal|drinks|stands|from|no|all|wide|full|set|more|less)\b/i.exec(bare.replace(/\b(IBC|ADA) [^.;]*/g, ""))?.[0];
}

describe("what the engine says, in Spanish", () => {
  it("leaves no English but the venue's own names", { timeout: 240_000 }, () => {
    const left = new Set<string>();
    const venue: Venue = { ...mill, locale: "es-ES" };
    for (const brief of BRIEFS) {
      const result = arrange(mill, brief, { seed: 1, layouts: 3, instead: brief.guests.adults > 1_000 });
      for (const text of wordsOf(resultIn(result, { venue, say: sayIn("es") }))) {
        const word = english(text);
        if (word !== undefined) left.add(`${word}: ${text}`);
      }
    }
    expect([...left]).toEqual([]);
  });

  it("writes lengths and areas as they are read", () => {
    const feet = engineIn({ say: sayIn("en-GB"), lengths: "imperial", locale: "en-GB" });
    // 9.3 sq m are 9.3 / 0.09290304 = 100.1 sq ft.
    expect(feet("The drape is drawn: the Hall takes 9.3 m² of the Bar.")).toBe("The drape is drawn: the Hall takes 100 sq ft of the Bar.");
    const spanish = engineIn({ say: sayIn("es"), lengths: "metric", locale: "es-ES" });
    expect(spanish("The drape is drawn: the Hall takes 9.3 m² of the Bar.")).toBe("The drape está corrida: Hall toma 9,3 m² de Bar.");
    expect(spanish("All 64 sit in comfort in the Barn and Yard.")).toBe("Los 64 se sientan con holgura en Barn y Yard.");
  });
});
