import { describe, expect, it } from "vitest";
import { asText, messages, type About, type Message } from "../../../lib/mail";
import { MAIL_PHRASES, mailVoice } from "../../../lib/words/mails";
import { LANGUAGES, type Language } from "../../../lib/words/pages";
import { BRITISH } from "./left-over";

const slots = (text: string): string => [...new Set(text.match(/\{\w+\}/g) ?? [])].sort().join();
const about = (language: Language, locale: string): About => ({
  reference: "QK7M-34", names: ["Ines Calloway", "Theo Brandt"], venueName: "Tidewheel Mill", packageName: "Dry hire", coordinator: false,
  date: "2027-06-12", dueDate: "2027-05-01", locale: "en-GB", reader: { language, locale },
});
/** Every letter that goes to a couple or to whom they name. What a person wrote, and what the venue calls its own, has no English in it here. */
function letters(about: About): readonly Message[] {
  const href = "https://mill.example/open/x";
  return [
    messages.invitation(about, href), messages.invitation({ ...about, coordinator: true }, href), messages.sentToCouple(about, { number: 2, href }),
    messages.returned(about, { number: 2, reason: "¿…?", pieces: ["12"], href }), messages.agreed(about, { number: 2, fingerprint: "ab".repeat(32), href }),
    messages.amended(about, { number: 3, href }), messages.changed(about, { number: 3, guests: 90, href }), messages.draft(about, { title: "·", words: "", href }),
    ...[0, 1, 7].map((days) => messages.numbersDue(about, { days, due: "2027-06-02", href })),
    ...[0, 1, 14, 200, 900, 1013].flatMap((days) => [true, false].map((begun) => messages.reminder(about, { days, begun, href, quiet: href }))),
    messages.overdue(about, { href }), messages.overdue(about, { title: "·", href }), messages.lookLink(about, { href, label: "Rosa" }),
  ];
}
const read = (message: Message): string => `${message.subject}\n${asText(message)}`;

describe("the couple's mails", () => {
  it.each(LANGUAGES)("have every sentence in %s, with the slots of the British one and no others", (language) => {
    const say = mailVoice(language);
    for (const phrase of MAIL_PHRASES) for (const n of [1, 2]) {
      expect(slots(say(phrase, { n }).replaceAll(String(n), "{n}")), phrase).toBe(slots(phrase));
    }
  });

  it("say nothing in English to who reads Spanish, and every day as it is written in Spain", () => {
    const said = letters(about("es", "es-ES")).map(read);
    const bare = said.map((text) => text.replaceAll(/https?:\S+|Tidewheel Mill|Dry hire|Marquetry|Calloway|Brandt/g, ""));
    for (const text of bare) expect(text).not.toMatch(/\b(the|and|with|of|is|your|you|layout|day|due|see|has|mail|Dear|Saturday)\b/i);
    expect(said[0]).toContain("sábado, 12 de junio de 2027");
    expect(said[0]).toContain("Hola, Ines Calloway y Theo Brandt:");
    expect(letters(about("es", "es-ES")).every((one) => one.lang === "es")).toBe(true);
    const all = said.join("\n");
    for (const phrase of MAIL_PHRASES) if (phrase.length > 12 && !phrase.includes("{")) expect(all).not.toContain(phrase);
  });

  it("leave no sentence of the catalogue unused: what is translated is what is sent", () => {
    const all = letters(about("en-GB", "en-GB")).map(read).join("\n");
    const within = (phrase: string): boolean => phrase.split(/\{\w+\}/).every((part) => all.includes(part));
    expect(MAIL_PHRASES.filter((phrase) => !within(phrase))).toEqual([]);
  });

  it("say “email” in American English, and write the month first", () => {
    const said = letters(about("en-US", "en-US")).map(read).join("\n");
    expect(said).not.toMatch(/\bmail\b(?! server)/);
    expect(BRITISH.exec(said)).toBeNull();
    expect(said).toContain("Saturday, June 12, 2027");
  });
});
