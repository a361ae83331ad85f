import { z } from "zod";
import { dateText, mailAddress } from "../base/schema";
import { isPlainLine, readNames } from "./names";

/** The desk's forms: the same schema reads them in the page and on the server. */

const typed = (read: (text: string) => string = (text) => text.trim()) =>
  z.preprocess((raw) => read(Array.isArray(raw) ? raw.join("\n") : typeof raw === "string" ? raw : ""), z.string());

/** "2027.6.1" and "2027 06 01." are understood; anything else stays as typed. */
const tidyDay = (text: string): string =>
  text.trim().replace(/[./\s]+/g, "-").replace(/-$/, "").replace(/^(\d{4})-(\d)-/, "$1-0$2-").replace(/-(\d)$/, "-0$1");

/** A booking as the desk adds it. Whether the package is the venue's, and the day still ahead, the server alone knows. */
export const BOOKING_FORM = z.object({
  names: typed().superRefine((text, ctx) => {
    const names = readNames(text);
    if (names.length === 0) ctx.addIssue({ code: "custom", message: "Type the names of the couple, such as Ana Silva & Bo Lind." });
    else if (!names.every((one) => one.length <= 200 && isPlainLine(one))) ctx.addIssue({ code: "custom", message: "A name may have up to 200 letters and no control characters." });
  }),
  email: typed().refine((text) => mailAddress.safeParse(text).success, "Type one mail address, such as ana@example.org."),
  date: typed(tidyDay).refine((text) => dateText.safeParse(text).success, "Type the day as year, month, day, such as 2027-06-12."),
  package: typed().refine((text) => text !== "", "Choose one of the packages shown."),
});

const MOST = 4_000;
/** Why a request is returned. */
export const RETURN_FORM = z.object({
  reason: typed((text) => text.replace(/\r\n?/g, "\n").trim())
    .refine((text) => text !== "", "Say what should change: the couple reads these words.")
    .refine((text) => text.length <= MOST, "Keep the reason under 4,000 characters."),
});
