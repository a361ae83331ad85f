import type { Finding, Level } from "@/lib/layout";
import { ENGLISH, type Say } from "@/lib/words/pages/say";

const WORD = { must: "Must", should: "Should", note: "Note" } as const;
const FILL: Record<Level, string> = { must: "M1 1h12v12H1z", should: "M13 1V13H1z", note: "" };

/** Weight by shape and word: a full square, a half, an open one. */
export function Weight({ level, count, say = ENGLISH }: { readonly level: Level; readonly count: number; readonly say?: Say }) {
  return (
    <h3 className="finding-level">
      <svg viewBox="0 0 14 14" aria-hidden="true" focusable="false"><path className="lozenge-edge" d="M1 1h12v12H1z" />{FILL[level] && <path className="lozenge-fill" d={FILL[level]} />}</svg>
      {say(WORD[level])} <span className="n">{count}</span>
    </h3>
  );
}

type FindingsProps = { readonly findings: readonly Finding[]; readonly levels?: readonly Level[]; readonly sceneWord: (id: string) => string; readonly say?: Say };

export function Findings({ findings, levels = ["must", "should", "note"], sceneWord, say = ENGLISH }: FindingsProps) {
  return (
    <>
      {levels.map((level) => {
        const own = findings.filter((f) => f.level === level);
        return (
          <div key={level}>
            <Weight level={level} count={own.length} say={say} />
            {own.length === 0
              ? <p className="findings-none">{say("None found by the checks that were made.")}</p>
              : (
                <ul className="findings">
                  {own.map((f, i) => (
                    <li key={`${f.code}-${i}`}>
                      {f.text}
                      <span className="source">{f.scene ? `${sceneWord(f.scene)}; ` : ""}{say.given(f.source)}</span>
                    </li>
                  ))}
                </ul>
              )}
          </div>
        );
      })}
    </>
  );
}
