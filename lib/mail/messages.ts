import { facts, link, quote, text, type Message } from "./message";

/** What every mail about a booking may speak of. Days are YYYY-MM-DD; `locale` is the venue's. */
export type About = {
  readonly reference: string; readonly names: readonly string[]; readonly venueName: string; readonly packageName: string;
  readonly coordinator: boolean; readonly date: string; readonly dueDate: string; readonly locale: string;
};

const CAUTION = "A plan made with Marquetry is a planning aid. The venue's posted figures and its own safety plan govern, and a competent person must check before the doors open.";

/** To the couple, when their booking is added or a fresh link is asked for. */
export function invitation(about: About, href: string): Message {
  return {
    kind: "invitation", lang: "en-GB", subject: `Your room layout for ${day(about, about.date)} at ${about.venueName}`,
    blocks: [
      text(greeting(about)),
      text(`You are booked at ${about.venueName}. Before the day you choose one layout of the rooms: where the tables stand, where the music plays, where everything else goes. Answer a few questions and you are shown what fits, drawn to scale.`),
      facts(["Your day", day(about, about.date)], ["Layout due by", day(about, about.dueDate)], ["Package", about.packageName], ["Reference", about.reference]),
      link("Open your layout", href),
      text("It takes about twenty minutes. Each answer is saved by itself, so you may stop and come back by this same link. It is yours alone: whoever has it can see and change your answers."),
      text(about.coordinator
        ? "Where you are not sure yet, say so and go on: your coordinator reads what you send and answers it."
        : "Where you are not sure yet, say so and go on. With your package the choice is yours; the venue reads it before the day."),
    ],
  };
}

/** To the couple, when they have sent a revision. */
export function sentToCouple(about: About, sent: { readonly number: number; readonly href: string }): Message {
  return {
    kind: "sent", lang: "en-GB", subject: `We have your layout, revision ${sent.number} (${about.reference})`,
    blocks: [
      text(greeting(about)),
      text(`Your layout for ${day(about, about.date)} has reached ${about.venueName} as revision ${sent.number}. It is not agreed yet: the venue reads it, and then agrees it or returns it to you with a reason. You will have a mail either way.`),
      link("See what you sent", sent.href),
      text(CAUTION),
    ],
  };
}

/** To the desk, when a revision has come in. */
export function sentToDesk(about: About, sent: { readonly number: number; readonly href: string; readonly guests: number; readonly musts: number; readonly shoulds: number }): Message {
  return {
    kind: "desk-notice", lang: "en-GB", subject: `${about.reference}: revision ${sent.number} of ${about.names.join(" & ")} has come in`,
    blocks: [
      text(`A layout waits for your answer.`),
      facts(
        ["Booking", `${about.reference}, ${about.names.join(" & ")}`], ["Day", day(about, about.date)], ["Layout due by", day(about, about.dueDate)],
        ["Package", about.packageName], ["Guests", String(sent.guests)], ["Findings", `${sent.musts} must, ${sent.shoulds} should`],
      ),
      link("Review it", sent.href),
    ],
  };
}

/** To the couple, when the coordinator has returned a revision. */
export function returned(about: About, back: { readonly number: number; readonly reason: string; readonly pieces?: readonly string[]; readonly href: string }): Message {
  return {
    kind: "returned", lang: "en-GB", subject: `Your layout needs a change (${about.reference}, revision ${back.number})`,
    blocks: [
      text(greeting(about)),
      text(`${about.venueName} has read revision ${back.number} and returned it, with these words:`),
      quote(back.reason),
      ...(back.pieces && back.pieces.length > 0 ? [text(`They are about: ${back.pieces.join(", ")}.`)] : []),
      text(`Change what is asked and send it again, by ${day(about, about.dueDate)}. Nothing that you answered is lost.`),
      link("Open your layout", back.href),
    ],
  };
}

