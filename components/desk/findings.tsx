import type { Finding, Level } from "@/lib/layout";

const WORD: Record<Level, string> = { must: "Must", should: "Should", note: "Note" };
const FILL: Record<Level, string> = { must: "M1 1h12v12H1z", should: "M13 1V13H1z", note: "" };

/** Weight by shape and word: a full square, a half, an open one. */
export function Weight({ level, count }: { readonly level: Level; readonly count: number }) {
  return (
    <h3 className="finding-level">
      <svg viewBox="0 0 14 14" aria-hidden="true" focusable="false"><path className="lozenge-edge" d="M1 1h12v12H1z" />{FILL[level] && <path className="lozenge-fill" d={FILL[level]} />}</svg>
      {WORD[level]} <span className="n">{count}</span>
    </h3>
  );
}

type FindingsProps = { readonly findings: readonly Finding[]; readonly levels?: readonly Level[]; readonly sceneWord: (id: string) => string };

export function Findings({ findings, levels = ["must", "should", "note"], sceneWord }: FindingsProps) {
  return (
    <>
      {levels.map((level) => {
        const own = findings.filter((f) => f.level === level);
        return (
          <div key={level}>
            <Weight level={level} count={own.length} />
            {own.length === 0
              ? <p className="findings-none">None found by the checks that were made.</p>
              : (
                <ul className="findings">
                  {own.map((f, i) => (
                    <li key={`${f.code}-${i}`}>
                      {f.text}
                      <span className="source">{f.scene ? `${sceneWord(f.scene)}; ` : ""}{f.source}</span>
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
