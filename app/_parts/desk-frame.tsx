import type { ReactNode } from "react";
import { desk } from "@/app/_server/asking";
import { face } from "@/app/_server/face";
import { Frame } from "@/components/ui/frame";

export type DeskRoom = "queue" | "new" | "venue" | "fits" | "people" | "mailbox";
type Props = { readonly person: string; readonly here?: DeskRoom; readonly back?: { readonly href: string; readonly text: string }; readonly children: ReactNode };

/** The desk's pages: its rooms above, and who is signed in. */
export async function DeskFrame({ person, here, back, children }: Props) {
  const shown = await face();
  const { actor } = await desk();
  const rooms = [
    { href: "/desk", text: "Queue", here: here === "queue" },
    ...(actor.role === "desk-look" ? [] : [{ href: "/desk/bookings/new", text: "Add a booking", here: here === "new" }]),
    { href: "/desk/venue", text: "Venue", here: here === "venue" },
    { href: "/desk/fits", text: "How many fit", here: here === "fits" },
    ...(actor.role === "manager" ? [{ href: "/desk/people", text: "People", here: here === "people" }] : []),
    ...(shown.demo && actor.role !== "desk-look" ? [{ href: "/desk/mailbox", text: "Mailbox", here: here === "mailbox" }] : []),
  ];
  return (
    <Frame
      house={shown} rooms={rooms} home="/desk" back={back}
      aside={<form method="post" action="/desk/leave" className="flex items-center gap-3"><span>{person}{actor.role === "desk-look" ? ", looking only" : ""}</span><button className="leave" type="submit">Sign out</button></form>}
    >
      {children}
    </Frame>
  );
}
