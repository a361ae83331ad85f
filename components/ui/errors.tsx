/** One answer that could not be kept as given: the field's name in the form, and how to mend it. */
export type FieldError = { readonly field: string; readonly message: string };

export const errorOf = (errors: readonly FieldError[], field: string): string | undefined =>
  errors.find((e) => e.field === field)?.message;

/** Takes the focus when the page opens, and links each message to its field. */
export function ErrorSummary({ errors, saved = false }: { readonly errors: readonly FieldError[]; readonly saved?: boolean }) {
  if (errors.length === 0) return null;
  const head = errors.length === 1 ? "One answer needs another look" : `${errors.length} answers need another look`;
  return (
    <div className="errors" role="alert" tabIndex={-1} autoFocus aria-labelledby="errors-head">
      <h2 id="errors-head">{head}</h2>
      <ul>{errors.map((e) => <li key={`${e.field}:${e.message}`}><a href={`#${e.field}`}>{e.message}</a></li>)}</ul>
      {!saved && <p className="note sec">What you typed is still here; nothing on this page is saved yet.</p>}
    </div>
  );
}
