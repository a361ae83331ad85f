export { singleAddress, type HeaderFault } from "./header";
export type { Block, Message } from "./message";
export * as messages from "./messages";
export type { About } from "./about";
export { withoutKeys } from "./redact";
export { asHtml, asText } from "./render";
export { smtp, type SmtpServer } from "./smtp";
export { mailbox, nowhere, type Letter, type Sent, type Transport } from "./transport";
