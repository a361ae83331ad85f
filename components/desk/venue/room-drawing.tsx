import { add, boxOf, distance, edges, scale, sub, unit, type Point, type Polygon, type Segment } from "@/lib/geometry";
import { footprintPolygon } from "@/lib/layout";
import { gateOf, socketAt, type Room, type Venue } from "@/lib/venue";
import { saidLength, wallName } from "@/lib/venue/edit";

type Props = { readonly room: Room; readonly venue: Pick<Venue, "lengths" | "locale">; /** Its corners can be drawn; its place among the outlines under the hand. */ readonly grips?: number; /** Without letters and lengths, where it is drawn small. */ readonly bare?: boolean };

const WALL = 300;
const sound = (p: Polygon): boolean => p.every(([x, y]) => Number.isFinite(x) && Number.isFinite(y));
export const pathOf = (p: Polygon, closed = true): string => p.map(([x, y], i) => `${i === 0 ? "M" : "L"}${Math.round(x)} ${Math.round(y)}`).join("") + (closed ? "Z" : "");

/** The box that a room is drawn in, mm: its outline, its wall, and room for letters and lengths about it. */
export function frameOf(outline: Polygon): { readonly x: number; readonly y: number; readonly width: number; readonly height: number; readonly unit: number } {
  const b = boxOf(outline), size = Math.max(b.maxX - b.minX, b.maxY - b.minY), pad = WALL + size * 0.11;
  return { x: b.minX - pad, y: b.minY - pad, width: b.maxX - b.minX + 2 * pad, height: b.maxY - b.minY + 2 * pad, unit: size / 600 };
}

/** Outward from a wall of the outline, whichever way the outline runs. */
function outward(outline: Polygon, [a, b]: Segment): Point {
  const along = unit(sub(b, a)), left: Point = [along[1], -along[0]];
  const area = outline.reduce((s, p, i) => { const q = outline[(i + 1) % outline.length] ?? p; return s + p[0] * q[1] - q[0] * p[1]; }, 0);
  return area > 0 ? left : scale(left, -1);
}

/** One room as its facts say, drawn while they are typed: walls with their letters and lengths, openings, and what stands. */
export function RoomDrawing({ room, venue, grips, bare = false }: Props) {
  const { outline } = room;
  if (outline.length < 3 || !sound(outline)) return <p className="small sec">The outline cannot be drawn yet.</p>;
  const f = frameOf(outline), u = f.unit;
  const walls = edges(outline);
  return (
    <svg className="room-drawing" viewBox={`${f.x} ${f.y} ${f.width} ${f.height}`} data-plan={grips} role={grips === undefined ? "img" : "group"} aria-label={`Plan of ${room.name}, walls ${walls.map((w, i) => `${wallName(i)} ${saidLength(distance(w[0], w[1]), venue)}`).join(", ")}`}>
      <path className="rd-mass" d={pathOf(outline)} strokeWidth={2 * WALL} />
      <path className="rd-floor" d={pathOf(outline)} strokeWidth={1} />
      {room.keepClear.filter((k) => sound(k.outline)).map((k) => <path key={k.id} className="rd-clear" d={pathOf(k.outline)} strokeWidth={1.2 * u} strokeDasharray={`${6 * u} ${4 * u}`} />)}
      {room.windows.filter((w) => sound([w.from, w.to])).map((w, i) => <Band key={i} outline={outline} from={w.from} to={w.to} className="rd-pane" weight={u} />)}
      {room.walls.filter((w) => sound([w.from, w.to])).map((w, i) => <path key={i} className="rd-wall" d={pathOf([w.from, w.to], false)} strokeWidth={5 * u} strokeDasharray={w.is === "feature" ? undefined : `${3 * u} ${3 * u}`} />)}
      {room.doors.filter((o) => sound([o.from, o.to])).map((door) => <DoorMark key={door.id} room={room} door={door} weight={u} />)}
      {room.standing.filter((s) => sound([s.at]) && ("diameter" in s.shape ? Number.isFinite(s.shape.diameter) : Number.isFinite(s.shape.width + s.shape.depth)) && Number.isFinite(s.angle)).map((s) => <path key={s.id} className="rd-piece" strokeWidth={1.4 * u} d={pathOf(footprintPolygon({ id: s.id, kind: "other", label: "", room: room.id, from: { brought: true }, seats: [], shape: s.shape, at: s.at, angle: s.angle }))}><title>{s.name}</title></path>)}
      {room.obstacles.filter((o) => sound(o.outline) && o.outline.length > 2).map((o) => <path key={o.id} className="rd-built" d={pathOf(o.outline)} strokeWidth={u} />)}
      {room.sockets.map(socketAt).filter((s) => sound([s])).map((s, i) => <circle key={i} className="rd-socket" cx={s[0]} cy={s[1]} r={4 * u} strokeWidth={1.4 * u} />)}
      {!bare && walls.map((w, i) => <WallWords key={i} outline={outline} wall={w} doors={room.doors} name={wallName(i)} length={saidLength(distance(w[0], w[1]), venue)} unit={u} />)}
      {grips !== undefined && <CornerGrips outline={outline} room={grips} name={room.name} venue={venue} unit={u} />}
    </svg>
  );
}

type GripsProps = { readonly outline: Polygon; readonly room: number; readonly name: string; readonly venue: Pick<Venue, "lengths" | "locale">; readonly unit: number };

