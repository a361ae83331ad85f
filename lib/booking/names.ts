/** Who a booking is for, as typed on one line or several: "Ana & Bo", "Ana and Bo", "Ana, Bo", one a line. At most four. */
export function readNames(text: string): readonly string[] {
  return text.split(/\r?\n|,|、|;|&|\+|\s+and\s+/iu).map((one) => one.normalize("NFC").replace(/\s+/gu, " ").trim()).filter((one) => one !== "").slice(0, 4);
}

/** Control characters would break a mail's header and a line of a paper; they have no place in a name. */
export function isPlainLine(text: string): boolean {
  return !/[\u0000-\u001f\u007f-\u009f\u2028\u2029\u202a-\u202e\u2066-\u2069]/u.test(text);
}

/** Who a booking is for, or that this was erased. */
export const shownNames = (names: readonly string[]): readonly string[] => (names.length > 0 ? names : ["Names erased"]);
