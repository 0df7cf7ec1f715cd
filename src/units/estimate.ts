import { inOneForm, readNumber } from './number.ts';
import { faultOfText, parseQuantity, parseRange, splitRange } from './parse.ts';
import { problem, type QuantityProblem } from './problem.ts';
import { base, type Minutes, type Quantity } from './quantity.ts';

/** How long work takes: at least, most likely and at most, in minutes and in this order of size. */
export interface Estimate {
  readonly least: Minutes;
  readonly likely: Minutes;
  readonly most: Minutes;
}

/** Minutes of a day. */
export const DAY = 1440;

/** An estimate, or what is wrong with the text. */
type ParsedEstimate = { readonly ok: true; readonly estimate: Estimate } | QuantityProblem;

/**
 * Reads a time estimate: one value (`5 min`), a range whose middle is the likely value (`3..6 min`), or least,
 * likely and most (`4/6/15 min`).
 */
export function parseEstimate(text: string): ParsedEstimate {
  const plain = inOneForm(text);
  const fault = faultOfText(plain, 'time');
  if (fault) return fault;
  const parts = plain.split('/').map((part) => part.trim());
  if (parts.length === 3) return threePoints(parts, plain);
  if (parts.length === 2 && /\d ?\/ ?\d+ ?(m|s)/i.test(plain)) {
    return problem(
      'not-a-number',
      `"${plain}" gives two of three times; write "3..6 min" for a range, or least/likely/most as in "4/6/15 min"`,
    );
  }
  if (splitRange(plain)) {
    const parsed = parseRange(plain, 'time');
    if (!parsed.ok) return parsed;
    const { least, most } = parsed.range;
    const likely = base<'time'>((least.base + most.base) / 2);
    return { ok: true, estimate: { least: least.base, likely, most: most.base } };
  }
  const parsed = parseQuantity(plain, 'time');
  if (!parsed.ok) return parsed;
  const { base: value } = parsed.quantity;
  return { ok: true, estimate: { least: value, likely: value, most: value } };
}

function threePoints(parts: readonly string[], plain: string): ParsedEstimate {
  const last = parseQuantity(parts[2] ?? '', 'time');
  if (!last.ok) return last;
  const values: Quantity<'time'>[] = [];
  for (const part of parts.slice(0, 2)) {
    const bare = readNumber(part)?.rest === '';
    const parsed = parseQuantity(bare ? `${part} ${last.quantity.unit}` : part, 'time');
    if (!parsed.ok) return parsed;
    values.push(parsed.quantity);
  }
  const [least, likely] = values;
  if (!least || !likely) throw new Error('three parts gave fewer than two values');
  if (least.base > likely.base || likely.base > last.quantity.base) {
    return problem(
      'wrong-way-round',
      `the times in "${plain}" are out of order; write least/likely/most, for example "4/6/15 min"`,
    );
  }
  return { ok: true, estimate: { least: least.base, likely: likely.base, most: last.quantity.base } };
}

/** `35 min`, `1 h 35 min`, `2 h`, `30 s`, `25 h`: rounded to a minute, and to a second below one minute. */
export function formatMinutes(minutes: Minutes): string {
  if (minutes > 0 && minutes < 1) {
    const seconds = Math.round(minutes * 60);
    return seconds === 60 ? '1\u00a0min' : `${seconds}\u00a0s`;
  }
  const total = Math.round(minutes);
  const parts: readonly (readonly [number, string])[] = [
    [Math.floor(total / 60), 'h'],
    [total % 60, 'min'],
  ];
  const shown = parts.filter(([count]) => count > 0).map(([count, unit]) => `${count}\u00a0${unit}`);
  return shown.join('\u00a0') || '0\u00a0min';
}

/** How long a job runs: as {@link formatMinutes} up to a day, then with days of 24 hours, `1 d 5 h 42 min`. */
export function formatRun(minutes: Minutes): string {
  const total = Math.round(minutes);
  const [days, rest] = [Math.floor(total / DAY), base<'time'>(total % DAY)];
  if (total <= DAY) return formatMinutes(minutes);
  return rest === 0 ? `${days}\u00a0d` : `${days}\u00a0d\u00a0${formatMinutes(rest)}`;
}

/** `5 min` for one value; `3–6 min` or `45 min to 1 h 30 min` otherwise, with the likely value where it is not the middle. */
export function formatEstimate({ least, likely, most }: Estimate): string {
  if (least === most) return formatMinutes(least);
  const bare = most < 60 && Number.isInteger(least) && Number.isInteger(most);
  const span = bare ? `${least}–${formatMinutes(most)}` : `${formatMinutes(least)} to ${formatMinutes(most)}`;
  return likely * 2 === least + most ? span : `${span}, likely ${formatMinutes(likely)}`;
}
