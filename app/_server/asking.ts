import { headers } from "next/headers";
import { notFound, redirect } from "next/navigation";
import { cache } from "react";
import { currentActor, getBooking, glance, theHouse, type Actor, type BookingView, type Glance, type House } from "@/lib/service";
import { bookingIn, glanceIn } from "./spoken";
import { speechFor, type Speech } from "./words";

type Couple = { readonly house: House; readonly actor: Extract<Actor, { kind: "couple" }>; readonly booking: BookingView; readonly speech: Speech } & Pick<Speech, "say">;
type Looking = { readonly house: House; readonly actor: Extract<Actor, { kind: "look" }>; readonly seen: Glance } & Pick<Speech, "say">;
type Desk = { readonly house: House; readonly actor: Extract<Actor, { kind: "desk" }> };

/** The couple that this browser speaks for, in the language and lengths that they read; null where it speaks for none. */
export const coupleHere = cache(async (): Promise<Couple | null> => {
  const house = await theHouse();
  const actor = await currentActor(house, { cookie: (await headers()).get("cookie"), side: "couple" });
  if (actor.kind !== "couple") return null;
  const seen = await getBooking(house, actor, { reference: actor.reference });
  if (!seen.ok) return null;
  const speech = await speechFor(seen.value.venue, seen.value.reads);
  return { house, actor, booking: bookingIn(seen.value, speech), speech, say: speech.say };
});

/** The couple whose page this is; anyone else is told how to open it. */
export const couple = async (): Promise<Couple> => (await coupleHere()) ?? redirect("/open");

/** Who was given a link to look; anyone else is told how to open it. */
export const looking = cache(async (): Promise<Looking> => {
  const house = await theHouse();
  const actor = await currentActor(house, { cookie: (await headers()).get("cookie"), side: "look" });
  if (actor.kind !== "look") redirect("/open?why=look");
  const seen = await glance(house, actor, { reference: actor.reference });
  if (!seen.ok) redirect("/open?why=look");
  const speech = await speechFor(seen.value.venue, seen.value.reads);
  return { house, actor, seen: glanceIn(seen.value, speech), say: speech.say };
});

/** The desk; anyone else is asked to sign in. */
export const desk = cache(async (): Promise<Desk> => {
  const house = await theHouse();
  const actor = await currentActor(house, { cookie: (await headers()).get("cookie"), side: "desk" });
  if (actor.kind !== "desk") redirect("/desk/open");
  return { house, actor };
});

/** A booking as the desk sees it. */
export const deskBooking = cache(async (reference: string): Promise<Desk & { readonly booking: BookingView }> => {
  const asking = await desk();
  const seen = await getBooking(asking.house, asking.actor, { reference });
  if (!seen.ok) notFound();
  return { ...asking, booking: seen.value };
});

export type Search = Promise<Readonly<Record<string, string | string[] | undefined>>>;
/** One word of the address's query, or nothing. */
export const asked = async (search: Search, name: string): Promise<string | undefined> => {
  const v = (await search)[name];
  return typeof v === "string" ? v : v?.[0];
};
