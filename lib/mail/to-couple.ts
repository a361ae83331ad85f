import { formatDay } from "../measure";
import { sayAhead } from "../words/left";
import { listText } from "../words/lists";
import { mailVoice, type MailVoice } from "../words/mails";
import type { About } from "./about";
import { facts, link, quote, text, type Block, type Message } from "./message";

/** How a booking's couple are written to: the voice of their language, days as they read them, and what all their letters share. */
type Pen = { readonly say: MailVoice; readonly day: (date: string) => string; readonly couple: string; readonly caution: Block; readonly letter: (kind: string, subject: string, blocks: readonly Block[]) => Message };

function penFor(about: About): Pen {
  const { language, locale } = about.reader, say = mailVoice(language);
  const couple = listText(about.names, locale);
  return {
    say, couple, day: (date) => formatDay(date, locale),
    caution: text(say("A plan made with Marquetry is a planning aid. The venue's posted figures and its own safety plan govern, and a competent person must check before the doors open.")),
    letter: (kind, subject, blocks) => ({ kind, lang: language, subject, blocks: [text(say("Dear {names},", { names: couple })), ...blocks] }),
  };
}

/** When their booking is added or a fresh link is asked for. */
export function invitation(about: About, href: string): Message {
  const { say, day, letter } = penFor(about), venue = about.venueName;
  return letter("invitation", say("Your room layout for {day} at {venue}", { day: day(about.date), venue }), [
    text(say("You are booked at {venue}. Before the day you choose one layout of the rooms: where the tables stand, where the music plays, where everything else goes. Answer a few questions and you are shown what fits, drawn to scale.", { venue })),
    facts([say("Your day"), day(about.date)], [say("Layout due by"), day(about.dueDate)], [say("Package"), about.packageName], [say("Reference"), about.reference]),
    link(say("Open your layout"), href),
    text(say("It takes about twenty minutes. Each step is saved when you press its button, so you may stop after any of them and come back by this same link. It is yours alone: whoever has it can see and change your answers.")),
    text(about.coordinator
      ? say("Where you are not sure yet, say so and go on: your coordinator reads what you send and answers it.")
      : say("Where you are not sure yet, say so and go on. With your package the choice is yours; the venue reads it before the day.")),
  ]);
}

/** When they have sent a revision. */
export function sentToCouple(about: About, sent: { readonly number: number; readonly href: string }): Message {
  const { say, day, letter, caution } = penFor(about), { number } = sent;
  return letter("sent", say("We have your layout, revision {number} ({reference})", { number, reference: about.reference }), [
    text(say("Your layout for {day} has reached {venue} as revision {number}. It is not agreed yet: the venue reads it, and then agrees it or returns it to you with a reason. You will have a mail either way.", { day: day(about.date), venue: about.venueName, number })),
    link(say("See what you sent"), sent.href), caution,
  ]);
}

/** When the coordinator has returned a revision. */
export function returned(about: About, back: { readonly number: number; readonly reason: string; readonly pieces?: readonly string[]; readonly href: string }): Message {
  const { say, day, letter } = penFor(about), { number, pieces = [] } = back;
  return letter("returned", say("Your layout needs a change ({reference}, revision {number})", { number, reference: about.reference }), [
    text(say("{venue} has read revision {number} and returned it, with these words:", { venue: about.venueName, number })),
    quote(back.reason),
    ...(pieces.length > 0 ? [text(say("They are about: {pieces}.", { pieces: pieces.join(", ") }))] : []),
    text(say("Change what is asked and send it again, by {day}. Nothing that you answered is lost.", { day: day(about.dueDate) })),
    link(say("Open your layout"), back.href),
  ]);
}

/** When a revision is agreed. */
export function agreed(about: About, done: { readonly number: number; readonly fingerprint: string; readonly href: string }): Message {
  const { say, day, letter, caution } = penFor(about), { number } = done;
  return letter("agreed", say("Agreed: your layout for {day} ({reference})", { day: day(about.date), reference: about.reference }), [
    text(say("{venue} agrees to revision {number} of your layout. It now stands as it is: answers, plan, the venue's facts and prices. The fingerprint below is printed on its proposal too; another fingerprint is another layout.", { venue: about.venueName, number })),
    facts([say("Revision"), String(number)], [say("Your day"), day(about.date)], [say("Fingerprint"), inEights(done.fingerprint)]),
    link(say("See the agreed layout"), done.href), caution,
  ]);
}

/** When the desk has adjusted what they sent: a further revision stands for it. */
export function amended(about: About, now: { readonly number: number; readonly href: string }): Message {
  const { say, letter, caution } = penFor(about), { number } = now;
  return letter("amended", say("Your layout was adjusted: revision {number} ({reference})", { number, reference: about.reference }), [
    text(say("{venue} has moved something on the plan that you sent. It stands as revision {number} and is not agreed yet. See what changed; if it is not what you want, tell the venue.", { venue: about.venueName, number })),
    link(say("See your layout"), now.href), caution,
  ]);
}

