import { canonicalJson } from "./canonical";

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
};

/** The text whose SHA-256 is the fingerprint. The fields are named here, so that nothing slips in or out unseen. */
export function sealedText({ reference, number, venue, brief, layout, quote, findings }: Sealed): string {
  return canonicalJson({
    format: "marquetry.sealed/1", reference, number,
    venue: { id: venue.id, version: venue.version, hash: venue.hash }, brief, layout, quote, findings,
  });
}
