/** When something is looked at again: whichever of its terms comes first. */
export type Recheck = readonly RecheckTerm[];

/** A distance driven, hours run or a time on the calendar. */
interface RecheckTerm {
  readonly written: string;
  readonly amount: number;
  readonly unit: RecheckUnit;
}

type RecheckUnit = 'km' | 'mi' | 'h' | 'day' | 'week' | 'month' | 'year';

/** A term of re-checking as read, or what is wrong with it. */
type RecheckReading =
  | { readonly ok: true; readonly recheck: Recheck }
  | { readonly ok: false; readonly message: string };

const spellings: readonly (readonly [RecheckUnit, RegExp])[] = [
  ['km', /^(?:km|kilomet(?:re|er)s?)$/i],
  ['mi', /^(?:mi|miles?)$/i],
  ['h', /^(?:h|hrs?|hours?)$/i],
  ['day', /^(?:d|days?)$/i],
  ['week', /^weeks?$/i],
  ['month', /^months?$/i],
  ['year', /^years?$/i],
];

/** One mile is 1.609344 km, exactly (international yard and pound agreement, 1959). */
const MILE = 1.609344;

/** Reads `500 km`, `20 h`, `6 months`, or several of them joined by "or": the first to come counts. */
export function parseRecheck(text: string): RecheckReading {
  const recheck: RecheckTerm[] = [];
  for (const part of text.split(/\s+or\s+|,/)) {
    const match = /^\s*(\d+(?:\.\d+)?)\s*([a-z]+)\s*$/i.exec(part);
    const unit = match && spellings.find(([, spelling]) => spelling.test(match[2] ?? ''))?.[0];
    const amount = Number(match?.[1]);
    if (!match || !unit || !(amount > 0)) {
      const message = `"${part.trim()}" was found where a distance, hours or a time was expected, as in "500 km", "20 h" or "6 months"`;
      return { ok: false, message };
    }
    recheck.push({ written: match[1] ?? '', amount, unit });
  }
  return { ok: true, recheck };
}

/** "after 500 km (311 mi) or 3 months, whichever comes first". */
export function recheckWords(recheck: Recheck): string {
  const terms = recheck.map(termWords);
  return terms.length > 1 ? `after ${terms.join(' or ')}, whichever comes first` : `after ${terms.join('')}`;
}

function termWords({ written, amount, unit }: RecheckTerm): string {
  switch (unit) {
    case 'km':
      return `${written} km (${rounded(amount / MILE)} mi)`;
    case 'mi':
      return `${written} mi (${rounded(amount * MILE)} km)`;
    case 'h':
      return `${written} h of use`;
    default:
      return `${written} ${amount === 1 ? unit : `${unit}s`}`;
  }
}

/** To two figures, and never to more than a whole one: nobody reads an odometer closer for this. */
function rounded(value: number): string {
  const step = 10 ** Math.max(0, Math.floor(Math.log10(value)) - 1);
  return String(Math.round(value / step) * step);
}
