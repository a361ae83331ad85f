import { Fragment } from "react";

/** Names joined in the reader's language, each isolated, so that one in Arabic does not turn the other about. */
export function Names({ names, locale }: { readonly names: readonly string[]; readonly locale: string }) {
  const parts = new Intl.ListFormat(locale, { type: "conjunction" }).formatToParts(names);
  return <>{parts.map((p, i) => (p.type === "element" ? <bdi key={i}>{p.value}</bdi> : <Fragment key={i}>{p.value}</Fragment>))}</>;
}

export const namesText = (names: readonly string[], locale: string): string =>
  new Intl.ListFormat(locale, { type: "conjunction" }).format(names);
