import { describe, expect, it } from "vitest";
import { sayLeft } from "../../../lib/words/left";
import { ENGLISH, sayIn } from "../../../lib/words/pages";

const YEAR = 365;
const said = (...days: readonly number[]): readonly string[] => days.map((n) => sayLeft(n, ENGLISH));

describe("how long it is to a due date", () => {
  it("is counted in days while a person would count them", () => {
    expect(said(0, 1, 2, 28, 59)).toEqual(["today", "tomorrow", "in 2 days", "in 28 days", "in 59 days"]);
  });

  it("is given in months up to two years, then to the half year", () => {
    expect(said(60, 9 * 30.5, YEAR, 23 * 30.5)).toEqual(["in about 2 months", "in about 9 months", "in about 12 months", "in about 23 months"]);
    expect(said(2 * YEAR, 2.5 * YEAR, 1013, 3 * YEAR)).toEqual(["in about 2 years", "in about 2 and a half years", "in about 3 years", "in about 3 years"]);
  });

  it("is said of a day that is past in the same measures", () => {
    expect(said(-1, -59, -61, -2.2 * YEAR)).toEqual(["1 day late", "59 days late", "about 2 months late", "about 2 years late"]);
  });

  it("is said in Spanish", () => {
    const say = sayIn("es");
    expect([1, 40, 300, 900, 1013].map((n) => sayLeft(n, say))).toEqual(["mañana", "dentro de 40 días", "dentro de unos 10 meses", "dentro de unos 2 años y medio", "dentro de unos 3 años"]);
  });
});
