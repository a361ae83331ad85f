import { describe, expect, it } from "vitest";
import { briefSchema, type BriefFile } from "../../../lib/brief";
import { tidewheel } from "../../../lib/demo";
import { arrange } from "../../../lib/engine";
import type { ArrangeResult } from "../../../lib/layout";
import { check } from "../../../lib/rules";
import { venueSchema } from "../../../lib/venue";

const mill = venueSchema.parse(tidewheel);
const brief = (adults: number, more: Partial<BriefFile> = {}) => briefSchema.parse({
  format: "marquetry.brief/1", package: "hosted-day", date: "2027-06-12", guests: { adults },
  meal: { service: "plated", tables: "any" }, music: { by: "dj", dancing: 0.25 }, displays: ["cake", "welcome", "cards"], ...more,
});
const run = (b: ReturnType<typeof brief>): ArrangeResult => arrange(mill, b, { layouts: 1, instead: false });
const drapes = (r: ArrangeResult): readonly string[] => [...new Set(r.layouts.flatMap((l) => l.scenes.flatMap((s) => s.drapes)))];

describe("a drape that lends a room part of its neighbour", () => {
  it("seats 122 guests that find no room without it, and charges its drawing once", () => {
    const without = run(brief(122, { drape: "no" }));
    expect(without.status).not.toBe("arranged");
    const result = run(brief(122));
    expect(result.status).toBe("arranged");
    expect(drapes(result)).toEqual(["arch-drape"]);
    const layout = result.layouts[0];
    expect(layout?.scenes.find((s) => s.id === "meal")?.seats).toBe(122);
    expect(layout?.quote?.lines.filter((l) => l.charge === "drape").map((l) => l.amount)).toEqual([9500]);
    expect(layout?.why.some((w) => w.includes("drawn: the Grain Floor takes"))).toBe(true);
  });

  it("is drawn where the couple ask for it, never where they want none, and not where it is not needed", () => {
    expect(drapes(run(brief(60, { drape: "yes" })))).toEqual(["arch-drape"]);
    expect(drapes(run(brief(60, { drape: "no" })))).toEqual([]);
    expect(drapes(run(brief(60)))).toEqual([]);
  });

  it("puts nothing of the strip in the room that lends it, and breaks no must", () => {
    const asked = brief(122);
    const layout = run(asked).layouts[0];
    if (!layout) throw new Error("not arranged");
    expect(check(mill, layout, asked).filter((f) => f.level === "must")).toEqual([]);
    // The bar's usual room ends at the drape, 1.59 m behind the arch's wall.
    for (const s of layout.scenes) for (const i of s.items) if (i.room === "wheel-room") expect(i.at[0]).toBeGreaterThan(16600 + 1590);
  });

  it("leaves what stood in the strip its place, moves it to a wall or carries it out, and says which", () => {
    const layout = run(brief(122)).layouts[0];
    const items = layout?.scenes.find((s) => s.id === "meal")?.items ?? [];
    for (const piece of mill.rooms.find((r) => r.id === "wheel-room")?.standing.filter((s) => ["wing-chair-1", "stool-1", "stool-2"].includes(s.id)) ?? []) {
      const now = items.find((i) => "standing" in i.from && i.from.standing === piece.id);
      const says = (word: string): boolean => layout?.givesUp?.some((g) => g.startsWith(piece.name) && g.includes(word)) ?? false;
      if (!now) expect(says("carried out")).toBe(true);
      else if (now.at[0] !== piece.at[0] || now.at[1] !== piece.at[1]) expect(says("moves to a wall")).toBe(true);
    }
  });
});

describe("a room that is turned over", () => {
  const asked = { meal: { service: "buffet" as const }, music: { by: "dj" as const, dancing: 0.35 } };
  it("seats 70 who sit in rows and at tables on one floor, and not without", () => {
    expect(run(brief(70, { ...asked, turnover: false })).status).not.toBe("arranged");
    const result = run(brief(70, asked));
    expect(result.status).toBe("arranged");
    expect(result.layouts[0]?.turnovers.some((t) => t.room === "grain-floor" && t.minutes > 0)).toBe(true);
  });
});
