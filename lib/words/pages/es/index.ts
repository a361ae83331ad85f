import { pages } from "./pages";
import { plans } from "./plans";
import { questions } from "./questions";

/** Spanish, complete: every phrase of the couple's pages is one of its keys. */
export const es = { ...pages, ...questions, ...plans } as const;
