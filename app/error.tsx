"use client";

/** The page could not be made. It says what became of the answers, and where to ask. */
export default function Failed({ error }: { readonly error: Error & { readonly digest?: string } }) {
  return (
    <div className="wrap">
      <main id="main">
        <h1 className="mt-8">This page could not be made</h1>
        <div className="prose mt-4">
          <p className="lead">What you saved before is kept. What you typed on the last page may not be: go back with your browser, it is usually still there.</p>
          <p>Try again in a minute. If it happens again, tell the venue{error.digest ? <> this number: <b>{error.digest}</b></> : ""}.</p>
        </div>
      </main>
    </div>
  );
}
