"use client";
import { useRef, useSyncExternalStore } from "react";
import { taken, type Markup, type TwoWidths } from "./markup";

const never = () => () => undefined;
const idOf = (ticket: Markup): string => `drawn-${ticket}`;

/**
 * What is held on a ticket: on the server the markup; in a browser that wakes the page nothing, since it stands there already; and where
 * the browser builds the page anew, because something had changed it before it was woken, what still stands there.
 */
function useMarkup(ticket: Markup): string {
  const known = useRef<string | null>(null);
  return useSyncExternalStore(never, () => (known.current ??= document.getElementById(idOf(ticket))?.innerHTML ?? ""), () => (known.current = taken(ticket)));
}

/** A drawing as the server painted it. The markup comes from our own painter, which alone writes and escapes it. */
export function Painted({ svg, className }: { readonly svg: Markup; readonly className?: string }) {
  const html = useMarkup(svg);
  // React leaves inner markup alone that it is told not to warn of.
  return <div id={idOf(svg)} className={className} suppressHydrationWarning dangerouslySetInnerHTML={{ __html: html }} />;
}

/** The same for a phone and for a wide page; the style sheet shows one of them. */
export const PaintedBoth = ({ svg: { wide, narrow } }: { readonly svg: TwoWidths }) => <>{wide && <Painted className="drawing-wide" svg={wide} />}{narrow && <Painted className="drawing-narrow" svg={narrow} />}</>;
