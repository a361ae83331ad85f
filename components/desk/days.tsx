/** Days since 1970 of a calendar date; no clock, no zone. */
export const dayNumber = (date: string): number => {
  const [y = 1970, m = 1, d = 1] = date.split("-").map(Number);
  return Math.round(Date.UTC(y, m - 1, d) / 86_400_000);
};

export type Span = { readonly first: number; readonly last: number };
export type Stretch = { readonly today: string; readonly due: string; readonly day: string };

/** The stretch of days that a whole queue is drawn on, so that today stands at one spot in every row. */
export function spanOf(rows: readonly Stretch[], today: string): Span {
  const now = dayNumber(today);
  const days = rows.flatMap((r) => [dayNumber(r.due), dayNumber(r.day)]);
  const near = days.filter((d) => d - now < 400 && now - d < 90);
  const first = Math.min(now - 4, ...near.map((d) => d - 3));
  return { first, last: Math.max(now + 28, ...near.map((d) => d + 3)) };
}

const at = (day: number, span: Span): string => {
  const share = (day - span.first) / (span.last - span.first);
  return `${Math.round(Math.min(1, Math.max(0, share)) * 10_000) / 100}%`;
};

function months(span: Span): readonly { readonly day: number; readonly word: string }[] {
  const start = new Date(span.first * 86_400_000);
  const all = Array.from({ length: 20 }, (_, i) => Date.UTC(start.getUTCFullYear(), start.getUTCMonth() + 1 + i, 1) / 86_400_000).filter((d) => d < span.last);
  const every = Math.max(1, Math.ceil(all.length / 4));
  return all.filter((_, i) => i % every === 0).map((day) => ({ day, word: new Date(day * 86_400_000).toLocaleDateString("en-GB", { month: "short", timeZone: "UTC" }) }));
}

/** The head of the column: today, and the first of the months. */
export function DaysHead({ span, today }: { readonly span: Span; readonly today: string }) {
  const now = dayNumber(today);
  const width = span.last - span.first;
  return (
    <svg height="34" aria-hidden="true" focusable="false">
      {months(span).filter((m) => Math.abs(m.day - now) / width > 0.13).map((m) => (
        <g key={m.day}><line className="month" x1={at(m.day, span)} x2={at(m.day, span)} y1="24" y2="34" /><text x={at(m.day, span)} y="18" textAnchor="middle">{m.word}</text></g>
      ))}
      <line className="today" x1={at(now, span)} x2={at(now, span)} y1="22" y2="34" />
      <text className="today-word" x={at(now, span)} y="18" textAnchor={(now - span.first) / width < 0.08 ? "start" : "middle"}>today</text>
    </svg>
  );
}

/** One booking's time as a dimension string: a tick where the answer is due, a square on the day, a heavy line for today. */
export function Days({ span, today, due, day }: { readonly span: Span } & Stretch) {
  const [now, d, e] = [dayNumber(today), dayNumber(due), dayNumber(day)];
  const middle = (Math.max(d, span.first) + Math.min(e, span.last)) / 2;
  const wide = (Math.min(e, span.last) - Math.max(d, span.first)) / (span.last - span.first) > 0.16;
  return (
    <svg height="44" aria-hidden="true" focusable="false">
      {months(span).map((m) => <line key={m.day} className="month" x1={at(m.day, span)} x2={at(m.day, span)} y1="0" y2="44" />)}
      <line className="dim" x1={at(d, span)} x2={at(e, span)} y1="30" y2="30" />
      {d < now && <line className="late" x1={at(d, span)} x2={at(Math.min(now, e), span)} y1="30" y2="30" />}
      <line className="today" x1={at(now, span)} x2={at(now, span)} y1="0" y2="44" />
      <svg x={at(d, span)} y="30" overflow="visible"><path className="tick" d="M-4 4L4 -4" /></svg>
      {e <= span.last && <svg x={at(e, span)} y="30" overflow="visible"><path className="day" d="M-4.5 -4.5h9v9h-9z" /></svg>}
      {wide && <text x={at(middle, span)} y="23" textAnchor="middle">{e - d} d</text>}
    </svg>
  );
}

export function DaysKey() {
  return (
    <p className="dim-key note sec days">
      <svg height="16" viewBox="0 0 96 16" aria-hidden="true"><path className="dim" d="M8 8H88" /><path className="tick" d="M4 12L12 4" /><path className="day" d="M83.5 3.5h9v9h-9z" /></svg>
      From the date the answer is due to the day itself; the heavy line is today.
    </p>
  );
}
