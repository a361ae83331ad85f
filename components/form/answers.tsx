import type { ReactNode } from "react";

export type Answer = { readonly name: string; readonly said: ReactNode; readonly step?: string };

/** Answers as they were given; each with the way back to its question when it may still be changed. */
export function Answers({ answers }: { readonly answers: readonly Answer[] }) {
  return (
    <dl className="answers">
      {answers.map((a) => (
        <div key={a.name}>
          <dt>{a.name}</dt>
          <dd>{a.said}</dd>
          {a.step && <dd className="change"><a href={`/request/${a.step}?back=send`}>Change<span className="hidden-words"> {a.name.toLowerCase()}</span></a></dd>}
        </div>
      ))}
    </dl>
  );
}
