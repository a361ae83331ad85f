import { randomBytes } from "node:crypto";
import { readConfig } from "../config";
import { asHtml, asText, messages, singleAddress } from "../mail";
import { transportOf } from "../server/transport";

/** `npm run mail:test -- ADDRESS`: sends one mail by the settings and says how it fared. Exit 0: taken by the server; 1: not; 2: a setting or the address is wrong. */
const say = (words: string): void => { process.stderr.write(`${words}\n`); };

async function run(to: string | undefined): Promise<number> {
  const config = readConfig();
  if (!config.ok) return wrong(config.error.join("\n"));
  const { mailUrl, mailFrom } = config.value;
  if (mailUrl === undefined) return wrong("MAIL_URL: not set. Give it the mail server, such as MAIL_URL=smtp://mail.example.org:587");
  if (to === undefined || !singleAddress(to).ok) return wrong("Give it the address to write to: npm run mail:test -- ana@example.org");
  const transport = transportOf(config.value);
  if (!transport.ok) return wrong(transport.error);
  const message = messages.trial(config.value.origin);
  const sent = await transport.value.send({
    from: { name: "Marquetry", address: mailFrom }, to, subject: message.subject, text: asText(message), html: asHtml(message),
    messageId: `<${randomBytes(16).toString("hex")}${mailFrom.slice(mailFrom.lastIndexOf("@"))}>`, date: new Date().toISOString(),
  });
  transport.value.close();
  say(sent.ok ? `${new URL(mailUrl).host} took the mail to ${to}. Look whether it arrives, and not among the unwanted.` : `${new URL(mailUrl).host} did not take the mail: ${sent.why}`);
  return sent.ok ? 0 : 1;
}

function wrong(words: string): number {
  say(words);
  return 2;
}

process.exitCode = await run(process.argv[2]);
