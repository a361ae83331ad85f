export type Sending = "idle" | "sending" | "offline" | "failed";

type Sent = { readonly kind: "to"; readonly to: string } | { readonly kind: "offline" } | { readonly kind: "failed" };

/** Sends the form as the browser would, and hears where the answer leads. */
async function once(form: HTMLFormElement, submitter: HTMLElement | null): Promise<Sent> {
  const body = new URLSearchParams();
  for (const [name, value] of new FormData(form)) if (typeof value === "string") body.append(name, value);
  if (submitter instanceof HTMLButtonElement && submitter.name) body.append(submitter.name, submitter.value);
  try {
    const answer = await fetch(form.getAttribute("action") ?? "", { method: "POST", headers: { Accept: "application/json" }, body });
    if (!answer.ok) return { kind: answer.status >= 502 && answer.status <= 504 ? "offline" : "failed" };
    const said: unknown = await answer.json();
    return typeof said === "object" && said !== null && "to" in said && typeof said.to === "string" ? { kind: "to", to: said.to } : { kind: "failed" };
  } catch {
    return { kind: "offline" };
  }
}

/** Goes on to where the answer leads. The same page again is fetched anew. */
function goTo(to: string): void {
  const next = new URL(to, location.href);
  const same = next.pathname === location.pathname && next.search === location.search;
  if (!same) { location.assign(next.href); return; }
  if (next.hash) history.replaceState(null, "", next.href);
  location.reload();
}

const FIRST_WAIT = 2_000;
const LONGEST_WAIT = 30_000;

/** One form's sending: while there is no connection it is tried again, at once when the connection or the person is back. */
export function sender(form: HTMLFormElement, tell: (state: Sending) => void): { readonly send: (submitter: HTMLElement | null) => void; readonly stop: () => void } {
  let busy = false, stopped = false;
  let wake = (): void => undefined;
  const pause = (ms: number): Promise<void> => new Promise((resolve) => {
    const timer = setTimeout(resolve, ms);
    wake = () => { clearTimeout(timer); resolve(); };
  });
  const back = (): void => wake();
  window.addEventListener("online", back);
  async function run(submitter: HTMLElement | null): Promise<void> {
    busy = true;
    tell("sending");
    for (let wait = FIRST_WAIT; !stopped; wait = Math.min(wait * 2, LONGEST_WAIT)) {
      const sent = await once(form, submitter);
      if (sent.kind === "to") { goTo(sent.to); break; }
      tell(sent.kind);
      if (sent.kind === "failed") break;
      await pause(wait);
    }
    busy = false;
  }
  return {
    send: (submitter) => { if (busy) wake(); else void run(submitter); },
    stop: () => { stopped = true; wake(); window.removeEventListener("online", back); },
  };
}
