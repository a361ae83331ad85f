import type { Phrase, Say } from "@/lib/words/pages";

type Why = "unknown" | "expired" | "used" | "revoked";

const WORDS: Readonly<Record<Why, Phrase>> = {
  expired: "This link has run out. Links do, so that an old mail opens nothing.",
  used: "This link has been used already. Each opens once.",
  revoked: "A newer link has taken its place, or the venue has withdrawn it.",
  unknown: "This link opens nothing. Perhaps a part of it was lost on the way from the mail.",
};

/** Why a link does not open, and the way to a fresh one. The answer is the same whether the link is known or not. */
export function LinkEnded({ why, linkKey, say }: { readonly why: Why; readonly linkKey: string; readonly say: Say }) {
  return (
    <>
      <h1 className="mt-4">{say("This link does not open any more")}</h1>
      <p className="lead measure mt-4">{say(WORDS[why])}</p>
      <p className="measure mt-3">{say("Nothing you answered is lost. We can mail a fresh link to the address that stands in the booking.")}</p>
      <form method="post" action="/open/ask" className="go-row">
        <input type="hidden" name="key" value={linkKey} />
        <button className="btn btn-go" type="submit">{say("Mail a fresh link")}</button>
      </form>
    </>
  );
}
