import { fail, ok, readAs, type Problem, type Result } from "../base";
import { layoutSchema } from "../layout/schema";
import type { Layout } from "../layout";
import { layoutFacts, venueFacts } from "./facts";
import { venueSchema, type Venue } from "./schema";

/** Text of a VENUE file -> a venue whose parts agree, or every problem found. */
export function parseVenue(text: string): Result<Venue, readonly Problem[]> {
  const read = readAs(venueSchema, text);
  if (!read.ok) return read;
  const problems = [
    ...venueFacts(read.value),
    ...(read.value.standardLayout ? layoutFacts(read.value, read.value.standardLayout, ["standardLayout"]) : []),
  ];
  return problems.length > 0 ? fail(problems) : ok(read.value);
}

/** Text of a LAYOUT file; with a venue, also that everything it names is there. */
export function parseLayout(text: string, venue?: Venue): Result<Layout, readonly Problem[]> {
  const read = readAs(layoutSchema, text);
  if (!read.ok || !venue) return read;
  const problems = layoutFacts(venue, read.value);
  return problems.length > 0 ? fail(problems) : read;
}
