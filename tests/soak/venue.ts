import { turn, type Point } from "../../lib/geometry";
import { parseVenue, type Venue, type VenueFile } from "../../lib/venue";
import { diceOf, type Dice } from "./dice";

type Frame = (p: Point) => [number, number];
type RoomFile = VenueFile["rooms"][number];
type Box = { readonly x: number; readonly w: number; readonly h: number };

const USES = ["ceremony", "dining", "dancing", "buffet", "plating", "drinks", "lounge"] as const;

/** A room's outline within its box; its left and right walls stay straight between a quarter and three quarters of the height. */
function outlineOf(d: Dice, { x, w, h }: Box): Point[] {
  const a = Math.round(w * (0.15 + 0.2 * d.next())), b = Math.round(h * (0.1 + 0.14 * d.next()));
  switch (d.pick(["box", "box", "box", "l", "t", "slant", "octagon"])) {
    case "l": return [[x, 0], [x + w - a, 0], [x + w - a, b], [x + w, b], [x + w, h], [x, h]];
    case "t": return [[x, b], [x + a, b], [x + a, 0], [x + w - a, 0], [x + w - a, b], [x + w, b], [x + w, h], [x, h]];
    case "slant": return [[x, 0], [x + w, b], [x + w, h], [x, h]];
    case "octagon": return [[x + a, 0], [x + w - a, 0], [x + w, b], [x + w, h - b], [x + w - a, h], [x + a, h], [x, h - b], [x, b]];
    default: return [[x, 0], [x + w, 0], [x + w, h], [x, h]];
  }
}

const square = (at: Point, w: number, h: number): Point[] => [[at[0] - w / 2, at[1] - h / 2], [at[0] + w / 2, at[1] - h / 2], [at[0] + w / 2, at[1] + h / 2], [at[0] - w / 2, at[1] + h / 2]];

/** Doors in the long walls of an outline, level with the page: those are whole in every shape. */
function outerDoors(d: Dice, { id, outline, at, most }: { readonly id: string; readonly outline: readonly Point[]; readonly at: Frame; readonly most: boolean }): RoomFile["doors"] {
  const walls = outline.map((p, i) => [p, outline[(i + 1) % outline.length] ?? p] as const).filter(([p, q]) => p[1] === q[1] && Math.abs(p[0] - q[0]) > 2600);
  return Array.from({ length: most ? d.whole(2, 4) : d.pick([0, 1, 1, 2, 2, 3]) }, (_, k) => {
    const [p, q] = d.pick(walls.length > 0 ? walls : [[outline[0] ?? [0, 0], outline[1] ?? [0, 0]] as const]);
    const width = most ? d.pick([850, 900, 1200, 1800]) : d.pick([760, 800, 850, 900, 1000, 1200, 1600, 2000]);
    const length = Math.abs(q[0] - p[0]), s = Math.sign(q[0] - p[0]);
    const from = 100 + Math.floor(d.next() * Math.max(1, length - width - 200));
    const leads = k < 2 && (most || d.chance(0.6)) ? "outside" : d.pick(["outside", "outside", "back-of-house", "toilets"]);
    return {
      id: `${id}-d${k + 1}`, from: at([p[0] + s * from, p[1]]), to: at([p[0] + s * (from + width), p[1]]), leads, exit: leads === "outside" && (most || d.chance(0.9)),
      for: most || d.chance(0.85) ? ["guests" as const] : ["service" as const], swing: d.pick(["in", "out", "both", "none"] as const), ...(!most && d.chance(0.15) ? { steps: d.whole(1, 5) } : {}),
    };
  });
}

const STANDING = [["settle", "lounge", 1800, 800], ["chest", "table", 1400, 600], ["stool", "chair", 450, 450], ["screen", "screen", 1600, 300], ["plinth", "other", 700, 700]] as const;

function furnish(d: Dice, id: string, box: Box, at: Frame, angle: number): Pick<RoomFile, "obstacles" | "keepClear" | "standing" | "sockets"> {
  const spot = (): Point => [box.x + Math.round(box.w * (0.12 + 0.76 * d.next())), Math.round(box.h * (0.28 + 0.44 * d.next()))];
  const columns = d.pick([0, 0, 0, 1, 2, 4]), size = d.whole(150, 600);
  return {
    obstacles: Array.from({ length: columns }, (_, k) => ({
      id: `${id}-column-${k + 1}`, kind: "column" as const, outline: square(columns === 4 ? [box.x + box.w * (k % 2 === 0 ? 0.3 : 0.7), box.h * (k < 2 ? 0.3 : 0.7)] : spot(), size, size).map(at),
      ...(d.chance(0.3) ? { height: d.whole(700, 3000) } : {}),
    })),
    keepClear: d.chance(0.15) ? [{ id: `${id}-hatch`, outline: square(spot(), d.whole(400, 1500), d.whole(400, 1500)).map(at), why: "Floor hatch" }] : [],
    standing: Array.from({ length: d.pick([0, 0, 1, 2, 3]) }, (_, k) => {
      const [name, kind, width, depth] = d.pick(STANDING);
      return { id: `${id}-${name}-${k + 1}`, name: `Old ${name}`, kind, shape: { width, depth }, at: at(spot()), angle, move: d.pick([null, "heavy-piece", "light-piece", "light-piece"]) };
    }),
    sockets: d.some([at([box.x + 60, Math.round(box.h / 2)]), at([box.x + box.w - 60, Math.round(box.h / 2)])], 0.6),
  };
}

