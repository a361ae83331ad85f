import { cache } from "react";
import { publicFace, theHouse } from "@/lib/service";
import type { House as Face } from "@/components/ui/frame";
import { speechFor, type Speech } from "./words";

export type PublicFace = Face & Speech & { readonly demo: boolean };

/** The venue's name and whom to ask, for pages that belong to no booking, and how the visitor is spoken to. */
export const face = cache(async (): Promise<PublicFace> => {
  const f = await publicFace(await theHouse());
  return { name: f.venueName, contact: f.contact, demo: f.demo, ...(await speechFor(f)) };
});
