/** What the core may be handed, and never takes for itself. */
export type Clock = { readonly now: () => number };
export type Ids = { readonly next: () => string };
