import { parseQuantity } from '../units/parse.ts';
import { numberPattern, numberWritten } from './words.ts';

const torqueUnit =
  '(?:N\\s?[·⋅∙.*\\-]?\\s?m|newton[\\s-]?met(?:re|er)s?|(?:ft|foot|feet|in|inch)\\.?[\\s·\\-]?(?:lbf|lbs?|pounds?)|(?:lbf|lbs?|pounds?)\\.?[\\s·\\-]?(?:ft|foot|feet|in|inch(?:es)?)|kgf?[\\s·\\-]?c?m)(?![a-z])';
const number = '\\d+(?:[.,]\\d+)?(?:\\s?[-–—]\\s?\\d+(?:[.,]\\d+)?|\\s?[¼½¾])?';

/** A torque in a text: where it stands with what belongs to it, and how the format writes it. */
export interface FoundTorque {
  readonly from: number;
  readonly to: number;
  /** `8 N·m`; `null` where it is a range, or states two values that are not the same. */
  readonly torque: string | null;
}

const torques = new RegExp(
  `(${number})\\s?(${torqueUnit})(?:\\s?[(/]\\s?(${number})\\s?(${torqueUnit})\\s?\\)?)?`,
  'gi',
);

/** Every torque that a text states; one in a second unit beside it belongs to it. */
export function torquesIn(text: string): readonly FoundTorque[] {
  return [...text.matchAll(torques)].map((match) => {
    const [whole, value = '', unit = '', other, otherUnit] = match;
    const main = parseQuantity(`${value} ${unit.replace(/\.$/, '')}`, 'torque');
    const second =
      other && otherUnit ? parseQuantity(`${other} ${otherUnit.replace(/\.$/, '')}`, 'torque') : null;
    const said = main.ok && main.quantity.base > 0 ? main.quantity : null;
    // Two units are one torque where they differ by rounding alone: three in a hundred, common practice, no source.
    const agrees = !said || !second || (second.ok && Math.abs(second.quantity.base / said.base - 1) < 0.03);
    return {
      from: match.index,
      to: match.index + whole.length,
      torque: said && agrees ? `${said.written} ${said.unit}` : null,
    };
  });
}

const wait = new RegExp(
  `\\b(?:wait|allow|leave|let)\\b[^.;]*?\\b(${numberPattern})\\s?(minutes?|mins?|hours?|hrs?|h|days?)\\b`,
  'gi',
);

/** The time that a sentence says nobody works, as the format writes it; `null` where it says none, or more than one. */
export function waitIn(sentence: string): string | null {
  const [found, ...others] = [...sentence.matchAll(wait)];
  const isWait =
    /\bwait\b|\b(?:allow|leave|let)\b.*\b(?:cure|dry|set|cool|settle|harden|it|them|for)\b/i.test(sentence);
  if (!found || others.length > 0 || !isWait) return null;
  const count = numberWritten(found[1] ?? '');
  const unit = { m: 'min', h: 'h', d: 'd' }[(found[2] ?? '').charAt(0).toLowerCase()];
  if (count === null || unit === undefined) return null;
  return unit === 'd' ? `${count * 24} h` : `${count} ${unit}`;
}

/** A thing as a list names it, with how many of it. */
interface CountedThing {
  readonly name: string;
  /** `null` where the list does not say. */
  readonly count: number | null;
}

const counts: readonly RegExp[] = [
  new RegExp(`^\\(?(?<count>${numberPattern})\\)?\\s*(?:x|×|off|pcs\\.?|no\\.?)\\s+(?<name>.+)$`, 'i'),
  /^(?<name>.+?)\s*[[(]\s*(?:x|×|qty:?)?\s*(?<count>\d{1,3})\s*(?:x|×|off|pcs\.?)?\s*[\])]$/i,
  /^(?<name>.+?)\s+(?:x|×)\s?(?<count>\d{1,3})$/i,
  /^(?<name>.+?)\s*(?:[-–—:=]|\bqty:?)\s*(?<count>\d{1,3})\s*(?:x|×|off|pcs\.?)?$/i,
  new RegExp(
    `^(?<count>${numberPattern})\\s+(?!mm\\b|cm\\b|in\\b|m\\b|V\\b|A\\b|W\\b)(?=[\\p{L}M])(?<name>.+)$`,
    'iu',
  ),
];

/** Reads a line of a parts list: `4 x M6x20 bolt`, `M8 washer (16)`, `Bracket x6`, `Lock body – 1`, `3 LED light bars`. */
export function countedThing(line: string, column = ''): CountedThing {
  const text = line.trim().replace(/[.;,]$/, '');
  const inColumn = numberWritten(column.trim().replace(/^(?:x|×)\s*|\s*(?:x|×|off|pcs\.?)$/gi, ''));
  if (inColumn !== null) return { name: text, count: inColumn };
  for (const pattern of counts) {
    const { name, count } = pattern.exec(text)?.groups ?? {};
    const number = count === undefined ? null : numberWritten(count);
    if (name && number !== null && number > 0) return { name: name.trim(), count: number };
  }
  return { name: text, count: null };
}
