import { createHash, randomBytes } from "node:crypto";

/** A secret for a link or a session: 192 random bits, as 32 letters of base64url. */
export const makeSecret = (): string => randomBytes(24).toString("base64url");

/** What is stored of a secret. A fast hash is enough: nobody guesses 192 random bits. */
export const hashSecret = (secret: string): string => createHash("sha256").update(secret, "utf8").digest("hex");

/** SHA-256 of a text as 64 hex digits. */
export const sha256 = (text: string): string => createHash("sha256").update(text, "utf8").digest("hex");

/** Could this be one of our secrets? Spares the database a question for nonsense. */
export const isSecret = (text: string): boolean => /^[A-Za-z0-9_-]{32}$/.test(text);
