import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { fieldNames, saidIn, saidShort, saidShown } from "../../../components/form/said";
import { named, tidied } from "../../../components/form/tidy";
import { apartIn, joined } from "../../../components/form/two";
import { readStep } from "../../../lib/brief/draft";
import { tidewheel } from "../../../lib/demo";
import { venueSchema } from "../../../lib/venue";
import { ENGLISH, PHRASES, sayIn } from "../../../lib/words/pages";

const venue = venueSchema.parse(tidewheel);

describe("what is typed", () => {
  it("is forgiven harmless signs, in the words of each language", () => {
    for (const [typed, meant] of [[" 92 ", "92"], ["92 guests", "92"], ["1,200", "1200"], ["92.", "92"], ["92 invitados", "92"], ["6 niños", "6"]] as const) expect(tidied("guests", { adults: typed })).toEqual({ adults: meant });
    expect(tidied("guests", { adults: "about 92" })).toEqual({ adults: "about 92" });
  });

  it("is refused by a message that names the field and says what is allowed", () => {
    const read = readStep("guests", { adults: "many", children: "-2" });
    const errors = read.ok ? [] : named(read.error, fieldNames("guests", venue, ENGLISH), ENGLISH);
    expect(errors.map((one) => one.message)).toEqual([expect.stringMatching(/^Adults: type a whole number from 1 to \d+/), expect.stringMatching(/^Children: type a whole number from 0 to \d+/)]);
    const spanish = read.ok ? [] : named(read.error, fieldNames("guests", venue, sayIn("es")), sayIn("es"));
    expect(spanish[0]?.message).toMatch(/^Adultos: escriban un número entero de 1 a \d+/);
  });

  it("is never met with please, sorry or invalid", () => {
    expect(PHRASES.filter((phrase) => /\b(please|sorry|invalid|oops)\b/i.test(phrase))).toEqual([]);
  });

  it("is said again in short, in the order of the page", () => {
    expect(saidShort("guests", { adults: "60", children: "4" }, venue, ENGLISH)).toBe("Adults 60, children 4");
    expect(saidShort("meal", {}, venue, ENGLISH)).toBe("Not sure yet");
    expect(saidIn("music", { dancing: "40" }, venue, sayIn("es")).find((one) => one.field === "dancing")?.said).toBe("Bastantes (40 de cada cien)");
    expect(saidShort("music", { by: "dj", dancing: "40" }, venue, ENGLISH)).toBe("A DJ, a good many of us (40 in a hundred) dancing at once");
    expect(saidShort("music", { dancing: "35" }, venue, ENGLISH)).toBe("35 in a hundred dancing at once");
    expect(saidShort("ceremony", { here: "yes", room: "any" }, venue, ENGLISH)).toBe("Yes, here, whichever suits best");
  });
});

describe("what was answered", () => {
  it("is everyone where a part of the day was left empty, as its page says", () => {
    expect(saidShown("guests", { ceremony: "", evening: "80" }, venue).filter((one) => one.field === "ceremony" || one.field === "evening").map((one) => one.said)).toEqual(["All of you", "80"]);
  });

  it("leaves out what was not asked: a room without a choice, the players of a DJ", () => {
    const fields = (step: "meal" | "music", v: Readonly<Record<string, string>>): readonly string[] => saidShown(step, v, venue).map((one) => one.field);
    expect(fields("meal", { room: "unsure" })).not.toContain("room");
    expect(fields("meal", { room: "any" })).toContain("room");
    expect(fields("music", { by: "dj", players: "" })).not.toContain("players");
    expect(fields("music", { by: "band", players: "" })).toContain("players");
  });
});

describe("two versions of a step", () => {
  const stands = { adults: "60", children: "4", quiet: "" }, typed = { adults: "72", children: "", quiet: "" };
  it("are told apart by the fields that differ", () => {
    expect(apartIn({ step: "guests", stands, typed, venue, say: ENGLISH }).map((one) => [one.field, one.theirs, one.mine])).toEqual([["adults", "60", "72"], ["children", "4", "Not sure yet"]]);
    expect(apartIn({ step: "guests", stands, typed: stands, venue, say: ENGLISH })).toEqual([]);
  });

  it("become one, field by field; what is not decided stays as it stands", () => {
    expect(joined({ stands, typed }, { adults: "mine" })).toEqual({ adults: "72", children: "4", quiet: "" });
    expect(joined({ stands: { extras: ["lounge", "photo-booth"] }, typed: { extras: "lounge" } }, { extras: "both" })).toEqual({ extras: ["lounge", "photo-booth"] });
  });

  it("never yield an answer that neither of them gave", () => {
    const side = fc.record({ adults: fc.nat(99).map(String), children: fc.nat(99).map(String) });
    const taken = fc.record({ adults: fc.constantFrom("theirs" as const, "mine" as const), children: fc.constantFrom("theirs" as const, "mine" as const) });
    fc.assert(fc.property(side, side, taken, (a, b, how) => {
      const one = joined({ stands: a, typed: b }, how);
      return one["adults"] === (how.adults === "mine" ? b.adults : a.adults) && one["children"] === (how.children === "mine" ? b.children : a.children);
    }));
  });
});
