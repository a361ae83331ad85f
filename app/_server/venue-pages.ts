import type { Venue } from "@/lib/venue";
import { SECTION_TITLES, SECTIONS, type SectionId } from "@/lib/venue/edit";

export const isSection = (text: string): text is SectionId => SECTIONS.some((s) => s === text);

/** Every page of a venue's editor, by its address under the venue's. */
export const pagesOf = (venue: Venue): readonly { readonly href: string; readonly text: string }[] => [
  ...venue.rooms.map((r) => ({ href: `rooms/${r.id}`, text: r.name })),
  ...SECTIONS.map((s) => ({ href: s, text: SECTION_TITLES[s] })),
  { href: "standard", text: "Standard layout" },
];