/** To the couple, when a revision is agreed. */
export function agreed(about: About, done: { readonly number: number; readonly fingerprint: string; readonly href: string }): Message {
  return {
    kind: "agreed", lang: "en-GB", subject: `Agreed: your layout for ${day(about, about.date)} (${about.reference})`,
    blocks: [
      text(greeting(about)),
      text(`${about.venueName} agrees to revision ${done.number} of your layout. It now stands as it is: answers, plan, the venue's facts and prices. The fingerprint below is printed on its proposal too; another fingerprint is another layout.`),
      facts(["Revision", String(done.number)], ["Your day", day(about, about.date)], ["Fingerprint", inFours(done.fingerprint)]),
      link("See the agreed layout", done.href),
      text(CAUTION),
    ],
  };
}

/** To the couple, when the desk has adjusted what they sent: a further revision stands for it. */
export function amended(about: About, now: { readonly number: number; readonly href: string }): Message {
  return {
    kind: "amended", lang: "en-GB", subject: `Your layout was adjusted: revision ${now.number} (${about.reference})`,
    blocks: [
      text(greeting(about)),
      text(`${about.venueName} has moved something on the plan that you sent. It stands as revision ${now.number} and is not agreed yet. See what changed; if it is not what you want, tell the venue.`),
      link("See your layout", now.href),
      text(CAUTION),
    ],
  };
}

/** To the couple, when a new number of guests made the desk change what was agreed. */
export function changed(about: About, now: { readonly number: number; readonly guests: number; readonly href: string }): Message {
  return {
    kind: "changed", lang: "en-GB", subject: `Your layout for ${now.guests} guests: revision ${now.number} (${about.reference})`,
    blocks: [
      text(greeting(about)),
      text(`${about.venueName} has changed your agreed layout for ${now.guests} guests, moving as little as it could. It stands as revision ${now.number} and is not agreed yet; until it is, the revision that was agreed holds.`),
      link("See what changed", now.href),
      text(CAUTION),
    ],
  };
}

/** To the couple, when the desk has made a draft for them. */
export function draft(about: About, made: { readonly title: string; readonly words: string; readonly href: string }): Message {
  return {
    kind: "draft", lang: "en-GB", subject: `A first draft of your layout for ${day(about, about.date)} (${about.reference})`,
    blocks: [
      text(greeting(about)),
      text(`${about.venueName} has made a draft for you: ${made.title}. It is yours to change: answer what is still open, choose another layout, or send this one as it is.`),
      ...(made.words === "" ? [] : [quote(made.words)]),
      facts(["Your day", day(about, about.date)], ["Layout due by", day(about, about.dueDate)], ["Reference", about.reference]),
      link("See the draft", made.href),
      text(CAUTION),
    ],
  };
}

/** To the couple, some days before their final numbers are due. */
export function numbersDue(about: About, left: { readonly days: number; readonly due: string; readonly href: string }): Message {
  const when = left.days <= 0 ? "now" : left.days === 1 ? "tomorrow" : `in ${left.days} days`;
  return {
    kind: "numbers-due", lang: "en-GB", subject: `How many are you? Your final numbers are due ${when} (${about.reference})`,
    blocks: [
      text(greeting(about)),
      text(`${about.venueName} needs your final numbers by ${day(about, left.due)}: how many sit down to eat on ${day(about, about.date)}. If they differ from your layout, the venue changes it as little as it can.`),
      link("Give your numbers", left.href),
    ],
  };
}

