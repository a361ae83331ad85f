import { readdirSync, readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { larkspur, tidewheel } from "../../../lib/demo";
import { parseVenue } from "../../../lib/venue";
import { venueFacts, venueSchema, type VenueFile } from "../../../lib/venue";

type Loose = { [key: string]: any } // eslint-disable-line @typescript-eslint/no-explicit-any
/** The mill with one thing changed, and the paths of what is then wrong. */
function wrong(change: (v: Loose) => void, from: VenueFile = tidewheel): readonly string[] {
  const copy: Loose = structuredClone(from);
  change(copy);
  return venueFacts(venueSchema.parse(copy)).map((p) => p.path);
}
const said = (change: (v: Loose) => void): string => {
  const copy: Loose = structuredClone(tidewheel);
  change(copy);
  return venueFacts(venueSchema.parse(copy)).map((p) => p.message).join("\n");
};

describe("a venue whose parts agree", () => {
  it("has no problems: the two demo venues", () => {
    expect(venueFacts(venueSchema.parse(tidewheel))).toEqual([]);
    expect(venueFacts(venueSchema.parse(larkspur))).toEqual([]);
  });
  const folder = "tests/fixtures/venues";
  it.each(readdirSync(folder))("has no problems: %s", (file) => {
    const read = parseVenue(readFileSync(`${folder}/${file}`, "utf8"));
    expect(read.ok ? [] : read.error).toEqual([]);
  });
  it("may have rooms that share a wall line", () => {
    expect(wrong((v) => { v.rooms[3].outline = [[6600, 9900], [9200, 9900], [9200, 15100], [6600, 15100]]; v.rooms[3].doors[1].from = [6600, 10500]; v.rooms[3].doors[1].to = [6600, 11600]; v.rooms[3].walls = []; })).toEqual([]);
  });
});

describe("a room", () => {
  it("whose outline crosses itself", () => {
    expect(wrong((v) => { v.rooms[0].outline = [[0, 0], [16200, 9400], [16200, 0], [0, 9400]]; })).toContain("rooms[0].outline");
  });
  it("whose outline repeats its first point at the end", () => {
    expect(wrong((v) => { v.rooms[0].outline = [...v.rooms[0].outline, v.rooms[0].outline[0]]; })).toContain("rooms[0].outline");
  });
  it("whose outline runs back along itself", () => {
    expect(wrong((v) => { v.rooms[0].outline = [[0, 0], [16200, 0], [18000, 0], [16200, 0], [16200, 9400], [0, 9400]]; })).toContain("rooms[0].outline");
  });
  it("that lies over another of its level", () => {
    expect(wrong((v) => { v.rooms[1].outline[0][0] = 16000; v.rooms[1].outline[3][0] = 16000; v.rooms[1].doors[0].from[0] = 16000; v.rooms[1].doors[0].to[0] = 16000; })).toContain("rooms[1].outline");
  });
  it("that is called by a word with a meaning of its own", () => {
    expect(wrong((v) => { v.rooms[4].id = "outside"; })).toContain("rooms[4].id");
  });
});

describe("doors, windows and walls", () => {
  it("a jamb off the outline is named, and how near it must be", () => {
    expect(wrong((v) => { v.rooms[3].doors[2].from = [7300, 15050]; })).toEqual(["rooms[3].doors[2].from"]);
    expect(said((v) => { v.rooms[3].doors[2].from = [7300, 15050]; })).toContain("within 2 mm");
  });
  it("two millimetres off are let go, three are not", () => {
    expect(wrong((v) => { v.rooms[3].doors[2].from = [7300, 15098]; })).toEqual([]);
    expect(wrong((v) => { v.rooms[3].doors[2].from = [7300, 15097]; })).toEqual(["rooms[3].doors[2].from"]);
  });
  it("jambs on two walls", () => {
    expect(wrong((v) => { v.rooms[3].doors[2].from = [7000, 14500]; })).toEqual(["rooms[3].doors[2].to"]);
  });
  it("a door too narrow for anybody", () => {
    expect(wrong((v) => { v.rooms[3].doors[2].to = [7599, 15100]; })).toEqual(["rooms[3].doors[2].to"]);
    expect(wrong((v) => { v.rooms[3].doors[2].to = [7600, 15100]; })).toEqual([]);
  });
  it("a window off its wall, a stretch of wall round a corner", () => {
    expect(wrong((v) => { v.rooms[0].windows[1].to = [5940, 400]; })).toEqual(["rooms[0].windows[1].to"]);
    expect(wrong((v) => { v.rooms[0].walls[0].to = [400, 0]; })).toEqual(["rooms[0].walls[0].to"]);
  });
  it("a door that leads to a room the venue lacks, or to its own", () => {
    expect(wrong((v) => { v.rooms[2].doors[2].leads = "cellar"; v.store = undefined; })).toEqual(["rooms[2].doors[2].leads"]);
    expect(wrong((v) => { v.rooms[2].doors[2].leads = "millers-parlour"; v.store = undefined; })).toEqual(["rooms[2].doors[2].leads"]);
  });
  it("a door between two rooms that only one of them lists", () => {
    expect(wrong((v) => { v.rooms[4].doors.splice(0, 1); })).toEqual(["rooms[0].doors[2].leads"]);
  });
  it("two doors that do not face each other", () => {
    expect(wrong((v) => { v.rooms[4].doors[0].from = [9800, 9900]; v.rooms[4].doors[0].to = [11300, 9900]; })).toEqual(["rooms[0].doors[2].leads", "rooms[4].doors[0].leads"]);
  });
  it("two rooms of different levels need a door each, and no more", () => {
    const steps = JSON.parse(readFileSync("tests/fixtures/venues/two-levels.json", "utf8"));
    expect(wrong(() => undefined, steps)).toEqual([]);
    expect(wrong((v) => { v.rooms[1].doors.splice(0, 1); }, steps)).toEqual(["rooms[0].doors[2].leads"]);
  });
});

describe("what stands or lies in a room", () => {
  it("an obstacle outside it", () => {
    expect(wrong((v) => { v.rooms[0].obstacles[0].outline = [[30000, 0], [30200, 0], [30200, 200]]; })).toEqual(["rooms[0].obstacles[0].outline[0]"]);
  });
  it("an obstacle that crosses itself", () => {
    expect(wrong((v) => { v.rooms[0].obstacles[0].outline = [[0, 0], [100, 100], [100, 0], [0, 100]]; })).toEqual(["rooms[0].obstacles[0].outline"]);
  });
  it("a standing piece outside it, by its middle or by a corner", () => {
    expect(wrong((v) => { v.rooms[0].standing[0].at = [20000, 7800]; })).toEqual(["rooms[0].standing[0].at"]);
    expect(wrong((v) => { v.rooms[0].standing[0].at = [15900, 7800]; })).toEqual(["rooms[0].standing[0].at"]);
  });
  it("a socket far outside it, in either of its forms", () => {
    expect(wrong((v) => { v.rooms[0].sockets[0].at = [-900, 3300]; })).toEqual(["rooms[0].sockets[0].at"]);
    expect(wrong((v) => { v.rooms[0].sockets[0] = [-900, 3300]; })).toEqual(["rooms[0].sockets[0]"]);
  });
});

describe("names", () => {
  const cases: readonly (readonly [string, (v: Loose) => void])[] = [
    ["rooms[0].doors[1].id", (v) => { v.rooms[0].doors[1].id = "grain-arch"; }],
    ["rooms[1].standing[1].id", (v) => { v.rooms[1].standing[1].id = "oak-settle"; }],
    ["rooms[0].standing[0].move", (v) => { v.rooms[0].standing[0].move = "gold"; }],
    ["stock[1].id", (v) => { v.stock[1].id = "round"; }],
    ["packages[1].id", (v) => { v.packages[1].id = "dry-hire"; }],
    ["packages[0].rooms[1]", (v) => { v.packages[0].rooms[1] = "attic"; }],
    ["packages[0].rooms[1]", (v) => { v.packages[0].rooms[1] = "grain-floor"; }],
    ["packages[1].included[0]", (v) => { v.packages[1].included[0] = "gold"; }],
    ["charges[1].id", (v) => { v.charges[1].id = "light-piece"; }],
    ["charges[4].of", (v) => { v.charges[4].of = "gold"; }],
    ["charges[4].of", (v) => { delete v.charges[4].of; }],
    ["drapes[0].grows", (v) => { v.drapes[0].grows = "attic"; }],
    ["drapes[0].from", (v) => { v.drapes[0].from = "attic"; }],
    ["drapes[0].charge", (v) => { v.drapes[0].charge = "gold"; }],
    ["store", (v) => { v.store = "front-door"; }],
    ["places.cake[0].room", (v) => { v.places.cake[0].room = "attic"; }],
    ["stock[0].seats.most", (v) => { v.stock[0].seats.most = 22; }],
    ["rules.comfort.tableGap", (v) => { v.rules.comfort.tableGap = 1300; }],
  ];
  it.each(cases)("%s is told", (path, change) => expect(wrong(change)).toContain(path));
  it("two rooms of one name", () => {
    expect(wrong((v) => { v.rooms.push({ ...structuredClone(v.rooms[4]), doors: [], outline: [[40000, 0], [50000, 0], [50000, 9000]] }); })).toEqual(["rooms[5].id"]);
  });
  it("the same door name in two rooms is no problem: a door between them may have one name", () => {
    expect(wrong((v) => { v.rooms[1].doors[0].id = "grain-arch"; })).toEqual([]);
  });
});

describe("a drape", () => {
  it("whose area leaves the room it takes from", () => {
    expect(wrong((v) => { v.drapes[0].area = [[16500, 1600], [18190, 1600], [18190, 7800], [16500, 7800]]; })).toEqual(["drapes[0].area"]);
  });
  it("whose area touches no opening to the room it grows", () => {
    expect(wrong((v) => { v.drapes[0].area = [[20000, 1600], [24000, 1600], [24000, 7800], [20000, 7800]]; })).toEqual(["drapes[0].area"]);
  });
  it("that grows the room it takes from", () => {
    expect(wrong((v) => { v.drapes[0].grows = "wheel-room"; })).toEqual(["drapes[0].grows"]);
  });
});

describe("a door that leads outside", () => {
  it("does not open against another room under a roof", () => {
    const message = said((v) => { v.rooms[0].doors.push({ id: "blind", from: [16200, 6800], to: [16200, 7700], leads: "outside", exit: true, for: ["guests"], swing: "out" }); });
    expect(message).toContain("wheel-room lies behind this door");
  });
  it("may open onto a terrace, or onto nothing of the venue's", () => {
    expect(wrong((v) => { v.rooms[0].doors.push({ id: "gap", from: [16200, 8200], to: [16200, 9200], leads: "outside", exit: true, for: ["guests"], swing: "out" }); })).toEqual([]);
  });
});
