import type { IncomingMessage, ServerResponse } from "node:http";

type Facts = { readonly nonce: string; /** The answer's number, under which the fault stands in the log. */ readonly id: string };

const page = ({ nonce, id }: Facts): string => `<!doctype html>
<html lang="en-GB"><head><meta charset="utf-8"><meta name="viewport" content="width=device-width, initial-scale=1"><meta name="color-scheme" content="light dark"><title>This page could not be made</title>
<style nonce="${nonce}">
body{margin:0;font:1.0625rem/1.5 system-ui,sans-serif;background:#f2eee3;color:#1d1a16}
main{max-width:38rem;margin:0 auto;padding:3rem 1rem}
h1{font:500 2.25rem/1.1 Georgia,serif;margin:0 0 1rem}
a{color:#00506b}
@media (prefers-color-scheme:dark){body{background:#171411;color:#efe9dc}a{color:#8fd0e6}}
</style></head>
<body><main id="main"><h1>This page could not be made</h1>
<p>What you saved before is kept. What you typed on the last page may not be: go back with your browser, it is usually still there.</p>
<p><a href="">Try again</a> in a minute. If it happens again, tell the venue this number: <b>${id}</b>.</p>
</main></body></html>
`;

/**
 * A page that broke is answered by one that needs no script: the framework's own is empty without. What it writes after that goes
 * nowhere. Anything but a page, and any answer that has begun, is left alone.
 */
export function mendBroken(request: IncomingMessage, response: ServerResponse, facts: Facts): void {
  if (!(request.headers.accept ?? "").includes("text/html")) return;
  const write = response.write.bind(response), end = response.end.bind(response), head = response.writeHead.bind(response);
  let swapped = false;
  const broken = (status: number): boolean => {
    if (swapped) return true;
    if (status < 500 || response.headersSent || String(response.getHeader("content-type") ?? "text/html").startsWith("text/plain")) return false;
    swapped = true;
    for (const name of ["content-length", "content-encoding", "etag", "link"]) response.removeHeader(name);
    response.setHeader("Content-Type", "text/html; charset=utf-8");
    head(status);
    end(request.method === "HEAD" ? undefined : page(facts));
    return true;
  };
  response.writeHead = ((status: number, ...rest: never[]) => (broken(status) ? response : head(status, ...rest))) as typeof head;
  response.write = ((...parts: Parameters<typeof write>) => (broken(response.statusCode) ? true : write(...parts))) as typeof write;
  response.end = ((...parts: Parameters<typeof end>) => (broken(response.statusCode) ? response : end(...parts))) as typeof end;
}
