import { fail, ok, type Result } from "../base";

export type HeaderFault = { readonly code: "header"; readonly field: string };

/** Text for one header field. A line break or another control would let its writer add fields of their own: refused, not mended. */
export function headerText(field: string, value: string): Result<string, HeaderFault> {
  if (/[\u0000-\u001f\u007f-\u009f\u2028\u2029]/u.test(value)) return fail({ code: "header", field });
  return ok(value);
}

/** One address and nothing else: at most 254 characters (RFC 5321, 4.5.3.1.3 less its brackets), no list, no name, no comment. */
export function singleAddress(value: string): Result<string, HeaderFault> {
  if (value.length > 254 || !/^[^\s@<>(),;:"\\[\]\u0000-\u001f\u007f]+@[^\s@<>(),;:"\\[\]\u0000-\u001f\u007f]+$/u.test(value)) return fail({ code: "header", field: "to" });
  const at = value.lastIndexOf("@");
  if (at > 64) return fail({ code: "header", field: "to" });
  return ok(value);
}
