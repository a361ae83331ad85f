import { ENGLISH, type Say } from "@/lib/words/pages/say";

export type Seats = { readonly comfort: number; readonly most: number; readonly ceiling?: number };

/** Hundredths of the band's length, so that its words keep their size at every width. */
const along = (n: number, scale: number): string => `${Math.round(Math.min(1, n / scale) * 10_000) / 100}%`;

function Hatch({ id }: { readonly id: string }) {
  return (
    <defs>
      <pattern id={id} width="5" height="5" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
        <rect width="5" height="5" className="band-hatch-ground" />
        <path d="M0 2.5H5" className="band-hatch-line" />
      </pattern>
    </defs>
  );
}

/** The scale that all bars of one page share, so that the guests' line stands at one spot in all of them. */
export function scaleOf(all: readonly Seats[], guests: number): number {
  const top = Math.max(guests, ...all.map((s) => Math.max(s.most, s.ceiling ?? 0)), 10);
  return top * (top === guests ? 1.04 : 1);
}

/** A bar beside a choice: full to comfort, hatched to the most, the guests a line across it, dotted where places are wanting. */
export function Strip({ id, seats, guests, scale, say = ENGLISH }: { readonly say?: Say; readonly id: string; readonly seats: Seats; readonly guests: number; readonly scale: number }) {
  return (
    <span className="strip">
      <svg className="band" height="22" aria-hidden="true" focusable="false">
        <Hatch id={`hatch-${id}`} />
        <rect x="0" y="6" height="10" width={along(seats.comfort, scale)} className="band-comfort" />
        <rect x={along(seats.comfort, scale)} y="6" height="10" width={along(seats.most - seats.comfort, scale)} fill={`url(#hatch-${id})`} />
        <rect x="0" y="6" height="10" width={along(seats.most, scale)} className="band-edge" />
        {guests > seats.most && <line className="band-lack" x1={along(seats.most, scale)} x2={along(guests, scale)} y1="11" y2="11" />}
        {guests > 0 && <><line className="band-halo" x1={along(guests, scale)} x2={along(guests, scale)} y1="0" y2="22" /><line className="band-line" x1={along(guests, scale)} x2={along(guests, scale)} y1="0" y2="22" /></>}
      </svg>
      <span className="strip-words">{say("{comfort} in comfort, {most} at the most", { comfort: seats.comfort, most: seats.most })}</span>
    </span>
  );
}

type BandProps = { readonly id: string; readonly seats: Required<Seats>; readonly guests: number; readonly say?: Say };

/** The measure of places: a scale bar of people. */
export function Band({ id, seats, guests, say = ENGLISH }: BandProps) {
  const scale = scaleOf([seats], guests);
  const x = (n: number): string => along(n, scale);
  const step = scale > 400 ? 100 : scale > 160 ? 50 : scale > 60 ? 20 : 10;
  const ticks = Array.from({ length: Math.floor(scale / step) + 1 }, (_, i) => i * step);
  const near = (a: number, b: number, share = 0.075): boolean => Math.abs(a - b) / scale < share;
  // At the end of the bar a figure stands before its place, not about it, and so reaches further back.
  const ends = (n: number): boolean => n / scale > 0.93;
  const shown = ticks.filter((t) => t === 0 || (t % (step * 2) === 0 && ![seats.comfort, seats.most, seats.ceiling].some((s) => near(s, t, ends(s) ? 0.12 : 0.075))));
  const close = near(seats.comfort, seats.most) && seats.comfort !== seats.most;
  const facts = { comfort: seats.comfort, most: seats.most, ceiling: seats.ceiling, guests };
  const words = guests > 0 ? say("{comfort} in comfort, {most} at the most, {ceiling} the ceiling; you are {guests}", facts) : say("{comfort} in comfort, {most} at the most, {ceiling} the ceiling", facts);
  const youEnd = guests / scale > 0.5;
  return (
    <svg className="band" height="64" role="img" aria-label={words}>
      <Hatch id={`hatch-${id}`} />
      <rect x="0" y="26" height="13" width={x(seats.ceiling)} className="band-open" />
      <rect x="0" y="26" height="13" width={x(seats.comfort)} className="band-comfort" />
      <rect x={x(seats.comfort)} y="26" height="13" width={x(seats.most - seats.comfort)} fill={`url(#hatch-${id})`} />
      <rect x="0" y="26" height="13" width={x(seats.ceiling)} className="band-edge" />
      <svg x={x(seats.ceiling)} y="22" overflow="visible"><path className="band-stop" d="M-3 0h3v21h-3z" /></svg>
      {ticks.map((t) => <line key={t} className="band-tick" x1={x(t)} x2={x(t)} y1="39" y2="43" />)}
      {shown.map((t) => <text key={t} className="faint" x={x(t)} y="57" textAnchor={t === 0 ? "start" : "middle"}>{t}</text>)}
      <text className="strong" x={x(seats.comfort)} y="57" textAnchor={close || ends(seats.comfort) ? "end" : "middle"}>{seats.comfort}</text>
      {seats.most !== seats.comfort && !(close && ends(seats.most)) && <text className="strong" x={x(seats.most)} y="57" textAnchor={ends(seats.most) ? "end" : close ? "start" : "middle"} dx={close ? 6 : 0}>{seats.most}</text>}
      {!(near(seats.ceiling, guests)) && <text className="strong" x={x(seats.ceiling)} y="16" textAnchor={ends(seats.ceiling) ? "end" : "middle"}>{seats.ceiling}</text>}
      {guests > seats.ceiling && <line className="band-lack" x1={x(seats.ceiling)} x2={x(guests)} y1="32" y2="32" />}
      {guests > 0 && (
        <>
          <line className="band-halo" x1={x(guests)} x2={x(guests)} y1="22" y2="43" />
          <line className="band-line" x1={x(guests)} x2={x(guests)} y1="16" y2="43" />
          <svg x={x(guests)} y="12" overflow="visible"><path className="band-mark" d="M0 -5L5 0L0 5L-5 0z" /></svg>
          <text className="you" x={x(guests)} y="16" dx={youEnd ? -10 : 10} textAnchor={youEnd ? "end" : "start"}>{say("{guests} of you", { guests })}</text>
        </>
      )}
    </svg>
  );
}

/** What the three parts of the band mean, in words. */
export function BandKey({ id, comfort, most, ceiling }: { readonly id: string; readonly comfort: React.ReactNode; /** Left out where no more fit than sit in comfort: no part of the bar is hatched. */ readonly most?: React.ReactNode; readonly ceiling: React.ReactNode }) {
  return (
    <ul className="key">
      <li><svg viewBox="0 0 30 14" aria-hidden="true"><path className="band-comfort" d="M0 1h30v12H0z" /></svg><span>{comfort}</span></li>
      {most && <li><svg viewBox="0 0 30 14" aria-hidden="true"><Hatch id={`key-${id}`} /><rect x=".5" y="1.5" width="29" height="11" fill={`url(#key-${id})`} /><rect x=".5" y="1.5" width="29" height="11" className="band-edge" /></svg><span>{most}</span></li>}
      <li><svg viewBox="0 0 30 14" aria-hidden="true"><path className="band-edge" d="M0 1.5H29M0 12.5H29" /><path className="band-stop" d="M27 0h3v14h-3z" /></svg><span>{ceiling}</span></li>
    </ul>
  );
}
