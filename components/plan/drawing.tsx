import type { ReactNode } from "react";

export type TwoWidths = { readonly wide: string; readonly narrow: string };
type Props = { readonly svg: string | TwoWidths | undefined; readonly caption?: ReactNode; readonly aside?: ReactNode };

/** A drawing in its double frame. The markup comes from our own painter, which alone writes and escapes it. */
export function DrawingSheet({ svg, caption, aside }: Props) {
  return (
    <figure className="drawing">
      <div>
        {typeof svg === "string" && <div dangerouslySetInnerHTML={{ __html: svg }} />}
        {typeof svg === "object" && (
          <>
            <div className="drawing-wide" dangerouslySetInnerHTML={{ __html: svg.wide }} />
            <div className="drawing-narrow" dangerouslySetInnerHTML={{ __html: svg.narrow }} />
          </>
        )}
        {(caption || aside) && <figcaption><span>{caption}</span>{aside}</figcaption>}
      </div>
    </figure>
  );
}
