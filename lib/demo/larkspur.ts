import type { VenueFile } from "../venue";

/** A timber post, 8 in square. */
const post = (id: string, x: number, y: number): NonNullable<VenueFile["rooms"][number]["obstacles"]>[number] => ({
  id, kind: "column", outline: [[x - 102, y - 102], [x + 102, y - 102], [x + 102, y + 102], [x - 102, y + 102]],
});

/**
 * Larkspur Barn, invented: one room of 64 x 40 ft with two rows of posts, a loft over its west end and a porch out of doors.
 * Lengths are whole millimetres of feet and inches (1 ft = 304.8 mm).
 */
export const larkspur: VenueFile = {
  format: "marquetry.venue/1",
  id: "larkspur-barn", name: "Larkspur Barn", locale: "en-US", currency: "USD", timeZone: "America/Chicago", lengths: "imperial", north: 0,
  rooms: [
    {
      id: "threshing-hall", name: "Threshing Hall", level: 0,
      outline: [[0, 0], [19507, 0], [19507, 12192], [0, 12192]],
      obstacles: [
        post("post-1", 4877, 3658), post("post-2", 9754, 3658), post("post-3", 14630, 3658),
        post("post-4", 4877, 8534), post("post-5", 9754, 8534), post("post-6", 14630, 8534),
        { id: "loft-stair", kind: "stair", outline: [[0, 0], [1067, 0], [1067, 3658], [0, 3658]], height: 2600 },
      ],
      keepClear: [{ id: "hay-drop", outline: [[0, 7620], [1219, 7620], [1219, 8839], [0, 8839]], why: "Foot of the hay drop" }],
      doors: [
        { id: "barn-doors", from: [19507, 4877], to: [19507, 7315], leads: "outside", exit: true, for: ["guests", "service"], swing: "out" },
        { id: "hall-porch", from: [8534, 12192], to: [10973, 12192], leads: "porch", exit: false, for: ["guests"], swing: "out" },
        { id: "north-door", from: [14021, 0], to: [15240, 0], leads: "outside", exit: true, for: ["guests"], swing: "out" },
        { id: "west-door", from: [0, 10058], to: [0, 11278], leads: "outside", exit: true, for: ["guests", "service"], swing: "out" },
        { id: "prep-door", from: [3048, 12192], to: [4267, 12192], leads: "back-of-house", exit: false, for: ["service"], swing: "both" },
        { id: "restrooms", from: [16459, 12192], to: [17678, 12192], leads: "toilets", exit: false, for: ["guests"], swing: "out" },
      ],
      windows: [
        { from: [5486, 0], to: [7315, 0], sill: 1067 }, { from: [10973, 0], to: [12802, 0], sill: 1067 },
        { from: [5486, 12192], to: [7315, 12192], sill: 1067 }, { from: [12802, 12192], to: [14630, 12192], sill: 1067 },
      ],
      sockets: [
        { at: [2438, 0], circuit: "A", amps: 20 }, { at: [8230, 0], circuit: "A", amps: 20 }, { at: [17678, 0], circuit: "B", amps: 20 },
        { at: [0, 6096], circuit: "C", amps: 20 }, { at: [12192, 12192], circuit: "D", amps: 20 }, { at: [19507, 9754], circuit: "B", amps: 20 },
      ],
      walls: [
        { from: [0, 4267], to: [0, 7315], is: "feature" }, { from: [1219, 0], to: [5182, 0], is: "plain" },
        { from: [19507, 7925], to: [19507, 11887], is: "plain" },
      ],
      standing: [
        { id: "church-pew", name: "Church pew", kind: "lounge", shape: { width: 2134, depth: 610 }, at: [19190, 2438], angle: 90, move: "heavy-piece" },
        { id: "seed-cabinet", name: "Seed cabinet", kind: "other", shape: { width: 1524, depth: 508 }, at: [11900, 11928], angle: 180, move: null },
      ],
      uses: ["ceremony", "dining", "dancing", "buffet", "plating", "drinks", "lounge"],
      posted: { rows: 240, tables: 176, standing: 300 },
    },
    {
      id: "loft", name: "Hay Loft", level: 1,
      outline: [[0, 3658], [4572, 3658], [4572, 12192], [0, 12192]],
      doors: [{ id: "loft-landing", from: [0, 4000], to: [0, 5067], leads: "outside", exit: true, for: ["guests"], swing: "out", steps: 16 }],
      windows: [{ from: [1524, 12192], to: [3048, 12192], sill: 762 }],
      sockets: [[4572, 7925]],
      walls: [{ from: [0, 6096], to: [0, 11582], is: "plain" }],
      uses: ["lounge"],
      posted: { standing: 40, tables: 24, rows: 36 },
    },
    {
      id: "porch", name: "South Porch", level: 0, outdoor: true,
      outline: [[5182, 12497], [14326, 12497], [14326, 16764], [5182, 16764]],
      doors: [
        { id: "porch-hall", from: [8534, 12497], to: [10973, 12497], leads: "threshing-hall", exit: false, for: ["guests"], swing: "in" },
        { id: "porch-ramp", from: [14326, 13716], to: [14326, 15545], leads: "outside", exit: true, for: ["guests"], swing: "none" },
      ],
      uses: ["ceremony", "drinks"],
      posted: { rows: 60, standing: 75 },
    },
  ],
  stock: [
    { id: "round-5ft", name: "60 in round", kind: "table", shape: { diameter: 1524 }, height: 762, count: 14, seats: { comfort: 8, most: 10 } },
    { id: "farm-8ft", name: "8 ft farm table", kind: "table", shape: { width: 2438, depth: 1016 }, height: 762, count: 8, seats: { comfort: 8, most: 10 }, ends: true, joins: true },
    { id: "banquet-6ft", name: "6 ft table", kind: "table", shape: { width: 1829, depth: 762 }, height: 762, count: 12, seats: { comfort: 6, most: 8 }, ends: true, joins: true },
    { id: "sweetheart", name: "4 ft table", kind: "table", shape: { width: 1219, depth: 762 }, height: 762, count: 2, seats: { comfort: 2, most: 4 } },
    { id: "display-4ft", name: "Narrow table", kind: "table", shape: { width: 1219, depth: 457 }, height: 762, count: 5 },
    { id: "high-top", name: "High table", kind: "cocktail-table", shape: { diameter: 762 }, height: 1067, count: 10 },
    { id: "folding-chair", name: "Folding chair", kind: "chair", shape: { width: 450, depth: 500 }, count: 220 },
    { id: "bar-8ft", name: "8 ft bar", kind: "bar", shape: { width: 2438, depth: 762 }, height: 1067, count: 2 },
    { id: "floor-panel", name: "4 ft dance panel", kind: "dance-panel", shape: { width: 1219, depth: 1219 }, count: 30 },
    { id: "deck", name: "Stage deck", kind: "stage", shape: { width: 2438, depth: 1219 }, height: 305, count: 6 },
  ],
  packages: [
    { id: "barn-only", name: "Barn only", coordinator: false, rooms: ["threshing-hall", "porch"], turnover: true, dueDays: 35, hours: { from: "10:00", to: "23:00" } },
    { id: "full-service", name: "Full service", coordinator: true, rooms: ["threshing-hall", "loft", "porch"], turnover: true, dueDays: 21, included: ["turnover", "high-top"], finalNumbersDays: 7 },
  ],
  charges: [
    { id: "heavy-piece", name: "Moving a heavy piece", per: "piece", amount: 6500, taxed: true },
    { id: "turnover", name: "Turning the hall over", per: "event", amount: 35000, taxed: true, when: ["turnover"] },
    { id: "farm-table", name: "Farm tables", per: "unit", of: "farm-8ft", amount: 2500, taxed: true, when: ["always"] },
    { id: "high-top", name: "High tables", per: "unit", of: "high-top", amount: 850, taxed: true, when: ["cocktail-tables"] },
    { id: "linen", name: "Linen", per: "table", amount: 1475, taxed: true, when: ["always"] },
    { id: "place-setting", name: "Place setting", per: "guest", amount: 325, taxed: true, when: ["always"] },
    { id: "second-bar", name: "Second bar", per: "event", amount: 22500, taxed: true, when: ["second-bar"] },
    { id: "late-answer", name: "Layout after its due date", per: "event", amount: 7500, taxed: false, when: ["late"] },
    { id: "sound-check", name: "Sound check for a band", per: "hour", amount: 5500, taxed: true },
  ],
  tax: { name: "Sales tax", basisPoints: 825, of: "total", included: false },
  rules: {
    profile: "model-code",
    comfort: { tableGap: 1524, wallGap: 1067, rowPitch: 965 },
    most: { tableGap: 1372, wallGap: 762, rowPitch: 864 },
  },
  crew: { size: 5, minutes: { table: 3, chair: 0.4, panel: 2, heavy: 8, cover: 0.5, cloth: 1 } },
  store: "prep-door",
  contact: { name: "Larkspur Barn desk", email: "desk@larkspur.example", phone: "+1 555 0147" },
};
