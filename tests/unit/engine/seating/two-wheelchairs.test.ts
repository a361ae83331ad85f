import { describe, expect, it } from "vitest";
import { briefSchema } from "../../../../lib/brief";
import { arrange } from "../../../../lib/engine";
import { check } from "../../../../lib/rules";
import { hallFor } from "../../../bench/weddings";

/** Nine guests at two tables, or at three: more of them in wheelchairs than there are tables. */
const day = (wheelchairs: number, tables: "rounds" | "long") => briefSchema.parse({
  format: "marquetry.brief/1", package: "hire", date: "2027-06-12", guests: { adults: 9, wheelchairs }, ceremony: { here: false },
  meal: { service: "plated", tables, top: "none" }, music: { by: "none", dancing: 0 },
});

describe("more wheelchairs than tables", () => {
  for (const tables of ["rounds", "long"] as const) it(`have a second place across a table: ${tables}`, () => {
    const venue = hallFor(60), brief = day(4, tables), layout = arrange(venue, brief, { layouts: 1 }).layouts[0];
    const laid = layout?.scenes.find((s) => s.id === "meal")?.items.filter((i) => i.seats.length > 0) ?? [];
    const wheels = laid.map((i) => i.seats.filter((s) => s.place === "wheelchair").length);
    expect(wheels.reduce((n, k) => n + k, 0)).toBe(4);
    expect(laid.length).toBeLessThan(4);
    expect(Math.max(...wheels)).toBe(2);
    expect(layout && check(venue, layout, brief).filter((f) => f.level === "must")).toEqual([]);
  });

  it("are spread, one a table, while there are tables enough", () => {
    const layout = arrange(hallFor(120), { ...day(3, "rounds"), guests: { ...day(3, "rounds").guests, adults: 60 } }, { layouts: 1 }).layouts[0];
    const wheels = layout?.scenes.find((s) => s.id === "meal")?.items.map((i) => i.seats.filter((s) => s.place === "wheelchair").length) ?? [];
    expect(wheels.filter((n) => n === 1)).toHaveLength(3);
    expect(Math.max(...wheels)).toBe(1);
  });
});