type Joined = { readonly openings: readonly (readonly [number, number])[] };

/** Rooms side by side, a door or an opening from each to the next, the whole turned as one. */
function roomsOf(d: Dice, plain: boolean, kind: boolean): Joined & { readonly rooms: RoomFile[]; readonly boxes: readonly Box[]; readonly at: Frame } {
  const n = d.pick([1, 1, 2, 2, 3, 4]), gap = d.pick([0, 150, 300]);
  const angle = plain ? 0 : d.pick([0, 0, 0, 90, 17, 45, d.whole(1, 359)]);
  const origin: Point = [d.whole(-5000, 20_000), d.whole(-5000, 20_000)];
  const at: Frame = (p) => { const q = turn(p, angle); return [Math.round(q[0] + origin[0]), Math.round(q[1] + origin[1])]; };
  const boxes: Box[] = [];
  let x = 0;
  for (let i = 0; i < n; i++) {
    const big = i === 0 || d.chance(0.35);
    const box = { x, w: big ? d.whole(7000, 19_000) : d.whole(3500, 8000), h: big ? d.whole(6000, 13_000) : d.whole(3500, 8000) };
    boxes.push(box);
    x += box.w + (angle % 90 === 0 ? gap : gap + 50);
  }
  const rooms = boxes.map((box, i): RoomFile => {
    const id = `room-${i + 1}`, outline = outlineOf(d, box);
    return {
      id, name: `Room ${i + 1}`, outline: outline.map(at), doors: [...(outerDoors(d, { id, outline, at, most: kind && i === 0 }) ?? [])],
      ...furnish(d, id, box, at, angle % 360),
      uses: i === 0 ? [...new Set([...d.some(USES, kind ? 0.95 : 0.8), ...(d.chance(0.96) ? ["dining" as const] : [])])] : d.some(USES, 0.6),
      ...(d.chance(0.35) ? { posted: { ...(d.chance(0.8) ? { rows: d.whole(30, 220) } : {}), ...(d.chance(0.8) ? { tables: d.whole(30, 180) } : {}), ...(d.chance(0.6) ? { standing: d.whole(30, 260) } : {}) } } : {}),
      ...(d.chance(0.07) ? { outdoor: true } : {}),
      walls: d.chance(0.5) ? [{ from: at([box.x, Math.round(box.h * 0.3)]), to: at([box.x, Math.round(box.h * 0.7)]), is: d.pick(["plain", "feature", "mirror"] as const) }] : [],
    };
  });
  const openings: (readonly [number, number])[] = [];
  for (let i = 0; i + 1 < n; i++) {
    const [a, b] = [boxes[i], boxes[i + 1]], [p, q] = [rooms[i], rooms[i + 1]];
    if (!a || !b || !p || !q || d.chance(0.08)) continue;
    const low = Math.max(a.h, b.h) * 0.25, high = Math.min(a.h, b.h) * 0.75;
    if (high - low < 800) continue;
    const width = Math.min(Math.floor(high - low), d.pick([800, 900, 1200, 1800, 2600])), y = Math.ceil(low) + Math.floor(d.next() * (high - low - width));
    const swing = width > 1700 || d.chance(0.3) ? ("none" as const) : d.pick(["in", "out"] as const);
    const both = { for: ["guests" as const, "service" as const], exit: d.chance(0.15), swing };
    p.doors = [...p.doors, { id: `way-${i + 1}a`, from: at([a.x + a.w, y]), to: at([a.x + a.w, y + width]), leads: q.id, ...both }];
    q.doors = [...q.doors, { id: `way-${i + 1}b`, from: at([b.x, y]), to: at([b.x, y + width]), leads: p.id, ...both }];
    if (swing === "none") openings.push([i, y]);
  }
  return { rooms, boxes, at, openings };
}

