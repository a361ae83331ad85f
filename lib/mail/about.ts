import type { Language } from "../words/pages";

/** What every mail about a booking may speak of. Days are YYYY-MM-DD. */
export type About = {
  readonly reference: string; readonly names: readonly string[]; readonly venueName: string; readonly packageName: string;
  readonly coordinator: boolean; readonly date: string; readonly dueDate: string;
  /** The venue's, in which its desk is written to. */
  readonly locale: string;
  /** How the couple read: as they chose, else as their venue does. */
  readonly reader: { readonly language: Language; readonly locale: string };
};
