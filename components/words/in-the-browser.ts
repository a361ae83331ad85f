import { CAUTIONS } from "@/lib/words/cautions";
import type { Phrase } from "@/lib/words/pages/say";

/** What is said in the browser: it alone is sent along with a page in another language. A test finds what is missing. */
export const IN_THE_BROWSER: readonly Phrase[] = [
  "Error: ", "{n} answers need another look", "What you typed is still here; nothing on this page is saved yet.",
  "Saving…", "Not saved: there is no connection. What you typed is still here; we try again until it is saved. Keep this page open.",
  "Not saved: the answer was not what was expected. What you typed is still here; press again in a moment.",
  // Messages of the schemas, which check a form in the page as well.
  "Type a whole number from {a} to {b}, or leave it empty if you are not sure yet.", "Type a whole number from {a} to {b}.", "Type a share from {a} to {b}, or leave it empty if you are not sure yet.",
  "There must be at least one adult.", "High chairs cannot outnumber the children.", "Adults and children together can be at most {a}.", "Wheelchair places cannot outnumber the guests.",
  "Quiet places cannot outnumber the guests.", "Choose one of the answers shown.", "Choose yes, no, or not sure yet.", "Choose one of the rooms shown.", "Choose from the list shown.",
  "Choose comfort or most, or type a number from {a} to {b}.", "Choose from the wishes shown.", "Keep the notes under {a} characters.",
  // What an answer does.
  "What this does", "Plan", "In words", "{part}: one way to lay these answers, not saved yet.", "{part}: one way to lay your answers so far.", "Laying it out.", "Laying it out: way {way}, of {of} at the most.", "Stop",
  "Stopped. What is drawn is what was there before; change an answer to go on.", "Look now",
  "Your answers are still being laid out. The drawing stands here when you look again; anything typed since is best saved first.",
  "Extra to pay, laid this way: {money}", "Nothing extra to pay, laid this way", "How many the rows seat", "How many the tables seat", "{n} in comfort.", "{n} at the most.", "{n} is the ceiling:", "{guests} of you",
  "{comfort} in comfort, {most} at the most", "{comfort} in comfort, {most} at the most, {ceiling} the ceiling", "{comfort} in comfort, {most} at the most, {ceiling} the ceiling; you are {guests}",
  "Counted with the chairs alone, the standing furniture in its place. Carrying pieces out makes room, a dance floor or a buffet takes it; your layout shows what comes of it.",
  "Counted with the tables alone, the standing furniture in its place. Carrying pieces out makes room, a dance floor or a buffet takes it; your layout shows what comes of it.", CAUTIONS,
  "Fee summary", "Nothing in this layout is charged beyond your package.", "What", "How many", "Each", "Total", "included", "Extra to pay", "of which {tax}", "with {tax} of",
  // What the checks find while a piece is moved, and where it comes from.
  "Must", "Should", "Note", "common practice, no source", "common practice, no published source", "the brief", "the venue's stock", "the package", "geometry of the plan", "form of the layout", "the venue's standing furniture",
  "the venue's plan of the room", "the venue's drapes", "the couple's wish", "the brief's times", "the authority's posted figure",
  // Plans under the hand, and the wait for them.
  "{name}, drawn. Arrow keys move it when it is enlarged.", "{name}: how it is shown", "Larger", "Smaller", "Whole", "Left", "Right", "Up", "Down", "Ways out", "Dimensions", "Read a piece", "Tap one, or choose",
  "Looking at way {way}, of {of} at the most.", "Beginning.", "How far the layouts are worked out", "First way found",
  "The first way found in your browser meanwhile. What you choose from is worked out by the venue’s own engine.",
];