/** When a new number of guests made the desk change what was agreed. */
export function changed(about: About, now: { readonly number: number; readonly guests: number; readonly href: string }): Message {
  const { say, letter, caution } = penFor(about), { number, guests: n } = now;
  return letter("changed", say("Your layout for {n} guests: revision {number} ({reference})", { n, number, reference: about.reference }), [
    text(say("{venue} has changed your agreed layout for {n} guests, moving as little as it could. It stands as revision {number} and is not agreed yet; until it is, the revision that was agreed holds.", { venue: about.venueName, n, number })),
    link(say("See what changed"), now.href), caution,
  ]);
}

/** When the desk has made a draft for them. */
export function draft(about: About, made: { readonly title: string; readonly words: string; readonly href: string }): Message {
  const { say, day, letter, caution } = penFor(about);
  return letter("draft", say("A first draft of your layout for {day} ({reference})", { day: day(about.date), reference: about.reference }), [
    text(say("{venue} has made a draft for you: {title}. It is yours to change: answer what is still open, choose another layout, or send this one as it is.", { venue: about.venueName, title: made.title })),
    ...(made.words === "" ? [] : [quote(made.words)]),
    facts([say("Your day"), day(about.date)], [say("Layout due by"), day(about.dueDate)], [say("Reference"), about.reference]),
    link(say("See the draft"), made.href), caution,
  ]);
}

/** Some days before their final numbers are due. */
export function numbersDue(about: About, left: { readonly days: number; readonly due: string; readonly href: string }): Message {
  const { say, day, letter } = penFor(about);
  const when = left.days <= 0 ? say("now") : sayAhead(left.days, say);
  return letter("numbers-due", say("How many are you? Your final numbers are due {when} ({reference})", { when, reference: about.reference }), [
    text(say("{venue} needs your final numbers by {due}: how many sit down to eat on {day}. If they differ from your layout, the venue changes it as little as it can.", { venue: about.venueName, due: day(left.due), day: day(about.date) })),
    link(say("Give your numbers"), left.href),
  ]);
}

/** Some days before their layout is due. */
export function reminder(about: About, left: { readonly days: number; readonly begun: boolean; readonly href: string; readonly quiet: string }): Message {
  const { say, day, letter } = penFor(about), when = sayAhead(left.days, say);
  const due = say("Your layout for {day} at {venue} is due {when}: by {due}.", { day: day(about.date), venue: about.venueName, when, due: day(about.dueDate) });
  return letter("reminder", say("Your room layout is due {when} ({reference})", { when, reference: about.reference }), [
    text(`${due} ${left.begun ? say("What you have answered is kept; go on where you stopped.") : say("It takes about twenty minutes, and you may stop after any step.")}`),
    link(say("Open your layout"), left.href),
    text(say("Once you have sent it, no more of these come. If you want none in any case:")),
    link(say("No more reminders"), left.quiet),
  ]);
}

/** When nothing had come by the due date. `title` is the standard layout's, where the venue has one. */
export function overdue(about: About, now: { readonly title?: string; readonly href: string }): Message {
  const { say, day, letter } = penFor(about), venue = about.venueName;
  return letter("overdue", say("Your room layout was due ({reference})", { reference: about.reference }), [
    text(say("Your layout for {day} was due by {due}, and none has come.", { day: day(about.date), due: day(about.dueDate) })),
    text(now.title === undefined
      ? say("Open your layout and send it, or speak with {venue}.", { venue })
      : say("{venue} has therefore set its own standard layout, “{title}”. It is set by the venue and not agreed. If another would suit you better, speak with the venue, or send yours: whether it still can be had is for the venue to say.", { venue, title: now.title })),
    link(say("Open your layout"), now.href),
  ]);
}

/** To someone the couple named: a link that shows their day and changes nothing. */
export function lookLink(about: About, shared: { readonly href: string; readonly label: string }): Message {
  const { say, day, couple } = penFor(about), venue = about.venueName;
  return {
    kind: "look", lang: about.reader.language, subject: say("{couple}: how their day at {venue} is laid", { couple, venue }),
    blocks: [
      text(say("Dear {names},", { names: shared.label })),
      text(say("{couple} would like you to see how their day at {venue} is laid out: where the tables stand, where the music plays, and what they have answered so far. You can look, as often as you like; nothing can be changed by this link.", { couple, venue })),
      facts([say("Their day"), day(about.date)]),
      link(say("Look at their day"), shared.href),
      text(say("They can withdraw the link at any time. If you do not know them, let this mail be.")),
    ],
  };
}

const inEights = (hex: string): string => hex.match(/.{1,8}/g)?.join(" ") ?? hex;
