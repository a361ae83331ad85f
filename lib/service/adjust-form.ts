import { fail, ok, type Result } from "../base";
import { SCENES } from "../layout/schema";
import { editSchema, frameOf, isWall, outOfFrame, pieceOf, roomNow, runOf, spotByWalls, type Edit, type FromWall, type SceneId, type Work } from "../hand";
import type { Item } from "../layout";
import { parseLength } from "../measure";
import type { Room, Venue } from "../venue";
import { handVoiceOf, type HandPhrase } from "../words/hand";
import { faultWords } from "./adjust-words";
import type { FieldError, FormValues } from "./types";

type Read<T> = Result<T, readonly FieldError[]>;
const wrong = (field: string, message: HandPhrase): { readonly ok: false; readonly error: readonly FieldError[] } => fail([{ field, message }]);
const text = (v: FormValues, name: string): string => { const one = v[name]; return (typeof one === "string" ? one : (one?.[0] ?? "")).trim(); };
const isScene = (t: string): t is SceneId => SCENES.some((s) => s === t);

/** A deed as a plain form tells it: which piece, which act, walls and lengths as they were typed; or, from a script, as it is. What is amiss is said in the language of the venue's locale, which is the reader's. */
export function readEdit(venue: Venue, work: Work, values: FormValues): Read<Edit> {
  const read = readAs(venue, work, values), say = handVoiceOf(venue.locale);
  return read.ok ? read : fail(read.error.map((one) => ({ ...one, message: say.given(one.message) })));
}

function readAs(venue: Venue, work: Work, values: FormValues): Read<Edit> {
  const whole = text(values, "edit");
  if (whole !== "") return readWhole(whole);
  const scene = text(values, "scene"), piece = text(values, "piece"), act = text(values, "act");
  if (!isScene(scene)) return wrong("piece", "Choose a part of the day.");
  if (act === "add") return readAdd(values, scene);
  const item = pieceOf(work.layout, scene, piece);
  if (!item) return wrong("piece", "Choose a piece from the list.");
  const on = { scene, piece, ...(text(values, "only") === "yes" ? { only: true } : {}) };
  const run = text(values, "run") === "yes", sceneNow = work.layout.scenes.find((s) => s.id === scene);
  const mates = run && sceneNow ? runOf(sceneNow, item).slice(1).map((i) => i.id) : [];
  const together = { ...on, ...(mates.length > 0 ? { run } : {}) };
  switch (act) {
    case "place": return readPlace(venue, { item, drapes: sceneNow?.drapes ?? [] }, values, together);
    case "turn": return readTurn(values, together);
    case "quarter": return ok({ do: "turn", ...together, angle: item.angle + 90 });
    case "quarter-back": return ok({ do: "turn", ...together, angle: item.angle - 90 });
    case "swap": return text(values, "with") === "" ? wrong("with", "Choose the piece that it changes places with.") : ok({ do: "swap", ...on, with: text(values, "with") });
    case "exchange": return text(values, "stock") === "" ? wrong("stock", "Choose what stands there instead.") : ok({ do: "exchange", ...on, stock: text(values, "stock") });
    case "lay": return /^\d{1,3}$/.test(text(values, "places")) ? ok({ do: "lay", ...on, places: Number(text(values, "places")) }) : wrong("places", "Places as a whole number, such as 8.");
    case "remove": return ok({ do: "remove", ...together });
    case "hold": return ok({ do: "hold", piece, on: true, with: mates });
    case "let-go": return ok({ do: "hold", piece, on: false, with: mates });
    case "note": return text(values, "note").length > 2_000 ? wrong("note", "2,000 characters at the most.") : ok({ do: "note", ...on, text: text(values, "note") });
    default: return wrong("piece", "Choose what to do with it.");
  }
}

function readWhole(json: string): Read<Edit> {
  let value: unknown;
  try { value = JSON.parse(json); } catch { return wrong("piece", "That could not be read."); }
  const read = editSchema.safeParse(value);
  return read.success ? ok(read.data) : wrong("piece", "That could not be read.");
}

type On = { readonly scene: SceneId; readonly piece: string; readonly only?: boolean; readonly run?: boolean };
const degrees = (t: string): number | null => { const n = Number(t.replace(",", ".").replace(/°$/, "").trim()); return t !== "" && Number.isFinite(n) && Math.abs(n) <= 3_600 ? n : null; };

function readTurn(values: FormValues, on: On): Read<Edit> {
  const to = degrees(text(values, "angle"));
  return to === null ? wrong("angle", "A turn in degrees, such as 90.") : ok({ do: "turn", ...on, angle: to });
}

type Standing = { readonly item: Item; readonly drapes: readonly string[] };
function readPlace(venue: Venue, { item, drapes }: Standing, values: FormValues, on: On): Read<Edit> {
  const room = venue.rooms.find((r) => r.id === (text(values, "room") || item.room));
  if (!room) return wrong("room", "Choose one of the rooms of this part of the day.");
  const walls = [1, 2].map((k) => readWall(venue, values, k));
  const bad = walls.flatMap((w) => (w && !w.ok ? w.error : []));
  if (bad.length > 0) return fail(bad);
  const named = walls.flatMap((w) => (w?.ok ? [w.value] : []));
  if (named.length === 0) return wrong("far1", "Type how far it stands from a wall.");
  const from = room.id === item.room ? item : { ...item, at: middleOf(room) };
  const spot = spotByWalls(roomNow(venue, drapes, room, from.at), from, named);
  return spot.ok ? ok({ do: "place", ...on, room: room.id, at: spot.value }) : fail([faultWords(spot.error, "far1", handVoiceOf(venue.locale))]);
}

const middleOf = (room: Room): Item["at"] => { const f = frameOf(room), b = f.box; const [x, y] = outOfFrame(f, [(b.minX + b.maxX) / 2, (b.minY + b.maxY) / 2]); return [Math.round(x), Math.round(y)]; };

/** One wall and its distance; null where its distance was left empty. */
function readWall(venue: Venue, values: FormValues, k: number): Read<FromWall> | null {
  const typed = text(values, `far${k}`), wall = text(values, `wall${k}`);
  if (typed === "") return null;
  if (!isWall(wall)) return wrong(`wall${k}`, "Choose a wall.");
  const read = parseLength(typed, { system: venue.lengths });
  return read.ok ? ok({ wall, mm: read.value }) : wrong(`far${k}`, venue.lengths === "metric" ? "A distance, such as 1.20 m." : "A distance, such as 4′ 6″.");
}

/** `what`: stock/round, standing/settle, brought/… as the list offers it. */
function readAdd(values: FormValues, scene: SceneId): Read<Edit> {
  const [kind, ...rest] = text(values, "what").split("/");
  const name = rest.join("/"), room = text(values, "room");
  if (!kind || name === "") return wrong("what", "Choose what is added.");
  if (room === "") return wrong("room", "Choose the room that it goes to.");
  const what = kind === "brought" ? broughtFrom(name) : { kind, id: name };
  const read = editSchema.safeParse({ do: "add", scene, what, room, ...(text(values, "all") === "yes" ? { only: false } : {}) });
  return read.success ? ok(read.data) : wrong("what", "Choose what is added.");
}

/** Width, depth and name, as the list of offers writes them. */
function broughtFrom(name: string): unknown {
  const [width, depth, ...words] = name.split("/");
  return { kind: "brought", width: Number(width), depth: Number(depth), what: words.join("/") };
}
