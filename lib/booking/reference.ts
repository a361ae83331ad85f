/** Letters and digits that are not mistaken for one another when read out or written down: no 0 O, 1 I L, 5 S, 8 B, 2 Z, U V. */
const LETTERS = "ACDEFGHJKMNPQRTWXY";
const DIGITS = "34679";
const FIRST = LETTERS + DIGITS;

/** A booking's reference such as QK7M-34, drawn from `random` (numbers in [0, 1)). A name, not a secret. */
export function makeReference(random: () => number): string {
  const pick = (from: string): string => from.charAt(Math.floor(random() * from.length));
  return `${pick(LETTERS)}${pick(LETTERS)}${pick(FIRST)}${pick(LETTERS)}-${pick(DIGITS)}${pick(DIGITS)}`;
}

const PATTERN = /^[A-Z][A-Z0-9]{3}-[0-9]{2}$/;
/** A reference as people type it (small letters, spaces about it), or undefined. */
export function readReference(text: string): string | undefined {
  const tidy = text.trim().toUpperCase();
  return PATTERN.test(tidy) ? tidy : undefined;
}
