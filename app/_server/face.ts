import { cache } from "react";
import { publicFace, theHouse } from "@/lib/service";
import type { House as Face } from "@/components/ui/frame";

export type PublicFace = Face & { readonly locale: string; readonly demo: boolean };

/** The venue's name and whom to ask, for pages that belong to no booking. */
export const face = cache(async (): Promise<PublicFace> => {
  const f = await publicFace(await theHouse());
  return { name: f.venueName, contact: f.contact, locale: f.locale, demo: f.demo };
});
