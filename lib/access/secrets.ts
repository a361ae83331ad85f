import { createHash, randomBytes } from "node:crypto";

/** A secret for a link or a session: 192 random bits, as 32 letters of base64url. */
export const makeSecret = (): string => randomBytes(24).toString("base64url");

/** What is stored of a secret. A fast hash is enough: nobody guesses 192 random bits. */
export const hashSecret = (secret: string): string => createHash("sha256").update(secret, "utf8").digest("hex");

/** SHA-256 of a text as 64 hex digits. */
export const sha256 = (text: string): string => createHash("sha256").update(text, "utf8").digest("hex");

/** Letters and digits that are not mistaken for one another when they are read off one screen and typed into another. */
const TYPED = "ACDEFGHJKMNPQRTWXY34679";
/**
 * A code to be typed: eight signs of 23, some 36 random bits, such as KMRT-WX4D. Whoever tries 1,000 a second hits it within its ten
 * minutes with a chance of one in 130,000.
 */
export function makeCode(): string {
  const signs: string[] = [];
  // Bytes past the last whole turn of the alphabet would favour its beginning.
  while (signs.length < 8) for (const byte of randomBytes(16)) if (byte < 256 - (256 % TYPED.length) && signs.length < 8) signs.push(TYPED.charAt(byte % TYPED.length));
  return `${signs.slice(0, 4).join("")}-${signs.slice(4).join("")}`;
}

/** What is stored of a code: it opens for its person alone. */
export const hashCode = (person: string, code: string): string => hashSecret(`code ${person} ${code.toUpperCase().replace(/[^A-Z0-9]/g, "")}`);

/** Could this be one of our secrets? Spares the database a question for nonsense. */
export const isSecret = (text: string): boolean => /^[A-Za-z0-9_-]{32}$/.test(text);
