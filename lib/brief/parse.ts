import { fail, pathText, readAs, type Problem, type Result } from "../base";
import type { Venue } from "../venue";
import { briefSchema, type Brief } from "./schema";

/**
 * Where a brief names what its venue does not have. A room that the venue has and the package lacks is no bad input:
 * the answer is then "impossible", with that reason.
 */
export function briefFacts(brief: Brief, venue: Venue): readonly Problem[] {
  const packages = venue.packages.map((p) => p.id), rooms = venue.rooms.map((r) => r.id);
  const listed = (list: readonly string[]): string => list.map((x) => `"${x}"`).join(", ");
  return [
    ...(packages.includes(brief.package) ? [] : [{ path: "package", message: `"${brief.package}" is not a package of this venue; allowed: ${listed(packages)}` }]),
    ...(["ceremony", "meal"] as const).flatMap((part) => {
      const room = brief[part].room;
      return room === "any" || rooms.includes(room) ? []
        : [{ path: pathText([part, "room"]), message: `"${room}" is not a room of this venue; allowed: "any", ${listed(rooms)}` }];
    }),
  ];
}

/** Text of a BRIEF file -> a brief with the defaults taken, or every problem found; with a venue, its names are checked too. */
export function parseBrief(text: string, venue?: Venue): Result<Brief, readonly Problem[]> {
  const read = readAs(briefSchema, text);
  if (!read.ok || !venue) return read;
  const problems = briefFacts(read.value, venue);
  return problems.length > 0 ? fail(problems) : read;
}
