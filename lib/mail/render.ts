import { assertNever } from "../base";
import type { Block, Message } from "./message";

/** The message as plain text. */
export function asText(message: Message): string {
  return `${message.blocks.map(blockText).join("\n\n")}\n`;
}

function blockText(block: Block): string {
  switch (block.kind) {
    case "text": return block.text;
    case "quote": return block.text.split("\n").map((line) => `> ${line}`).join("\n");
    case "link": return `${block.text}:\n${block.href}`;
    case "facts": return block.facts.map(([name, value]) => `${name}: ${value}`).join("\n");
    default: return assertNever(block);
  }
}

/** The message as a page: no pictures, no scripts, nothing fetched. */
export function asHtml(message: Message): string {
  const body = message.blocks.map(blockHtml).join("\n");
  return `<!doctype html>
<html lang="${escape(message.lang)}"><head><meta charset="utf-8"><meta name="viewport" content="width=device-width"><title>${escape(message.subject)}</title></head>
<body style="margin:0;background:#f6f1e7;color:#2a2520;font:16px/1.5 Georgia,serif"><div style="max-width:34em;margin:0 auto;padding:24px">
${body}
</div></body></html>
`;
}

function blockHtml(block: Block): string {
  switch (block.kind) {
    case "text": return `<p>${lines(block.text)}</p>`;
    case "quote": return `<blockquote style="margin:0 0 1em;padding:0 0 0 12px;border-left:3px solid #1f5a72">${lines(block.text)}</blockquote>`;
    case "link": return `<p><a href="${escape(block.href)}" style="color:#1f5a72;font-weight:bold">${escape(block.text)}</a><br><span style="font-size:14px;word-break:break-all">${escape(block.href)}</span></p>`;
    case "facts": return `<table style="border-collapse:collapse;margin:0 0 1em">${block.facts.map(([name, value]) =>
      `<tr><th scope="row" style="text-align:left;font-weight:normal;padding:2px 16px 2px 0;vertical-align:top">${escape(name)}</th><td style="padding:2px 0;word-break:break-word">${escape(value)}</td></tr>`).join("")}</table>`;
    default: return assertNever(block);
  }
}

const lines = (words: string): string => escape(words).replaceAll("\n", "<br>");
const escape = (words: string): string =>
  words.replaceAll("&", "&amp;").replaceAll("<", "&lt;").replaceAll(">", "&gt;").replaceAll('"', "&quot;").replaceAll("'", "&#39;");
