import type { VenueFile } from "../venue";

/** Across the flats of an iron column with its base ring, mm. */
const COLUMN = 220;

const column = (id: string, x: number, y: number): NonNullable<VenueFile["rooms"][number]["obstacles"]>[number] => {
  const near = Math.round((COLUMN / 2) * 0.4142), far = COLUMN / 2;
  return {
    id, kind: "column",
    outline: [
      [x - near, y - far], [x + near, y - far], [x + far, y - near], [x + far, y + near],
      [x + near, y + far], [x - near, y + far], [x - far, y + near], [x - far, y - near],
    ],
  };
};

/**
 * Tidewheel Mill, an invented tide mill on an invented estuary. One frame for all five rooms, the north-west corner of the
 * Grain Floor at [0, 0]; walls of 400, 500 and 540 mm stand between them.
 */
export const tidewheel: VenueFile = {
  format: "marquetry.venue/1",
  id: "tidewheel-mill", name: "Tidewheel Mill", locale: "en-GB", currency: "GBP", timeZone: "Europe/London", lengths: "metric", north: 330,
  rooms: [
    {
      id: "grain-floor", name: "Grain Floor", level: 0,
      outline: [[0, 0], [16200, 0], [16200, 9400], [0, 9400]],
      obstacles: [column("column-1", 3550, 3133), column("column-2", 12650, 3133), column("column-3", 3550, 6267), column("column-4", 12650, 6267)],
      doors: [
        { id: "grain-arch", from: [16200, 3200], to: [16200, 6200], leads: "wheel-room", exit: false, for: ["guests", "service"], swing: "none" },
        { id: "grain-passage", from: [7200, 9400], to: [9000, 9400], leads: "lade-passage", exit: false, for: ["guests", "service"], swing: "none" },
        { id: "grain-terrace", from: [13490, 9400], to: [14990, 9400], leads: "sluice-terrace", exit: false, for: ["guests"], swing: "out" },
        { id: "grain-parlour", from: [2850, 9400], to: [4250, 9400], leads: "millers-parlour", exit: false, for: ["guests", "service"], swing: "out" },
      ],
      windows: [
        { from: [1160, 0], to: [2760, 0], sill: 900 }, { from: [4340, 0], to: [5940, 0], sill: 900 },
        { from: [10260, 0], to: [11860, 0], sill: 900 }, { from: [13440, 0], to: [15040, 0], sill: 900 },
        { from: [10260, 9400], to: [11860, 9400], sill: 900 },
      ],
      sockets: [
        { at: [0, 3300], circuit: "G1", amps: 13 }, { at: [0, 6100], circuit: "G1", amps: 13 }, { at: [3550, 0], circuit: "G2", amps: 13 },
        { at: [12650, 0], circuit: "G2", amps: 13 }, { at: [16200, 2600], circuit: "G3", amps: 16 },
      ],
      walls: [
        { from: [0, 3000], to: [0, 6400], is: "feature" }, { from: [6900, 0], to: [9300, 0], is: "feature" },
        { from: [16200, 200], to: [16200, 3000], is: "plain" }, { from: [300, 9400], to: [2600, 9400], is: "plain" },
      ],
      standing: [
        { id: "oak-settle", name: "Oak settle", kind: "lounge", shape: { width: 1800, depth: 780 }, at: [15790, 7800], angle: 90, move: "heavy-piece" },
        { id: "flour-chest", name: "Flour chest", kind: "table", shape: { width: 1400, depth: 660 }, at: [350, 4700], angle: 270, move: "heavy-piece" },
      ],
      uses: ["ceremony", "dining", "dancing"],
      posted: { rows: 140, tables: 120, standing: 180 },
    },
    {
      id: "wheel-room", name: "Wheel Room", level: 0,
      outline: [[16600, 1600], [24000, 1600], [24000, 7800], [16600, 7800]],
      doors: [
        { id: "wheel-arch", from: [16600, 3200], to: [16600, 6200], leads: "grain-floor", exit: false, for: ["guests", "service"], swing: "none" },
        { id: "wheel-yard", from: [21800, 1600], to: [22900, 1600], leads: "outside", exit: true, for: ["guests"], swing: "out" },
      ],
      windows: [{ from: [19300, 1600], to: [21300, 1600], sill: 1000 }, { from: [19500, 7800], to: [21500, 7800], sill: 1000 }],
      sockets: [
        { at: [24000, 3300], circuit: "W1", amps: 16 }, { at: [24000, 5000], circuit: "W1", amps: 16 }, { at: [18900, 1600], circuit: "W2", amps: 13 },
      ],
      walls: [{ from: [24000, 1800], to: [24000, 6800], is: "plain" }],
      standing: [
        { id: "mill-gear", name: "Mill gear on its plinth", kind: "other", shape: { diameter: 760 }, at: [23480, 7330], angle: 0, move: null },
        { id: "wing-chair-1", name: "Wing chair", kind: "lounge", shape: { width: 720, depth: 700 }, at: [17160, 2160], angle: 315, move: "light-piece" },
        { id: "stool-1", name: "Stool", kind: "lounge", shape: { width: 420, depth: 420 }, at: [17890, 1840], angle: 0, move: "light-piece" },
        { id: "stool-2", name: "Stool", kind: "lounge", shape: { width: 420, depth: 420 }, at: [16840, 2890], angle: 0, move: "light-piece" },
        { id: "stool-3", name: "Stool", kind: "lounge", shape: { width: 420, depth: 420 }, at: [23760, 1840], angle: 0, move: "light-piece" },
        { id: "stool-4", name: "Stool", kind: "lounge", shape: { width: 420, depth: 420 }, at: [23240, 1840], angle: 0, move: "light-piece" },
      ],
      uses: ["dancing", "drinks", "lounge"],
      posted: { rows: 40, tables: 30, standing: 70 },
    },
    {
      id: "millers-parlour", name: "Miller’s Parlour", level: 0,
      outline: [[0, 9900], [6600, 9900], [6600, 15100], [0, 15100]],
      doors: [
        { id: "parlour-grain", from: [2850, 9900], to: [4250, 9900], leads: "grain-floor", exit: false, for: ["guests", "service"], swing: "in" },
        { id: "parlour-passage", from: [6600, 10500], to: [6600, 11600], leads: "lade-passage", exit: false, for: ["guests", "service"], swing: "in" },
        { id: "kitchen-door", from: [0, 12000], to: [0, 13000], leads: "back-of-house", exit: false, for: ["service"], swing: "in" },
      ],
      windows: [{ from: [1000, 15100], to: [2600, 15100], sill: 900 }, { from: [4000, 15100], to: [5600, 15100], sill: 900 }],
      sockets: [{ at: [0, 14300], circuit: "P1", amps: 13 }, { at: [5900, 15100], circuit: "P1", amps: 13 }],
      walls: [{ from: [6600, 11900], to: [6600, 14900], is: "plain" }],
      standing: [
        { id: "wing-chair-2", name: "Wing chair", kind: "lounge", shape: { width: 720, depth: 700 }, at: [560, 14540], angle: 225, move: "light-piece" },
        { id: "stool-5", name: "Stool", kind: "lounge", shape: { width: 420, depth: 420 }, at: [1300, 14860], angle: 0, move: "light-piece" },
        { id: "stool-6", name: "Stool", kind: "lounge", shape: { width: 420, depth: 420 }, at: [6360, 14860], angle: 0, move: "light-piece" },
      ],
      uses: ["buffet", "plating", "drinks", "lounge"],
      posted: { rows: 24, tables: 20, standing: 50 },
    },
    {
      id: "lade-passage", name: "Lade Passage", level: 0,
      outline: [[7000, 9900], [9200, 9900], [9200, 15100], [7000, 15100]],
      doors: [
        { id: "passage-grain", from: [7200, 9900], to: [9000, 9900], leads: "grain-floor", exit: false, for: ["guests", "service"], swing: "none" },
        { id: "passage-parlour", from: [7000, 10500], to: [7000, 11600], leads: "millers-parlour", exit: false, for: ["guests", "service"], swing: "out" },
        { id: "front-door", from: [7300, 15100], to: [8900, 15100], leads: "outside", exit: true, for: ["guests", "service"], swing: "out" },
      ],
      sockets: [{ at: [9200, 12500], circuit: "P1", amps: 13 }],
      walls: [{ from: [9200, 10100], to: [9200, 14900], is: "plain" }, { from: [7000, 11900], to: [7000, 14900], is: "plain" }],
      uses: [],
      posted: { standing: 16 },
    },
    {
      id: "sluice-terrace", name: "Sluice Terrace", level: 0, outdoor: true,
      outline: [[9740, 9900], [18740, 9900], [18740, 13900], [9740, 13900]],
      doors: [
        { id: "terrace-grain", from: [13490, 9900], to: [14990, 9900], leads: "grain-floor", exit: false, for: ["guests"], swing: "in" },
        { id: "terrace-steps", from: [13490, 13900], to: [14990, 13900], leads: "outside", exit: true, for: ["guests"], swing: "none", steps: 3 },
      ],
      uses: ["ceremony", "drinks"],
      posted: { rows: 40, standing: 54 },
    },
  ],
  drapes: [{
    id: "arch-drape", name: "Drape behind the arch", grows: "grain-floor", from: "wheel-room",
    area: [[16600, 1600], [18190, 1600], [18190, 7800], [16600, 7800]], charge: "drape",
    posted: { rows: 150, tables: 140, standing: 190 },
  }],
  stock: [
    { id: "round", name: "Round table", kind: "table", shape: { diameter: 1680 }, height: 740, count: 7, seats: { comfort: 8, most: 10 } },
    { id: "long", name: "Long table", kind: "table", shape: { width: 1830, depth: 760 }, height: 740, count: 16, seats: { comfort: 6, most: 8 }, ends: true, joins: true },
    { id: "oak", name: "Oak table", kind: "table", shape: { width: 2400, depth: 950 }, height: 760, count: 5, seats: { comfort: 8, most: 10 }, ends: true, joins: true },
    { id: "small", name: "Small table", kind: "table", shape: { width: 1220, depth: 760 }, height: 740, count: 1, seats: { comfort: 2, most: 4 } },
    { id: "narrow", name: "Narrow table", kind: "table", shape: { width: 1500, depth: 450 }, height: 740, count: 4 },
    { id: "high", name: "High table", kind: "cocktail-table", shape: { diameter: 600 }, height: 1100, count: 12 },
    { id: "chair", name: "Chair", kind: "chair", shape: { width: 450, depth: 500 }, height: 900, count: 150 },
    { id: "bar-unit", name: "Bar unit", kind: "bar", shape: { width: 2400, depth: 700 }, height: 1100, count: 2 },
    { id: "panel", name: "Dance panel", kind: "dance-panel", shape: { width: 900, depth: 900 }, count: 24 },
    { id: "willow-arch", name: "Willow arch", kind: "arch", shape: { width: 1800, depth: 600 }, height: 2300, count: 1 },
  ],
  packages: [
    {
      id: "dry-hire", name: "Dry hire", coordinator: false, rooms: ["grain-floor", "wheel-room", "lade-passage", "sluice-terrace"],
      turnover: false, dueDays: 42, hours: { from: "09:00", to: "23:30" }, finalNumbersDays: 14,
    },
    {
      id: "hosted-day", name: "Hosted day", coordinator: true,
      rooms: ["grain-floor", "wheel-room", "millers-parlour", "lade-passage", "sluice-terrace"],
      turnover: true, dueDays: 28, included: ["light-piece", "turnover"], hours: { from: "08:00", to: "23:59" }, finalNumbersDays: 10,
    },
    {
      id: "hosted-weekend", name: "Hosted weekend", coordinator: true,
      rooms: ["grain-floor", "wheel-room", "millers-parlour", "lade-passage", "sluice-terrace"],
      turnover: true, dueDays: 28, included: ["light-piece", "heavy-piece", "turnover", "drape"], hours: 48, finalNumbersDays: 10,
    },
  ],
  charges: [
    { id: "light-piece", name: "Moving a light piece", per: "piece", amount: 1200, taxed: true },
    { id: "heavy-piece", name: "Moving a heavy piece", per: "piece", amount: 4500, taxed: true },
    { id: "drape", name: "Drawing the drape behind the arch", per: "event", amount: 9500, taxed: true },
    { id: "turnover", name: "Crew for the turnover", per: "event", amount: 28000, taxed: true, when: ["turnover"] },
    { id: "oak-table", name: "Oak tables brought up", per: "unit", of: "oak", amount: 1500, taxed: true, when: ["always"] },
    { id: "dance-panel", name: "Dance panels laid", per: "unit", of: "panel", amount: 400, taxed: true, when: ["always"] },
    { id: "second-bar", name: "Second bar, staffed", per: "event", amount: 18000, taxed: true, when: ["second-bar"] },
    { id: "band-power", name: "Power for a band", per: "event", amount: 7500, taxed: true, when: ["band"] },
    { id: "late-answer", name: "Layout after its due date", per: "event", amount: 6000, taxed: true, when: ["late"] },
    { id: "coordinator-hour", name: "A coordinator by the hour", per: "hour", amount: 3800, taxed: true },
  ],
  tax: { name: "VAT", basisPoints: 2000, of: "line", included: true },
  rules: {
    profile: "model-code",
    comfort: { tableGap: 1500, wallGap: 1000, rowPitch: 950 },
    most: { tableGap: 1372, wallGap: 790, rowPitch: 850 },
  },
  crew: { size: 4, minutes: { table: 3, chair: 0.4, panel: 1.5, heavy: 6, cover: 0.4, cloth: 1 } },
  store: "kitchen-door",
  places: {
    cake: [{ at: [350, 4700], room: "grain-floor" }, { wall: "feature", room: "grain-floor" }],
    welcome: [{ wall: "plain", room: "lade-passage" }],
  },
  contact: {
    name: "The desk at Tidewheel Mill", email: "desk@tidewheel.example", phone: "+44 1632 960 147",
    text: "The desk is open from Tuesday to Saturday, ten until five.",
  },
  texts: {
    arrival: "Guests come in by the Lade Passage. The yard gate opens an hour before the first part of the day.",
    wet: "When it rains the terrace is shut, and everything is held under the roof.",
  },
};
