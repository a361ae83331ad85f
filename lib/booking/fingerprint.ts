import { canonicalJson } from "./canonical";
import { withoutNames } from "./without-names";

/** All that a revision's fingerprint answers for: change any of it and the fingerprint is another. */
export type Sealed = {
  readonly reference: string;
  readonly number: number;
  /** The venue's file by its own hash: rooms, prices and rules as they stood. */
  readonly venue: { readonly id: string; readonly version: number; readonly hash: string };
  readonly brief: unknown;
  readonly layout: unknown;
  readonly quote: unknown;
  readonly findings: unknown;
  /** SHA-256 of `wholeText`, kept beside the revision: it stays when the names go. */
  readonly whole: string;
};

/** The text whose SHA-256 stands for a revision to the last word. The salt goes with the names: what is left gives no name away to a guesser. */
export function wholeText({ brief, layout, quote, findings }: Pick<Sealed, "brief" | "layout" | "quote" | "findings">, salt: string): string {
  return canonicalJson({ format: "marquetry.whole/1", salt, brief, layout, quote, findings });
}

/**
 * The text whose SHA-256 is the fingerprint. The fields are named here, so that nothing slips in or out unseen. What may be erased one day
 * stands in it by `whole` alone: with the names gone the same fingerprint still comes out.
 */
export function sealedText({ reference, number, venue, whole, ...texts }: Sealed): string {
  const { brief, layout, quote, findings } = withoutNames(texts);
  return canonicalJson({
    format: "marquetry.sealed/2", reference, number,
    venue: { id: venue.id, version: venue.version, hash: venue.hash }, brief, layout, quote, findings, whole,
  });
}

/** The text of revisions that were sent before `whole` was kept. */
export function sealedTextBefore({ reference, number, venue, brief, layout, quote, findings }: Omit<Sealed, "whole">): string {
  return canonicalJson({
    format: "marquetry.sealed/1", reference, number,
    venue: { id: venue.id, version: venue.version, hash: venue.hash }, brief, layout, quote, findings,
  });
}
