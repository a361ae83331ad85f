import type { ReactNode } from "react";

/** A drawing in its double frame. `svg` comes from our own painter, which alone writes and escapes it. */
export function DrawingSheet({ svg, caption, aside }: { readonly svg: string; readonly caption?: ReactNode; readonly aside?: ReactNode }) {
  return (
    <figure className="drawing">
      <div>
        <div dangerouslySetInnerHTML={{ __html: svg }} />
        {(caption || aside) && <figcaption><span>{caption}</span>{aside}</figcaption>}
      </div>
    </figure>
  );
}
