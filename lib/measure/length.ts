import { fail, ok, type Result } from "../base";

/** How lengths are written: the venue's system and its language. */
export type LengthStyle = {
  readonly system: "metric" | "imperial";
  /** BCP 47 language tag. */
  readonly locale: string;
  /** Write the unit after a metric figure ("1.68 m"); feet and inches carry theirs always. */
  readonly unit?: boolean;
};

/** The style of a venue, or of anything that carries its two fields. */
export const lengthStyle = (venue: { readonly lengths: "metric" | "imperial"; readonly locale: string }, unit = false): LengthStyle =>
  ({ system: venue.lengths, locale: venue.locale, unit });

const INCH = 25.4;
const PRIME = "\u2032", SECOND = "\u2033", NARROW = "\u00a0";

/**
 * A length in millimetres as people write it: metres with two decimals (16.20), or feet and whole inches (53′ 2″).
 * Twelve inches are always carried into a foot; below one foot only inches are written.
 */
export function formatLength(mm: number, style: LengthStyle): string {
  if (style.system === "metric") {
    const figure = decimals(style.locale, 2).format(tidy(mm / 1000));
    return style.unit ? `${figure}${NARROW}m` : figure;
  }
  const whole = Math.round(Math.abs(mm) / INCH);
  const sign = mm < 0 && whole > 0 ? "\u2212" : "";
  const feet = Math.floor(whole / 12), inches = whole % 12;
  if (feet === 0) return `${sign}${inches}${SECOND}`;
  return inches === 0 ? `${sign}${feet}${PRIME}` : `${sign}${feet}${PRIME}${NARROW}${inches}${SECOND}`;
}

/** Two lengths as one size: 16.20 × 9.40, 64′ × 40′. */
export const formatSize = (width: number, depth: number, style: LengthStyle): string => {
  const bare = { ...style, unit: false };
  return `${formatLength(width, bare)}${NARROW}×${NARROW}${formatLength(depth, style)}`;
};

/** An area in square millimetres: square metres with one decimal, or whole square feet. */
export function formatArea(mm2: number, style: LengthStyle): string {
  if (style.system === "metric") return `${decimals(style.locale, 1).format(tidy(mm2 / 1e6))}${NARROW}m²`;
  return `${decimals(style.locale, 0).format(Math.round(mm2 / (304.8 * 304.8)))}${NARROW}sq${NARROW}ft`;
}

const NUMBER = String.raw`(\d+(?:[.,]\d+)?)`;
const METRIC = new RegExp(`^${NUMBER}\\s*(mm|cm|m)?$`);
const FEET = new RegExp(`^${NUMBER}\\s*(?:'|\u2032|\u2019|ft|feet|foot)?(?:\\s*${NUMBER}\\s*(?:"|\u2033|\u201d|''|in|inches|inch))?$`);
const INCHES = new RegExp(`^${NUMBER}\\s*(?:"|\u2033|\u201d|''|in|inches|inch)$`);

/**
 * A typed length in millimetres, rounded to whole ones. A bare figure means metres in a metric venue and feet in an
 * imperial one; a written unit of either system is understood everywhere.
 */
export function parseLength(text: string, style: Pick<LengthStyle, "system">): Result<number, { readonly code: "not-a-length"; readonly text: string }> {
  const t = text.trim().toLowerCase().replace(/\u00a0/g, " ");
  const metric = METRIC.exec(t);
  const named = metric?.[2];
  if (metric && (named !== undefined || style.system === "metric")) {
    const by = named === "mm" ? 1 : named === "cm" ? 10 : 1000;
    return ok(Math.round(figure(metric[1]) * by));
  }
  const inches = INCHES.exec(t);
  if (inches) return ok(Math.round(figure(inches[1]) * INCH));
  const feet = FEET.exec(t);
  if (feet && (style.system === "imperial" || /[^\d.,\s]/.test(t))) {
    return ok(Math.round((figure(feet[1]) * 12 + figure(feet[2])) * INCH));
  }
  return fail({ code: "not-a-length", text });
}

const figure = (text: string | undefined): number => (text === undefined ? 0 : Number(text.replace(",", ".")));
/** Keeps 1.005 from falling to 1.00 by binary dust, and -0 from showing. */
const tidy = (n: number): number => Math.round(n * 1e6) / 1e6 + 0;

const cache = new Map<string, Intl.NumberFormat>();
function decimals(locale: string, digits: number): Intl.NumberFormat {
  const key = `${locale}/${digits}`;
  const known = cache.get(key);
  if (known) return known;
  const made = new Intl.NumberFormat(locale, { minimumFractionDigits: digits, maximumFractionDigits: digits });
  cache.set(key, made);
  return made;
}
