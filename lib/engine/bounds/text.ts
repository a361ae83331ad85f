import type { SceneId } from "../../layout";
import type { Venue } from "../../venue";
import { areaText, lengthText } from "../../words/lengths";

type Said = {
  readonly code: string; readonly scene: SceneId; readonly measured: number; readonly limit: number;
  readonly data: Readonly<Record<string, string | number | boolean>>;
};

const PART: Readonly<Record<SceneId, string>> = { ceremony: "the ceremony", drinks: "the drinks", meal: "the meal", dancing: "dancing" };
const KIND: Readonly<Record<string, string>> = { rows: "chairs in rows", tables: "tables", standing: "standing" };

/** A bound as a sentence. */
export function boundText(venue: Venue, f: Said): string {
  const room = venue.rooms.find((r) => r.id === f.data["room"])?.name ?? String(f.data["room"] ?? "");
  const pack = venue.packages.find((p) => p.id === f.data["package"])?.name ?? "the package";
  const num = (key: string): number => Number(f.data[key] ?? 0);
  const part = PART[f.scene];
  switch (f.code) {
    case "bound-room": return `The brief asks for ${room} for ${part}, and ${pack} does not include it.`;
    case "bound-use": return f.data["room"] === undefined
      ? `No room of ${pack} is let for ${f.data["use"] === "dining" ? "dining" : part}.`
      : `${room} is not let for ${f.data["use"] === "dining" ? "dining" : part}.`;
    case "bound-exits": return `${num("people")} guests need ${f.limit} ways out; at most ${f.measured} can be reached from any room for ${part}.`;
    case "bound-route": return `No way out from a room for ${part} has doors of ${lengthText(num("door"), venue.lengths)} without steps, so a wheelchair cannot come in.`;
    case "bound-posted": return `${f.measured} guests at ${part}; the posted figure lets ${f.limit} into ${room} with ${String(f.data["kind"]).split("/").map((k) => KIND[k] ?? k).join(" or ")}.`;
    case "bound-densest": return `${f.measured} guests at ${part}; the ${areaText(num("area"), venue.lengths)} of ${room} hold ${f.limit} at the densest that may be posted.`;
    case "bound-area": return `${f.measured} guests at ${part}; ${room} has no posted figure, and its ${areaText(num("area"), venue.lengths)} hold ${f.limit} at ${areaText(num("each"), venue.lengths)} each.`;
    case "bound-rooms": return `${f.measured} guests at ${part}; all ${num("rooms")} rooms for it together hold ${f.limit}.`;
    case "bound-floor": return `${num("dancers")} dancers need ${areaText(num("need"), venue.lengths)} of floor; the largest room for dancing has ${areaText(f.limit, venue.lengths)}.`;
    case "bound-tables": {
      const which = f.data["tables"] === "rounds" ? "round tables" : f.data["tables"] === "long" ? "long tables" : "tables";
      return `${f.measured} guests at ${part}; the venue's ${num("count")} ${which} seat ${num("places")} at most${num("extra") > 0 ? `, and the couple's table ${num("extra")} more` : ""}.`;
    }
    case "bound-chairs": return `${f.measured} chairs are needed at ${part}; the venue owns ${f.limit === 0 ? "none" : f.limit}.`;
    default: return `${f.code}: ${f.measured} against ${f.limit}.`;
  }
}
