/** A number as typed: its value, and its digits in the form that Baybook prints. */
export interface WrittenNumber {
  readonly value: number;
  /** `25`, `12.50`, `0.5`, `1/2`, `1 1/4`; the sign is an ordinary hyphen. */
  readonly written: string;
  /** What stands after the number, trimmed. */
  readonly rest: string;
}

const vulgar: { readonly [sign: string]: string } = {
  '¼': '1/4',
  '½': '1/2',
  '¾': '3/4',
  '⅓': '1/3',
  '⅔': '2/3',
  '⅛': '1/8',
  '⅜': '3/8',
  '⅝': '5/8',
  '⅞': '7/8',
};

/**
 * Typed text in one form: plain spaces, hyphen for minus, `/` for the fraction slash, straight inch and foot
 * marks, one middle dot, fractions such as `1¼` as `1 1/4`.
 */
export function inOneForm(text: string): string {
  return text
    .replace(/[¼½¾⅓⅔⅛⅜⅝⅞]/g, (sign) => ` ${vulgar[sign] ?? ''}`)
    .replace(/\s+/g, ' ')
    .replace(/⁄/g, '/')
    .replace(/[\u2212\u2010\u2011]/g, '-')
    .replace(/[″”“]|''/g, '"')
    .replace(/[′’‘]/g, "'")
    .replace(/[⋅∙•‧]/g, '·')
    .replace(/º|˚/g, '°')
    .replace(/\u2126/g, 'Ω')
    .trim();
}

const mixed = /^(\d+)(?: |-| - )(\d+)\/(\d+)(?![\d/])/;
const fraction = /^(\d+)\/(\d+)(?![\d/])/;
const grouped = /^\d{1,3}(?: \d{3})+(?:\.\d+)?(?![\d/])/;
const decimal = /^(?:\d+(?:\.\d+)?|\.\d+)/;

/** Reads the number at the start of text that `plainText` has prepared; undefined where there is none. */
export function readNumber(text: string): WrittenNumber | undefined {
  const sign = /^[+-] ?/.exec(text)?.[0] ?? '';
  const body = readUnsigned(text.slice(sign.length));
  if (!body || !Number.isFinite(body.value)) return undefined;
  if (!sign.startsWith('-')) return body;
  return { ...body, value: -body.value, written: `-${body.written}` };
}

function readUnsigned(text: string): WrittenNumber | undefined {
  const after = (length: number): string => text.slice(length).trim();
  const whole = mixed.exec(text);
  if (whole) {
    const [all, units, top, bottom] = whole;
    return {
      value: Number(units) + Number(top) / Number(bottom),
      written: `${Number(units)} ${Number(top)}/${Number(bottom)}`,
      rest: after(all.length),
    };
  }
  const part = fraction.exec(text);
  if (part) {
    const [all, top, bottom] = part;
    const written = `${Number(top)}/${Number(bottom)}`;
    return { value: Number(top) / Number(bottom), written, rest: after(all.length) };
  }
  const digits = (grouped.exec(text) ?? decimal.exec(text))?.[0];
  if (digits === undefined) return undefined;
  const joined = digits.replace(/ /g, '');
  const written = joined.startsWith('.') ? `0${joined}` : joined;
  return { value: Number(written), written, rest: after(digits.length) };
}
