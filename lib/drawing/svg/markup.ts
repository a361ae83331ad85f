/** What a first look finds in hardly any text: then there is nothing to do. */
const ODD = /[\u0000-\u001f\ud800-\udfff\ufffe\uffff]/, MEANING = /[&<>"']/;

/** Text without the characters that XML 1.0 forbids. */
export const allowedText = (text: string): string => (ODD.test(text)
  ? text.replace(/[\u0000-\u0008\u000b\u000c\u000e-\u001f\ufffe\uffff]|[\ud800-\udbff](?![\udc00-\udfff])|(?<![\ud800-\udbff])[\udc00-\udfff]/g, "") : text);

/** Text made fit for XML: what cannot stand in it is dropped, what means something in it is written out. */
export function escapeText(text: string): string {
  const fit = allowedText(text);
  return MEANING.test(fit) ? fit.replace(/&/g, "&amp;").replace(/</g, "&lt;").replace(/>/g, "&gt;").replace(/"/g, "&quot;").replace(/'/g, "&#39;") : fit;
}

export type Attributes = Readonly<Record<string, string | number | undefined>>;

/** A figure in the fewest characters that keep a hundredth of a millimetre. */
export const figure = (n: number): string => {
  const text = (Math.round(n * 100) / 100 + 0).toString();
  return text.startsWith("0.") ? text.slice(1) : text.startsWith("-0.") ? `-${text.slice(2)}` : text;
};

/** Attributes as they are written, in their order; those without a value are left out. */
export const written = (given: Attributes): readonly (readonly [string, string])[] =>
  Object.entries(given).flatMap(([name, value]) => (value === undefined ? [] : [[name, typeof value === "number" ? figure(value) : allowedText(value)] as const]));

/** One element: what every painter of SVG makes of a mark. It holds words or other elements, never both. */
export type SvgNode = { readonly name: string; readonly attributes: Attributes; readonly words?: string; readonly inner?: readonly SvgNode[] };

/** The element as text, the same bytes for the same element. */
export function markup({ name, attributes, words, inner }: SvgNode): string {
  let text = `<${name}`;
  for (const [key, value] of Object.entries(attributes)) {
    if (value !== undefined) text += ` ${key}="${typeof value === "number" ? figure(value) : escapeText(value)}"`;
  }
  if (words === undefined && !inner) return `${text}/>`;
  text += ">";
  if (words !== undefined) text += escapeText(words);
  else for (const one of inner ?? []) text += markup(one);
  return `${text}</${name}>`;
}
