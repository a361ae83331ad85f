/** Text made fit for XML: what cannot stand in it is dropped, what means something in it is written out. */
export const escapeText = (text: string): string =>
  // These are exactly the characters that XML 1.0 forbids
  text.replace(/[\u0000-\u0008\u000b\u000c\u000e-\u001f\ufffe\uffff]|[\ud800-\udbff](?![\udc00-\udfff])|(?<![\ud800-\udbff])[\udc00-\udfff]/g, "")
    .replace(/&/g, "&amp;").replace(/</g, "&lt;").replace(/>/g, "&gt;").replace(/"/g, "&quot;").replace(/'/g, "&#39;");

export type Attributes = Readonly<Record<string, string | number | undefined>>;

/** A figure in the fewest characters that keep a hundredth of a millimetre. */
export const figure = (n: number): string => {
  const text = (Math.round(n * 100) / 100 + 0).toString();
  return text.startsWith("0.") ? text.slice(1) : text.startsWith("-0.") ? `-${text.slice(2)}` : text;
};

const attributes = (given: Attributes): string => {
  let text = "";
  for (const [name, value] of Object.entries(given)) {
    if (value === undefined) continue;
    text += ` ${name}="${typeof value === "number" ? figure(value) : escapeText(value)}"`;
  }
  return text;
};

/** One element. `inner` is markup already; use `escapeText` for words. */
export const element = (name: string, given: Attributes, inner?: string): string =>
  inner === undefined ? `<${name}${attributes(given)}/>` : `<${name}${attributes(given)}>${inner}</${name}>`;