/** What corners are held by: one on each, and a smaller one in the middle of each wall that makes a corner there. */
export function CornerGrips({ outline, room, name, venue, unit: u }: GripsProps) {
  const from = boxOf(outline);
  return (
    <g>
      {edges(outline).map(([a, b], i) => distance(a, b) > 60 * u && <circle key={`w${i}`} className="rd-grip rd-grip-new" data-room={room} data-wall={i} cx={(a[0] + b[0]) / 2} cy={(a[1] + b[1]) / 2} r={6 * u} strokeWidth={1.6 * u} tabIndex={0} role="button" aria-label={`A corner more in wall ${wallName(i)} of ${name}`} />)}
      {outline.map(([x, y], i) => <circle key={i} className="rd-grip" data-room={room} data-corner={i} cx={x} cy={y} r={9 * u} strokeWidth={2.4 * u} tabIndex={0} role="button" aria-label={`Corner ${i + 1} of ${name}: ${saidLength(x - from.minX, venue)} right, ${saidLength(y - from.minY, venue)} down. Arrow keys move it, Delete takes it away.`} />)}
    </g>
  );
}

/** Where on a wall its words stand: its middle, or the nearest spot to it that no door of it needs. */
function freeSpot([a, b]: Segment, doors: Room["doors"], need: number): Point {
  const along = unit(sub(b, a)), size = distance(a, b);
  const place = (p: Point): number => (p[0] - a[0]) * along[0] + (p[1] - a[1]) * along[1];
  const off = (p: Point): number => Math.abs((p[0] - a[0]) * along[1] - (p[1] - a[1]) * along[0]);
  const taken = doors.filter((o) => sound([o.from, o.to]) && off(o.from) < 5 && off(o.to) < 5).map((o) => [Math.min(place(o.from), place(o.to)), Math.max(place(o.from), place(o.to))] as const);
  const free = [0.5, 0.4, 0.6, 0.3, 0.7, 0.2, 0.8, 0.12, 0.88].find((t) => taken.every(([s, e]) => t * size + need < s || t * size - need > e));
  return add(a, scale(along, (free ?? 0.5) * size));
}

function WallWords({ outline, wall, doors, name, length, unit: u }: { readonly outline: Polygon; readonly doors: Room["doors"]; readonly wall: Segment; readonly name: string; readonly length: string; readonly unit: number }) {
  const out = outward(outline, wall), at = add(freeSpot(wall, doors, 75 * u), scale(out, WALL + 24 * u));
  const upright = Math.abs(out[0]) > Math.abs(out[1]);
  return (
    <g className="rd-words" transform={`translate(${at[0]} ${at[1]})${upright ? " rotate(-90)" : ""}`} textAnchor="middle" fontSize={22 * u}>
      <text y={6 * u}><tspan className="rd-letter" fontSize={27 * u}>{name}</tspan><tspan dx={10 * u}>{length}</tspan></text>
    </g>
  );
}

function Band({ outline, from, to, className, weight }: { readonly outline: Polygon; readonly from: Point; readonly to: Point; readonly className: string; readonly weight: number }) {
  const wall = edges(outline).find((e) => distance(e[0], from) + distance(from, e[1]) - distance(e[0], e[1]) < 5 && distance(e[0], to) + distance(to, e[1]) - distance(e[0], e[1]) < 5);
  const out = wall ? scale(outward(outline, wall), WALL) : ([0, 0] as const);
  return <path className={className} d={pathOf([from, to, add(to, out), add(from, out)])} strokeWidth={weight} />;
}

/** An opening through the wall; a leaf with its swing where it has one; an arrow where it is a way out. */
function DoorMark({ room, door, weight: u }: { readonly room: Room; readonly door: Room["doors"][number]; readonly weight: number }) {
  const gate = gateOf(room, door);
  if (!gate) return null;
  const { from, to, inward, width } = gate;
  const leaf = (hinge: Point, other: Point, size: number, side: Point): string => {
    const tip = add(hinge, scale(side, size)), end = add(hinge, scale(unit(sub(other, hinge)), size));
    return `M${hinge[0]} ${hinge[1]}L${tip[0]} ${tip[1]}A${size} ${size} 0 0 ${turns(sub(tip, hinge), sub(end, hinge)) ? 1 : 0} ${end[0]} ${end[1]}`;
  };
  const side = door.swing === "in" ? inward : scale(inward, -1);
  const base = door.swing === "in" ? [from, to] as const : [add(from, scale(inward, -WALL)), add(to, scale(inward, -WALL))] as const;
  const leaves = door.swing === "none" ? [] : width > 1200 ? [leaf(base[0], base[1], width / 2, side), leaf(base[1], base[0], width / 2, side)] : [leaf(base[0], base[1], width, side)];
  const tip = add(gate.at, scale(inward, -WALL - 22 * u));
  return (
    <g>
      <Band outline={room.outline} from={from} to={to} className="rd-open" weight={u} />
      {leaves.map((l, i) => <path key={i} className="rd-leaf" d={l} strokeWidth={1.6 * u} />)}
      {door.exit && <path className="rd-out" d={pathOf([add(gate.at, scale(inward, 10 * u)), tip], false)} strokeWidth={3 * u} />}
      {door.exit && <path className="rd-tip" d={pathOf([add(tip, scale(inward, -12 * u)), add(tip, [inward[1] * 7 * u, -inward[0] * 7 * u]), add(tip, [-inward[1] * 7 * u, inward[0] * 7 * u])])} />}
    </g>
  );
}
const turns = (a: Point, b: Point): boolean => a[0] * b[1] - a[1] * b[0] > 0;