/** To a person of the desk, who asked to sign in. */
export function deskSignIn(venueName: string, { href, code, minutes }: { readonly href: string; /** To be typed where the mail is read on another machine. */ readonly code: string; readonly minutes: number }): Message {
  return {
    kind: "desk-sign-in", lang: "en-GB", subject: `Sign in to the desk of ${venueName}`,
    blocks: [
      text("This link signs you in to the desk, once."),
      link("Sign in", href),
      text(`Or type this code where you asked for it: ${code}`),
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

/** To the couple, some days before their layout is due. */
export function reminder(about: About, left: { readonly days: number; readonly begun: boolean; readonly href: string; readonly quiet: string }): Message {
  const when = left.days === 0 ? "today" : left.days === 1 ? "tomorrow" : `in ${left.days} days`;
  return {
    kind: "reminder", lang: "en-GB", subject: `Your room layout is due ${when} (${about.reference})`,
    blocks: [
      text(greeting(about)),
      text(`Your layout for ${day(about, about.date)} at ${about.venueName} is due ${when}: by ${day(about, about.dueDate)}. ${left.begun ? "What you have answered is kept; go on where you stopped." : "It takes about twenty minutes, and each answer is saved by itself."}`),
      link("Open your layout", left.href),
      text("Once you have sent it, no more of these come. If you want none in any case:"),
      link("No more reminders", left.quiet),
    ],
  };
}

/** To the couple, when nothing had come by the due date. `title` is the standard layout's, where the venue has one. */
export function overdue(about: About, now: { readonly title?: string; readonly href: string }): Message {
  return {
    kind: "overdue", lang: "en-GB", subject: `Your room layout was due (${about.reference})`,
    blocks: [
      text(greeting(about)),
      text(`Your layout for ${day(about, about.date)} was due by ${day(about, about.dueDate)}, and none has come.`),
      text(now.title === undefined
        ? `Open your layout and send it, or speak with ${about.venueName}.`
        : `${about.venueName} has therefore set its own standard layout, "${now.title}". It is set by the venue and not agreed. If another would suit you better, speak with the venue, or send yours: whether it still can be had is for the venue to say.`),
      link("Open your layout", now.href),
    ],
  };
}

/** To the desk, of the same. */
export function overdueToDesk(about: About, now: { readonly title?: string; readonly href: string }): Message {
  return {
    kind: "desk-notice", lang: "en-GB", subject: `${about.reference}: nothing has come from ${about.names.join(" & ")}`,
    blocks: [
      text(now.title === undefined
        ? "The layout was due, and none has come. The venue's file holds no standard layout, so none was set."
        : `The layout was due, and none has come. The standard layout "${now.title}" was set in its place: set by the venue, not agreed.`),
      facts(["Booking", `${about.reference}, ${about.names.join(" & ")}`], ["Day", day(about, about.date)], ["Layout was due by", day(about, about.dueDate)], ["Package", about.packageName]),
      link("Look at the booking", now.href),
    ],
  };
}

/** To someone the couple named: a link that shows their day and changes nothing. */
export function lookLink(about: About, shared: { readonly href: string; readonly label: string }): Message {
  const couple = together(about.names);
  return {
    kind: "look", lang: "en-GB", subject: `${couple}: how their day at ${about.venueName} is laid`,
    blocks: [
      text(`Dear ${shared.label},`),
      text(`${couple} would like you to see how their day at ${about.venueName} is laid out: where the tables stand, where the music plays, and what they have answered so far. You can look, as often as you like; nothing can be changed by this link.`),
      facts(["Their day", day(about, about.date)]),
      link("Look at their day", shared.href),
      text("They can withdraw the link at any time. If you do not know them, let this mail be."),
    ],
  };
}

/** To the desk, when a couple ask for a change of what is agreed, or for a draft. */
export function askedOfDesk(about: About, asked: { readonly what: "change" | "draft"; readonly words: string; readonly href: string }): Message {
  const change = asked.what === "change";
  return {
    kind: "desk-notice", lang: "en-GB",
    subject: `${about.reference}: ${about.names.join(" & ")} ask for ${change ? "a change of the agreed layout" : "a draft"}`,
    blocks: [
      text(change ? "They ask for a change of what is agreed. The agreed revision stands as it is until you act." : "They have answered what they know, and would rather begin from a draft of yours."),
      ...(asked.words === "" ? [] : [quote(asked.words)]),
      facts(["Booking", `${about.reference}, ${about.names.join(" & ")}`], ["Day", day(about, about.date)], ["Layout due by", day(about, about.dueDate)], ["Package", about.packageName]),
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

const together = (names: readonly string[]): string => (names.length < 2 ? names.join("") : `${names.slice(0, -1).join(", ")} and ${names.at(-1)}`);
const greeting = (about: About): string => `Dear ${together(about.names)},`;

/** A day written out in the venue's own way: "Saturday 12 June 2027". */
function day(about: About, date: string): string {
  return new Intl.DateTimeFormat(about.locale, { weekday: "long", day: "numeric", month: "long", year: "numeric", timeZone: "UTC" })
    .format(new Date(`${date}T00:00:00Z`));
}

const inFours = (hex: string): string => hex.match(/.{1,8}/g)?.join(" ") ?? hex;
