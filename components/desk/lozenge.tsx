import { assertNever } from "@/lib/base";

export type BookingState = "invited" | "started" | "sent" | "returned" | "agreed" | "closed";

const WORDS: Record<BookingState, string> = {
  invited: "Invited", started: "Started", sent: "Sent", returned: "Returned", agreed: "Agreed", closed: "Closed",
};

const EDGE = "M8 1.5L14.5 8L8 14.5L1.5 8z";

function inside(state: BookingState): string | null {
  switch (state) {
    case "invited": return "";
    case "started": return "M8 1.5V14.5L1.5 8z";
    case "sent": return EDGE;
    case "returned": return "M1 7h14v2H1z";
    case "agreed":
    case "closed": return null;
    default: return assertNever(state);
  }
}

/** State by a lozenge open, half, full or cut, always with its word; what is settled is the word alone. */
export function StateTag({ state }: { readonly state: BookingState }) {
  const fill = inside(state);
  return (
    <span className="state">
      {fill !== null && (
        <svg className="lozenge" viewBox="0 0 16 16" aria-hidden="true" focusable="false">
          <path className="lozenge-edge" d={EDGE} />
          {fill && <path className="lozenge-fill" d={fill} />}
        </svg>
      )}
      {WORDS[state]}
    </span>
  );
}
