export { answersOf, type Answer, type AnswerGroup } from "./answers";
export type { Bookmark, Content, Element, Page, PaperDocument, Tag } from "./document";
export { A4, LETTER, sheetFor, type Sheet } from "./frame";
export { inReadersWords, proposalPaper, type ProposalInput, type ProposalMeta, type ProposalTools } from "./proposal";
export type { Measure } from "./type";
export { sheetsPaper, type SheetsInput, type SheetsMeta, type SheetsTools } from "./sheets";
export { calendarFile, folded, type CalendarInput } from "./calendar";
