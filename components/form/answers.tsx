import type { ReactNode } from "react";
import { ENGLISH, type Say } from "@/lib/words/pages/say";

export type Answer = { readonly name: string; readonly said: ReactNode; readonly step?: string };

/** Answers as they were given; each with the way back to its question when it may still be changed. */
export function Answers({ answers, say = ENGLISH }: { readonly answers: readonly Answer[]; readonly say?: Say }) {
  return (
    <dl className="answers">
      {answers.map((a) => (
        <div key={a.name}>
          <dt>{a.name}</dt>
          <dd>{a.said}</dd>
          {a.step && <dd className="change"><a href={`/request/${a.step}?back=send`}>{say("Change")}<span className="hidden-words"> {a.name.toLowerCase()}</span></a></dd>}
        </div>
      ))}
    </dl>
  );
}
