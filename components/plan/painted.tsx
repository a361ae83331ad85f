"use client";
import { taken, type Markup, type TwoWidths } from "./markup";

/** A drawing as the server painted it. The markup comes from our own painter, which alone writes and escapes it. */
export function Painted({ svg, className }: { readonly svg: Markup; readonly className?: string }) {
  // Woken in the browser, the page keeps what stands in it: React leaves inner markup alone that it is told not to warn of.
  return <div className={className} suppressHydrationWarning dangerouslySetInnerHTML={{ __html: taken(svg) }} />;
}

/** The same for a phone and for a wide page; the style sheet shows one of them. */
export const PaintedBoth = ({ svg: { wide, narrow } }: { readonly svg: TwoWidths }) => <><Painted className="drawing-wide" svg={wide} /><Painted className="drawing-narrow" svg={narrow} /></>;
