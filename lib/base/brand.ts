declare const brand: unique symbol;
/** A nominal type over T: made once at the edge, never cast inside. */
export type Brand<T, Name extends string> = T & { readonly [brand]: Name };
