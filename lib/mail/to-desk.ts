import { formatDay } from "../measure";
import type { About } from "./about";
import { facts, link, quote, text, type Block, type Message } from "./message";

const couple = (about: About): string => about.names.join(" & ");
/** Which booking it is, as every notice to the desk tells; `due`: what its due date is called. */
function booked(about: About, { due = "Layout due by", more = [] }: { readonly due?: string; readonly more?: readonly (readonly [string, string])[] } = {}): Block {
  return facts(["Booking", `${about.reference}, ${couple(about)}`], ["Day", formatDay(about.date, about.locale)], [due, formatDay(about.dueDate, about.locale)], ["Package", about.packageName], ...more);
}

/** To the desk, when a revision has come in. */
export function sentToDesk(about: About, sent: { readonly number: number; readonly href: string; readonly guests: number; readonly musts: number; readonly shoulds: number }): Message {
  return {
    kind: "desk-notice", lang: "en-GB", subject: `${about.reference}: revision ${sent.number} of ${couple(about)} has come in`,
    blocks: [
      text(`A layout waits for your answer.`),
      booked(about, { more: [["Guests", String(sent.guests)], ["Findings", `${sent.musts} must, ${sent.shoulds} should`]] }),
      link("Review it", sent.href),
    ],
  };
}

/** To a person of the desk, who asked to sign in. */
export function deskSignIn(venueName: string, { href, code, minutes }: { readonly href: string; /** To be typed where the mail is read on another machine. */ readonly code: string; readonly minutes: number }): Message {
  return {
    kind: "desk-sign-in", lang: "en-GB", subject: `Sign in to the desk of ${venueName}`,
    blocks: [
      text("This link signs you in to the desk, once, in the browser where you asked for it."),
      link("Sign in", href),
      text(`Where you read this on another device, type this code in that browser instead: ${code}`),
      text(`Either runs out after ${minutes} minutes. If you did not ask for it, let it be: nothing happens unless it is opened.`),
    ],
  };
}

/** To a person who was let in to the desk. The link signs nobody in: it leads to where a link is asked for. */
export function deskInvitation(venueName: string, to: { readonly role: "desk-look" | "desk" | "manager"; readonly href: string; readonly email: string }): Message {
  const may = { "desk-look": "You may look at the bookings, their plans and their papers.", desk: "You may work on the bookings: add them, review them, return and agree them.", manager: "You may work on the bookings, change the venue's facts and prices, and let others in." };
  return {
    kind: "desk-invitation", lang: "en-GB", subject: `You are let in to the desk of ${venueName}`,
    blocks: [
      text(`The desk of ${venueName} is where its room layouts are kept. ${may[to.role]}`),
      link("Sign in", to.href),
      text(`Type this address there, ${to.email}, and a link that signs you in is mailed to it. There is no password.`),
    ],
  };
}

/** To the desk, when nothing had come by the due date. `title` is the standard layout's, where the venue has one. */
export function overdueToDesk(about: About, now: { readonly title?: string; readonly href: string }): Message {
  return {
    kind: "desk-notice", lang: "en-GB", subject: `${about.reference}: nothing has come from ${couple(about)}`,
    blocks: [
      text(now.title === undefined
        ? "The layout was due, and none has come. The venue's file holds no standard layout, so none was set."
        : `The layout was due, and none has come. The standard layout "${now.title}" was set in its place: set by the venue, not agreed.`),
      booked(about, { due: "Layout was due by" }),
      link("Look at the booking", now.href),
    ],
  };
}

const ASKED = {
  change: { what: "a change of the agreed layout", said: "They ask for a change of what is agreed. The agreed revision stands as it is until you act." },
  draft: { what: "a draft", said: "They have answered what they know, and would rather begin from a draft of yours." },
  erase: { what: "their data to be erased", said: "They ask for what is kept of them to be erased. At the booking one button closes it and erases names, addresses, words and mails; take from it first what the law or your contract has you keep." },
} as const;

/** To the desk, when a couple ask for a change of what is agreed, for a draft, or for what is kept of them to be erased. */
export function askedOfDesk(about: About, asked: { readonly what: keyof typeof ASKED; readonly words: string; readonly href: string }): Message {
  return {
    kind: "desk-notice", lang: "en-GB",
    subject: `${about.reference}: ${couple(about)} ask for ${ASKED[asked.what].what}`,
    blocks: [
      text(ASKED[asked.what].said),
      ...(asked.words === "" ? [] : [quote(asked.words)]),
      booked(about),
      link("Look at the booking", asked.href),
    ],
  };
}

/** To whoever set up the mail server, to see that it works. */
export function trial(origin: string): Message {
  return {
    kind: "trial", lang: "en-GB", subject: "Marquetry's mail arrives: Ünïcode, 試し, تجربة",
    blocks: [
      text("This mail was sent by hand, to try out the mail server's settings. If it reads well, accents and all, they are right."),
      link("The address that links in mails begin with", origin),
    ],
  };
}
