import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { schemaOf } from "../../lib/cli/commands/schema";
import { call, folder } from "./kit/call";
import { fullBrief, fullVenue } from "./kit/samples";
import { put, unheld, wrongs, type Wrong } from "./kit/wrong";

const LAYOUT = { id: "a", title: "A", scenes: [{ id: "meal", title: "Meal", rooms: ["grain-floor"], items: [], seats: 0 }] };
const files = folder();
afterAll(() => { files.clear(); });
beforeAll(async () => {
  files.write("good-venue.json", fullVenue);
  files.write("good-brief.json", fullBrief);
  files.write("good-layout.json", LAYOUT);
});
const good = { venue: `${files.at}/good-venue.json`, brief: `${files.at}/good-brief.json`, layout: `${files.at}/good-layout.json` };

/** `file: path: what is wrong; allowed: what is allowed` */
const SHAPE = /^[^:]+: [^:]+: .+; allowed: .+$/;

async function refused(file: string, list: readonly Wrong[]): Promise<readonly string[]> {
  const failures: string[] = [];
  for (const w of list) {
    const at = files.write(`${file}.json`, w.file);
    const named = { ...good, [file]: at };
    const { code, out, lines } = await call("quote", named.venue, named.brief, named.layout);
    const told = lines.some((l) => [w.path, w.or].some((p) => p !== undefined && l.startsWith(`${at}: ${p}: `)));
    if (code !== 2 || out !== "" || !told || !lines.every((l) => SHAPE.test(l))) failures.push(`${w.path} (${w.what}): exit ${code}: ${lines.slice(0, 3).join(" | ")}`);
  }
  return failures;
}

describe("each field of VENUE given wrongly", () => {
  const schema = schemaOf("venue");
  it("the sample is good, and holds every field but a standard layout's", async () => {
    expect((await call("quote", good.venue, good.brief, good.layout)).code).toBe(0);
    expect(unheld(schema, fullVenue).filter((p) => !p.startsWith(".standardLayout"))).toEqual([]);
  });
  it("is exit 2 with nothing printed and a line that names the path", async () => {
    const list = wrongs(schema, fullVenue);
    expect(list.length).toBeGreaterThan(1500);
    expect(await refused("venue", list)).toEqual([]);
  }, 300_000);
});

describe("each field of BRIEF given wrongly", () => {
  const schema = schemaOf("brief");
  it("the sample holds every field", () => expect(unheld(schema, fullBrief)).toEqual([]));
  it("is exit 2 with nothing printed and a line that names the path", async () => {
    const list = wrongs(schema, fullBrief);
    expect(list.length).toBeGreaterThan(400);
    expect(await refused("brief", list)).toEqual([]);
  }, 300_000);
});

describe("each field of a layout given wrongly", () => {
  const item = {
    id: "t1", kind: "table", role: "dining", also: ["cake"], label: "1", room: "grain-floor", from: { stock: "round", count: 1 }, shape: { diameter: 1680 }, at: [5000, 5000],
    angle: 0, seats: [{ x: 5000, y: 3900, facing: 90, place: "chair" }], note: "",
  };
  const layout = {
    ...LAYOUT, why: ["So."], givesUp: ["Room."],
    scenes: [{ ...LAYOUT.scenes[0], drapes: ["arch-drape"], items: [item, { ...item, id: "s", from: { standing: "oak-settle" }, shape: { width: 1800, depth: 780 } }, { ...item, id: "b", from: { brought: true } }], numbers: ["t1"] }],
    turnovers: [{ from: "ceremony", to: "meal", room: "grain-floor", minutes: 30, crew: 4, moves: [{ item: "t1", to: "grain-floor", act: "out", minutes: 3 }] }],
    score: { comfort: 1, flow: 1, sight: 1, tidiness: 1, moves: 1 },
  };
  it("is exit 2 with nothing printed and a line that names the path", async () => {
    files.write("layout.json", layout);
    expect((await call("quote", good.venue, good.brief, `${files.at}/layout.json`)).lines.filter((l) => SHAPE.test(l))).toEqual([]);
    expect(await refused("layout", wrongs(schemaOf("layout"), layout))).toEqual([]);
  }, 300_000);
});

describe("a reference that leads nowhere", () => {
  const cases: readonly (readonly [string, string, readonly (string | number)[], unknown])[] = [
    ["venue", "rooms[0].doors[0].leads", ["rooms", 0, "doors", 0, "leads"], "attic"],
    ["venue", "rooms[0].standing[0].move", ["rooms", 0, "standing", 0, "move"], "gold"],
    ["venue", "drapes[0].grows", ["drapes", 0, "grows"], "attic"],
    ["venue", "drapes[0].from", ["drapes", 0, "from"], "attic"],
    ["venue", "drapes[0].charge", ["drapes", 0, "charge"], "gold"],
    ["venue", "packages[0].rooms[0]", ["packages", 0, "rooms", 0], "attic"],
    ["venue", "packages[0].included[0]", ["packages", 0, "included", 0], "gold"],
    ["venue", "charges[3].of", ["charges", 3, "of"], "gold"],
    ["venue", "store", ["store"], "attic"],
    ["venue", "places.cake[0].room", ["places", "cake", 0, "room"], "attic"],
    ["brief", "package", ["package"], "gold"],
    ["brief", "ceremony.room", ["ceremony", "room"], "attic"],
    ["brief", "meal.room", ["meal", "room"], "attic"],
    ["layout", "scenes[0].rooms[0]", ["scenes", 0, "rooms", 0], "attic"],
  ];
  it.each(cases)("%s %s", async (file, named, at, value) => {
    const sample = file === "venue" ? fullVenue : file === "brief" ? fullBrief : LAYOUT;
    expect(await refused(file, [{ what: "reference", path: named, file: put(sample, at, value) }])).toEqual([]);
  });
  it("a room of the venue that the package lacks is no bad input", async () => {
    const brief = files.write("brief.json", { ...fullBrief, package: "dry-hire", meal: { room: "wheel-room" } });
    expect((await call("quote", good.venue, brief, good.layout)).code).toBe(0);
  });
});

describe("answers that contradict each other", () => {
  const guests = (more: object) => ({ ...fullBrief, guests: { adults: 10, ...more } });
  it.each([
    ["guests.highChairs", { children: 1, highChairs: 2 }], ["guests.wheelchairs", { wheelchairs: 11 }], ["guests.quiet", { quiet: 11 }], ["guests.children", { children: 4991 }],
  ])("%s", async (named, more) => expect(await refused("brief", [{ what: "contradiction", path: named, file: guests(more) }])).toEqual([]));
  it.each([["date", "2027-02-29"], ["today", "2027-13-01"], ["date", "12 June 2027"]])("%s %s is no day", async (field, value) =>
    expect(await refused("brief", [{ what: "day", path: field, file: { ...fullBrief, [field]: value } }])).toEqual([]));
  it("a display twice", async () => expect(await refused("brief", [{ what: "twice", path: "displays", file: { ...fullBrief, displays: ["cake", "cake"] } }])).toEqual([]));
});
