import type { ReactNode } from "react";
import { ENGLISH, type Say } from "@/lib/words/pages/say";
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
  /** Where language and lengths are chosen, on the pages that may be read in several. */
  readonly choose?: string;
  readonly say?: Say;
  readonly children: ReactNode;
};

/** What every page has at the same place: the venue's name above, whom to ask below. */
export function Frame({ house, rooms, home = "/", aside, back, choose, say = ENGLISH, children }: FrameProps) {
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
      <Foot contact={house.contact} choose={choose} say={say} />
    </div>
  );
}

function Foot({ contact, choose, say }: { readonly contact?: Contact; readonly choose?: string; readonly say: Say }) {
  return (
    <footer className="foot">
      <p>
        {say("Questions? Ask {name}", { name: contact?.name?.replace(/^The /, "the ") ?? say("the venue") })}
        {contact?.phone && <>: <a href={`tel:${contact.phone.replace(/[^+\d]/g, "")}`}>{contact.phone}</a></>}
        {contact?.email && <>{contact.phone ? ` ${say("or")} ` : ": "}<a href={`mailto:${contact.email}`}>{contact.email}</a></>}
      </p>
      {contact?.text && <p>{contact.text}</p>}
      {choose && <p><a href={choose}>{say("Language and lengths")}{say.language === "es" ? <> / <span lang="en">English</span></> : <> / <span lang="es">Español</span></>}</a></p>}
    </footer>
  );
}
