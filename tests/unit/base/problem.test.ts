import { describe, expect, it } from "vitest";
import { z } from "zod";
import { fitTo, pathText } from "../../../lib/base";
import { point, record, shape } from "../../../lib/base/schema";

const told = (schema: z.ZodType, value: unknown): readonly string[] => { const r = fitTo(schema, value); return r.ok ? [] : r.error.map((p) => `${p.path}: ${p.message}`); };
const file = record({ shape, spots: z.array(z.union([point, record({ at: point })])).optional(), kind: z.enum(["a", "b"]).optional() });

describe("a path", () => {
  it("reads as one would write it", () => expect(pathText(["rooms", 0, "doors", 1, "from"])).toBe("rooms[0].doors[1].from"));
  it("quotes what is no plain name", () => expect(pathText(["places", "a b"])).toBe('places["a b"]'));
  it("of nothing is the file", () => expect(pathText([])).toBe("file"));
});

describe("what is wrong with a value that may be of several kinds", () => {
  it("is told of the kind it was meant for", () => {
    expect(told(file, { shape: { width: 1.5, depth: 700 } })).toEqual(["shape.width: 1.5 is not allowed; allowed: a whole number of millimetres from 50 to 1000000"]);
    expect(told(file, { shape: { width: 900 } })).toEqual(["shape.depth: missing; allowed: a whole number of millimetres from 50 to 1000000"]);
    expect(told(file, { shape: { diameter: 900, colour: 1 } })).toEqual(["shape.colour: unknown field; allowed: diameter, extra"]);
    expect(told(file, { shape: { diameter: 900 }, spots: [[1, 2], { at: [1, "2"] }] })).toEqual(['spots[1].at[1]: "2" is not allowed; allowed: a whole number of millimetres from -1000000 to 1000000']);
  });
  it("names all kinds where it fits none", () => {
    expect(told(file, { shape: 3 })).toEqual(["shape: 3 is not allowed; allowed: an object with diameter, or an object with width, depth"]);
  });
});

describe("a message", () => {
  it("names the words that are allowed", () => expect(told(file, { shape: { diameter: 900 }, kind: "c" })).toEqual(['kind: "c" is not allowed; allowed: one of "a", "b"']));
  it("cuts what it shows of a long value", () => {
    const [message = ""] = told(file, { shape: { diameter: 900 }, kind: "x".repeat(5000) });
    expect(message.length).toBeLessThan(150);
  });
  it("tells everything that is wrong at once", () => expect(told(file, { shape: {}, kind: 1, more: 2 })).toHaveLength(3));
});
