import { CAUTIONS } from "@/lib/words/cautions";
import { ENGLISH, type Say } from "@/lib/words/pages/say";

/** Stands with every plan, and is never folded away. */
export function Caution({ say = ENGLISH }: { readonly say?: Say }) {
  return <p className="caution">{say.given(CAUTIONS)}</p>;
}
