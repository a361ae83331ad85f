/** Seconds after which a page that waits looks again. */
const AGAIN = 4;

type Props = { readonly what: string; readonly again: string; /** How far it is, where that is known. */ readonly progress?: { readonly done: number; readonly of: number } };

/** Said while the engine is at it: the page looks again by itself, with scripts and without, and by its link. */
export function StillWorking({ what, again, progress }: Props) {
  return (
    <div className="mt-8" role="status">
      <meta httpEquiv="refresh" content={String(AGAIN)} />
      <p className="lead">{what} being worked out{progress && progress.of > 0 ? `: ${progress.done} of ${progress.of} attempts made` : ""}. This page looks again by itself.</p>
      {progress && progress.of > 0 && <progress className="work-progress mt-3" max={progress.of} value={progress.done} aria-label="Attempts made" />}
      <p className="mt-3"><a href={again}>Look again now</a></p>
    </div>
  );
}
