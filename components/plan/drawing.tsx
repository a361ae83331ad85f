import type { ReactNode } from "react";
import { hold } from "./markup";
import { Painted } from "./painted";

type Props = { readonly svg: string; readonly caption?: ReactNode; readonly aside?: ReactNode };

/** A drawing in its double frame, for the server's own parts of a page. */
export function DrawingSheet({ svg, caption, aside }: Props) {
  return (
    <figure className="drawing">
      <div>
        {svg !== "" && <Painted svg={hold(svg)} />}
        {(caption || aside) && <figcaption><span>{caption}</span>{aside}</figcaption>}
      </div>
    </figure>
  );
}
