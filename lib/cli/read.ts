import { parseBrief, type Brief, type BriefFile } from "../brief";
import type { Layout } from "../layout";
import { parseLayout, parseVenue, type Venue } from "../venue";
import { readFileAs, readText } from "./files";
import { BadInput, type Fault } from "./problem";

export const readVenue = (file: string): Promise<Venue> => readFileAs(file, parseVenue);

/** Reads a venue, then what speaks of it. Where the venue itself is bad the others are still read, so that all is told at once. */
export async function readWith<T>(venueFile: string, others: (venue: Venue | undefined) => readonly Promise<T>[]): Promise<{ readonly venue: Venue; readonly rest: readonly T[] }> {
  const faults: Fault[] = [];
  const keep = (error: unknown): undefined => {
    if (!(error instanceof BadInput)) throw error;
    faults.push(...error.faults);
    return undefined;
  };
  const venue = await readVenue(venueFile).catch(keep);
  const rest: T[] = [];
  for (const file of await Promise.allSettled(others(venue))) {
    if (file.status === "fulfilled") rest.push(file.value);
    else keep(file.reason);
  }
  if (venue === undefined || faults.length > 0) throw new BadInput(faults);
  return { venue, rest };
}

type Read = { readonly brief: Brief } | { readonly layout: Layout };
const asBrief = async (file: string, venue?: Venue): Promise<Read> => ({ brief: await readFileAs(file, (t) => parseBrief(t, venue)) });
const asLayout = async (file: string, venue?: Venue): Promise<Read> => ({ layout: await readFileAs(file, (t) => parseLayout(t, venue)) });
const missing = (): never => { throw new Error("a file that was read is gone"); };

export async function readVenueAndBrief(venueFile: string, briefFile: string): Promise<{ readonly venue: Venue; readonly brief: Brief }> {
  const { venue, rest } = await readWith(venueFile, (v) => [asBrief(briefFile, v)]);
  return { venue, brief: rest.flatMap((r) => ("brief" in r ? [r.brief] : []))[0] ?? missing() };
}

export async function readVenueAndLayout(venueFile: string, layoutFile: string, briefFile?: string): Promise<{ readonly venue: Venue; readonly layout: Layout; readonly brief: Brief | undefined }> {
  const { venue, rest } = await readWith(venueFile, (v) => [asLayout(layoutFile, v), ...(briefFile === undefined ? [] : [asBrief(briefFile, v)])]);
  return {
    venue, layout: rest.flatMap((r) => ("layout" in r ? [r.layout] : []))[0] ?? missing(),
    brief: rest.flatMap((r) => ("brief" in r ? [r.brief] : []))[0],
  };
}

/** A brief as it was written, without the defaults; it has been read as a brief before. */
export async function briefFileOf(file: string): Promise<BriefFile> {
  const text = await readText(file);
  const written: BriefFile = JSON.parse(text.replace(/^\ufeff/, ""));
  return written;
}