/** `kind`: a house that owns enough for a usual day; else whatever chance gives. */
function stockOf(d: Dice, kind: boolean): VenueFile["stock"] {
  const comfort = d.whole(5, 9), round = d.pick([1219, 1524, 1676, 1829]);
  const long = d.pick([1524, 1829, 2438]), depth = d.pick([610, 762, 914]), six = Math.floor(long / 610) * 2;
  return [
    ...(d.chance(kind ? 1 : 0.8) ? [{ id: "round", name: "Round", kind: "table" as const, shape: { diameter: round }, count: d.chance(kind ? 0 : 0.4) ? d.whole(0, 3) : d.whole(6, 16), seats: { comfort: Math.min(comfort, Math.floor(round / 200)), most: Math.min(comfort + d.whole(0, 2), Math.floor(round / 180)) } }] : []),
    ...(d.chance(kind ? 1 : 0.8) ? [{ id: "long", name: "Long table", kind: "table" as const, shape: { width: long, depth }, count: d.chance(kind ? 0 : 0.4) ? d.whole(0, 4) : d.whole(8, 20), seats: { comfort: six, most: six + d.pick([0, 2]) }, ends: d.chance(0.5), joins: d.chance(0.7) }] : []),
    ...(d.chance(0.6) ? [{ id: "small", name: "Small table", kind: "table" as const, shape: { width: 1220, depth: 610 }, count: d.whole(1, 6) }] : []),
    ...(d.chance(0.3) ? [{ id: "pair", name: "Pair table", kind: "table" as const, shape: { width: 1220, depth: 762 }, count: 2, seats: { comfort: 2, most: 4 } }] : []),
    ...(d.chance(kind ? 1 : 0.9) ? [{ id: "chair", name: "Chair", kind: "chair" as const, shape: { width: d.pick([420, 450, 500]), depth: d.pick([450, 500, 550]) }, count: d.chance(kind ? 0 : 0.4) ? d.whole(10, 60) : d.whole(120, 260) }] : []),
    ...(d.chance(0.6) ? [{ id: "bar-unit", name: "Bar unit", kind: "bar" as const, shape: { width: d.pick([1800, 2400]), depth: 700 }, count: d.whole(1, 2) }] : []),
    ...(d.chance(0.6) ? [{ id: "panel", name: "Panel", kind: "dance-panel" as const, shape: { width: d.pick([900, 914, 1219]), depth: 914 }, count: d.whole(kind ? 24 : 6, 70) }] : []),
    ...(d.chance(0.4) ? [{ id: "high", name: "High table", kind: "cocktail-table" as const, shape: { diameter: 700 }, count: d.whole(1, 10) }] : []),
    ...(d.chance(0.2) ? [{ id: "sofa", name: "Sofa", kind: "lounge" as const, shape: { width: 1800, depth: 800 }, count: d.whole(1, 3) }] : []),
  ];
}

function made(d: Dice, plain: boolean): VenueFile {
  const kind = d.chance(0.75);
  const { rooms, boxes, at, openings } = roomsOf(d, plain, kind);
  const first = openings[0], box = first ? boxes[first[0] + 1] : undefined;
  const deep = d.whole(1200, 3200);
  const drape = !plain && first && box && d.chance(0.5) && box.w > deep + 1500
    ? [{ id: "drape", name: "The drape", grows: rooms[first[0]]?.id ?? "", from: rooms[first[0] + 1]?.id ?? "", charge: d.pick([null, "drape"]),
        area: [[box.x, box.h * 0.25], [box.x + deep, box.h * 0.25], [box.x + deep, box.h * 0.75], [box.x, box.h * 0.75]].map(([x, y]) => at([Math.round(x ?? 0), Math.round(y ?? 0)])) }] : [];
  const ids = rooms.map((r) => r.id);
  return {
    format: "marquetry.venue/1", id: "soaked", name: "A house", locale: d.pick(["en-GB", "en-US", "de-DE"]), currency: d.pick(["GBP", "USD", "JPY"]), timeZone: "Europe/London", lengths: d.pick(["metric", "imperial"]),
    rooms, drapes: drape, stock: stockOf(d, kind),
    packages: [{ id: "all", name: "All of it", coordinator: d.chance(0.5), rooms: d.chance(0.9) ? ids : ids.slice(0, 1), turnover: d.chance(0.75), dueDays: 30, included: d.some(["light-piece"], 0.3) }],
    charges: [{ id: "heavy-piece", name: "Heavy piece", per: "piece", amount: 4500, taxed: true }, { id: "light-piece", name: "Light piece", per: "piece", amount: 1500, taxed: true }, { id: "drape", name: "Drape", per: "event", amount: 9000, taxed: true }],
    tax: { name: "VAT", basisPoints: d.pick([0, 825, 2000]), of: d.pick(["line", "total"] as const), included: d.chance(0.5) },
    rules: { profile: d.pick(["model-code", "uk-guide", "house"] as const), ...(d.chance(0.2) ? { comfort: { tableGap: 1800 } } : {}), ...(d.chance(0.15) ? { most: { tableGap: 1372, wallGap: 800 } } : {}) },
  };
}

/** A venue from a seed; where chance drew one whose facts contradict each other, a plainer one of the same seed. */
export function venueFrom(seed: number): Venue {
  for (let k = 0; k < 12; k++) {
    const read = parseVenue(JSON.stringify(made(diceOf(seed * 16 + k), k > 5)));
    if (read.ok) return read.value;
  }
  throw new Error(`no venue for seed ${seed}`);
}
