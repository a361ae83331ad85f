import type { ReactNode } from "react";
import { face } from "@/app/_server/face";
import { Frame } from "@/components/ui/frame";

export type DeskRoom = "queue" | "new" | "venue" | "fits" | "mailbox";
type Props = { readonly person: string; readonly here?: DeskRoom; readonly back?: { readonly href: string; readonly text: string }; readonly children: ReactNode };

/** The desk's pages: its rooms above, and who is signed in. */
export async function DeskFrame({ person, here, back, children }: Props) {
  const shown = await face();
  const rooms = [
    { href: "/desk", text: "Queue", here: here === "queue" },
    { href: "/desk/bookings/new", text: "Add a booking", here: here === "new" },
    { href: "/desk/venue", text: "Venue", here: here === "venue" },
    { href: "/desk/fits", text: "How many fit", here: here === "fits" },
    ...(shown.demo ? [{ href: "/desk/mailbox", text: "Mailbox", here: here === "mailbox" }] : []),
  ];
  return (
    <Frame
      house={shown} rooms={rooms} home="/desk" back={back}
      aside={<form method="post" action="/desk/leave" className="flex items-center gap-3"><span>{person}</span><button className="leave" type="submit">Sign out</button></form>}
    >
      {children}
    </Frame>
  );
}
