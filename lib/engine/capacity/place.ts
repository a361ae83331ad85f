import type { Item, Style } from "../../layout";
import type { Room, Site, Venue } from "../../venue";

export type CapacityOptions = {
  readonly room?: string;
  readonly style?: Style;
  /** Without standing furniture. */
  readonly bare?: boolean;
  /** Leave out how many tables and chairs the venue owns. */
  readonly anyStock?: boolean;
  readonly seed?: number;
  /** Steps of search, as a multiple of the usual. */
  readonly effort?: number;
};

/** One room as it is to be filled. */
export type Place = { readonly venue: Venue; readonly site: Site; readonly room: Room; readonly drape: string | null; readonly standing: readonly Item[]; readonly options: CapacityOptions };
