import type { ReactNode } from "react";
import { Mark } from "./mark";

export type Contact = { readonly name?: string; readonly email?: string; readonly phone?: string; readonly text?: string };
export type House = { readonly name: string; readonly contact?: Contact };
export type Room = { readonly href: string; readonly text: string; readonly here?: boolean };

type FrameProps = {
  readonly house: House;
  readonly rooms?: readonly Room[];
  readonly home?: string;
  readonly aside?: ReactNode;
  readonly back?: { readonly href: string; readonly text: string };
  readonly children: ReactNode;
};

/** What every page has at the same place: the venue's name above, whom to ask below. */
export function Frame({ house, rooms, home = "/", aside, back, children }: FrameProps) {
  return (
    <div className="wrap">
      <header className="top">
        <a className="brand" href={home}><Mark /><span>{house.name}</span></a>
        {rooms && (
          <nav className="rooms-of-desk" aria-label="Desk">
            {rooms.map((r) => <a key={r.href} href={r.href} aria-current={r.here ? "page" : undefined}>{r.text}</a>)}
          </nav>
        )}
        {aside && <div className="top-aside note sec">{aside}</div>}
      </header>
      <main id="main">
        {back && <a className="back" href={back.href}>{back.text}</a>}
        {children}
      </main>
      <Foot contact={house.contact} />
    </div>
  );
}

function Foot({ contact }: { readonly contact?: Contact }) {
  return (
    <footer className="foot">
      <p>
        Questions? Ask {(contact?.name ?? "the venue").replace(/^The /, "the ")}
        {contact?.phone && <>: <a href={`tel:${contact.phone.replace(/[^+\d]/g, "")}`}>{contact.phone}</a></>}
        {contact?.email && <>{contact.phone ? " or " : ": "}<a href={`mailto:${contact.email}`}>{contact.email}</a></>}
      </p>
      {contact?.text && <p>{contact.text}</p>}
    </footer>
  );
}
