import { describe, expect, it } from "vitest";
import { isPlainLine, makeReference, readNames, readReference } from "../../../lib/booking";
import { seeded } from "../../../lib/base";

describe("the names of a couple", () => {
  it.each([
    ["Ana Silva & Bo Lind", ["Ana Silva", "Bo Lind"]],
    ["Ana Silva and Bo Lind", ["Ana Silva", "Bo Lind"]],
    ["佐藤 美咲\n李 明", ["佐藤 美咲", "李 明"]],
    ["  Zoë   Ånd , Sandy Anders ", ["Zoë Ånd", "Sandy Anders"]],
    [" \n ", []],
  ])("%j is %j", (typed, names) => { expect(readNames(typed)).toEqual(names); });

  it("hold no control characters and nothing that turns the writing direction", () => {
    expect(isPlainLine("Ana\r\nBcc: x@example.org")).toBe(false);
    expect(isPlainLine("Ana\u202eoB")).toBe(false);
    expect(isPlainLine("יוסי & Ана")).toBe(true);
  });
});

describe("a reference", () => {
  it("has four signs and two digits, none of which is mistaken for another", () => {
    const random = seeded(7);
    for (let i = 0; i < 500; i += 1) expect(makeReference(random)).toMatch(/^[ACDEFGHJKMNPQRTWXY]{2}[ACDEFGHJKMNPQRTWXY34679][ACDEFGHJKMNPQRTWXY]-[34679]{2}$/);
  });

  it("is read as it was typed", () => {
    expect(readReference(" qk7m-34 ")).toBe("QK7M-34");
    expect(readReference("QK7M34")).toBeUndefined();
  });
});
