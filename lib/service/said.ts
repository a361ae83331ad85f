import type { HistoryRow } from "../store";
import { sayLeft } from "../words/left";
import { ENGLISH } from "../words/pages/say";

const STEP_NAMES: Readonly<Record<string, string>> = {
  guests: "Guests", ceremony: "Ceremony", meal: "Meal and tables", music: "Music and dancing", displays: "Displays", extras: "Extras",
};

/** A line of the history in words, without its moment. */
export function sayEntry({ what, data }: Pick<HistoryRow, "what" | "data">): string {
  const text = (name: string): string => { const value = data[name]; return typeof value === "string" || typeof value === "number" ? String(value) : ""; };
  switch (what) {
    case "added": return "Added by the desk.";
    case "link-mailed": return "Their link was mailed.";
    case "link-asked": return "They asked for a fresh link.";
    case "opened": return "They opened their link.";
    case "saved": return `They saved ${STEP_NAMES[text("step")] ?? text("step")}.`;
    case "chosen": return `They chose ${text("title") || `layout ${text("layout")}`}.`;
    case "sent": return `Revision ${text("number")} came in.`;
    case "returned": return `Revision ${text("number")} was returned.`;
    case "agreed": return `Revision ${text("number")} was agreed.`;
    case "reminded": return `They were reminded, ${Number(text("days")) < 0 ? "" : "due "}${sayLeft(Number(text("days")), ENGLISH)}.`;
    case "overdue": return "Nothing had come by the due date.";
    case "set-by-venue": return `Nothing had come by the due date: the standard layout "${text("title")}" was set by the venue. It is not agreed.`;
    case "closed": return "Closed.";
    case "quiet": return "They want no more reminders.";
    case "erased": return "Their names and words were erased.";
    case "look-link-made": return "They made a link for someone to look.";
    case "look-link-withdrawn": return "They withdrew a look-only link.";
    case "change-asked": return "They asked for a change of what is agreed.";
    case "drafted": return `A draft was made for them: ${text("title")}.`;
    case "guests-set": return `The desk put ${text("adults")} adults in, for a draft.`;
    case "changed": return `The agreed layout was changed: revision ${text("number")}.`;
    case "amended": return `The desk adjusted it: revision ${text("number")}.`;
    case "numbers-told": return `Final numbers: ${text("guests")}.`;
    case "numbers-asked": return "They were asked for their final numbers.";
    case "address-changed": return "Their mail address was changed.";
    case "draft-asked": return "They asked for a draft.";
    case "erasure-asked": return "They asked for what is kept of them to be erased.";
    default: return what;
  }
}
