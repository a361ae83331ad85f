/** Raised whenever the same files may give another answer; cached answers are keyed by it. */
export const ENGINE_VERSION = "0.7.0";
