import { CAUTIONS } from "@/lib/words/cautions";

/** Stands with every plan, and is never folded away. */
export function Caution() {
  return <p className="caution">{CAUTIONS}</p>;
}
