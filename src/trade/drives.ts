import { inOneForm, readNumber } from '../units/number.ts';
import { base, type Millimetres } from '../units/quantity.ts';
import { decimalComma, type TradeProblem, tradeProblem } from './problem.ts';

/** A drive measured across its flats: `hex 7` is in millimetres, `hex 1/2 in` in inches. */
export interface FlatsDrive {
  readonly kind: 'hexagon' | 'hexagon-socket' | 'twelve-point' | 'square-flats';
  readonly across: Millimetres;
  /** As printed: `7 mm`, `1/2 in`. */
  readonly size: string;
}

/** A recess or head known by its number: `T15`, `E10`, `square 2`, `spline 8`. */
interface NumberedDrive {
  readonly kind: 'hexalobular' | 'security-hexalobular' | 'external-hexalobular' | 'square' | 'spline';
  readonly number: number;
}

/** A cross recess. The three forms look alike and are not. */
export interface CrossDrive {
  readonly kind: 'cross';
  readonly form: 'PH' | 'PZ' | 'JIS';
  readonly number: number;
}

/** A drive without a size: a slot, or a plastic fastener and the lever that frees it. */
interface PlainDrive {
  readonly kind: 'slotted' | 'push-in' | 'pull-out';
}

/** How a tool takes hold of a fastener; said alike of the tool and of the fastener. */
export type Drive = FlatsDrive | NumberedDrive | CrossDrive | PlainDrive;

/** A drive, or what is wrong with the text. */
type ParsedDrive = { readonly ok: true; readonly drive: Drive } | TradeProblem;

/** Sizes that exist. Hexalobular: ISO 10664; cross: ISO 8764, JIS B 4633; the others common practice, no source. */
const numbers: { readonly [kind in NumberedDrive['kind'] | 'cross']: readonly number[] } = {
  hexalobular: [1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 15, 20, 25, 27, 30, 40, 45, 50, 55, 60, 70, 80, 90, 100],
  'security-hexalobular': [5, 6, 7, 8, 9, 10, 15, 20, 25, 27, 30, 40, 45, 50, 55, 60],
  'external-hexalobular': [4, 5, 6, 7, 8, 10, 11, 12, 14, 16, 18, 20, 22, 24],
  square: [0, 1, 2, 3, 4],
  spline: [4, 5, 6, 8, 10, 12, 14, 16, 18],
  cross: [0, 1, 2, 3, 4],
};

/** Words that technicians type, and the one form that Baybook keeps. */
const otherWords: readonly (readonly [RegExp, string])[] = [
  [/^(?:allen|hex[ -]?key|inhex|imbus)(?= ?\d|$)/i, 'hex-socket'],
  [/^(?:torx|tx|star)[ -]?t?(?= ?\d)/i, 'T'],
  [/^(?:phillips|philips|cross(?:-head)?)(?= ?\d)/i, 'PH'],
  [/^pozi(?:driv|drive)?(?= ?\d)/i, 'PZ'],
  [/^robertson(?= ?\d)/i, 'square'],
  [/^(?:slot|flat(?:-head|-blade)?)$/i, 'slotted'],
  [/^(?:clip|fir-tree)$/i, 'pull-out'],
  [/^(?:push[ -]?(?:pin|rivet|clip))$/i, 'push-in'],
];

const expects =
  'write, for example, "hex 7", "hex 1/2 in", "hex-socket 5", "T15", "PH2", "square 2", "slotted", "push-in" or "pull-out"';

/** Reads a drive as an author types it; what was meant is suggested where a trade name was written. */
export function parseDrive(text: string): ParsedDrive {
  const plain = inOneForm(text);
  const parsed = readDrive(plain);
  if (parsed) return parsed;
  for (const [pattern, word] of otherWords) {
    if (!pattern.test(plain)) continue;
    const mended = respell(plain.replace(pattern, `${word} `).replace(/ +/g, ' ').trim());
    if (mended !== undefined) {
      return tradeProblem(`"${plain}" is written "${mended}" here, so that one drive has one name`, mended);
    }
  }
  if (plain === '') return tradeProblem(`the drive is empty; ${expects}`);
  return tradeProblem(`"${plain}" is not a drive that Baybook knows; ${expects}`);
}

function readDrive(plain: string): ParsedDrive | undefined {
  const lower = plain.toLowerCase();
  if (lower === 'slotted' || lower === 'push-in' || lower === 'pull-out') {
    return { ok: true, drive: { kind: lower } };
  }
  const cross = /^(PH|PZ|JIS) ?(\d+)$/i.exec(plain);
  if (cross?.[1] && cross[2])
    return crossDrive(cross[1].toUpperCase() as CrossDrive['form'], Number(cross[2]));
  const lobed = /^([TE]) ?(\d+)( security)?$/i.exec(plain);
  if (lobed?.[1] && lobed[2]) {
    if (lobed[1].toUpperCase() === 'E')
      return lobed[3] ? undefined : numbered('external-hexalobular', Number(lobed[2]));
    return numbered(lobed[3] ? 'security-hexalobular' : 'hexalobular', Number(lobed[2]));
  }
  const bare = /^(square|spline) (\d+)$/.exec(lower);
  if (bare?.[1] && bare[2]) return numbered(bare[1] as 'square' | 'spline', Number(bare[2]));
  const flats = /^(hex-socket|hexagon-socket|hex|hexagon|twelve-point|square) ?(\d.*|\..*)$/.exec(lower);
  return flats?.[1] && flats[2]
    ? flatsDrive(plain, kindsOfFlats[flats[1]] ?? 'hexagon', flats[2])
    : undefined;
}

const kindsOfFlats: { readonly [word: string]: FlatsDrive['kind'] } = {
  'hex-socket': 'hexagon-socket',
  'hexagon-socket': 'hexagon-socket',
  'twelve-point': 'twelve-point',
  square: 'square-flats',
};

function respell(text: string): string | undefined {
  const parsed = readDrive(text);
  return parsed?.ok ? writtenDrive(parsed.drive) : undefined;
}

function numbered(kind: NumberedDrive['kind'], number: number): ParsedDrive {
  if (numbers[kind].includes(number)) return { ok: true, drive: { kind, number } };
  const near = closest(numbers[kind], number);
  return noSuchSize(writtenDrive({ kind, number }), writtenDrive({ kind, number: near }));
}

function crossDrive(form: CrossDrive['form'], number: number): ParsedDrive {
  if (numbers.cross.includes(number)) return { ok: true, drive: { kind: 'cross', form, number } };
  return noSuchSize(`${form}${number}`, `${form}${closest(numbers.cross, number)}`);
}

function noSuchSize(found: string, near: string): TradeProblem {
  return tradeProblem(`there is no drive ${found}; the nearest is ${near}`, near);
}

function closest(sizes: readonly number[], wanted: number): number {
  return sizes.reduce((best, size) => (Math.abs(size - wanted) < Math.abs(best - wanted) ? size : best));
}

/** The finest steps in which flats are made: half a millimetre, a 64th of an inch (common practice, no source). */
function flatsDrive(plain: string, kind: FlatsDrive['kind'], size: string): ParsedDrive {
  const comma = decimalComma(plain, (mended) => readDrive(mended)?.ok === true);
  if (comma) return comma;
  const number = readNumber(size);
  if (!number) return tradeProblem(`"${plain}" has no size that can be read; ${expects}`);
  const inches = /^(?:in|inch|inches|")$/.test(number.rest);
  if (!inches && number.rest !== '' && number.rest !== 'mm') {
    return tradeProblem(`"${plain}" does not end in a size; ${expects}`);
  }
  if (!inches && number.written.includes('/')) {
    const mended = respell(`${plain.replace(/ ?mm$/, '')} in`);
    return tradeProblem(`"${plain}" is a fraction without inches; a bare size is in millimetres`, mended);
  }
  const across = base<'length'>(number.value * (inches ? 25.4 : 1));
  const steps = inches ? number.value * 64 : number.value * (across < 5 ? 10 : 2);
  if (across < 0.7 || across > 120 || Math.abs(steps - Math.round(steps)) > 1e-9) {
    return tradeProblem(
      `no hexagon or square is made ${number.written} ${inches ? 'in' : 'mm'} across its flats; check the size, in millimetres ("hex 13") or inches ("hex 1/2 in")`,
    );
  }
  return { ok: true, drive: { kind, across, size: `${number.written} ${inches ? 'in' : 'mm'}` } };
}

/** A drive as an author writes it: `hex 7`, `hex 1/2 in`, `T15 security`. */
export function writtenDrive(drive: Drive): string {
  switch (drive.kind) {
    case 'hexagon':
      return `hex ${drive.size.replace(/ mm$/, '')}`;
    case 'hexagon-socket':
      return `hex-socket ${drive.size.replace(/ mm$/, '')}`;
    case 'twelve-point':
      return `twelve-point ${drive.size.replace(/ mm$/, '')}`;
    case 'square-flats':
      return `square ${drive.size}`;
    case 'hexalobular':
      return `T${drive.number}`;
    case 'security-hexalobular':
      return `T${drive.number} security`;
    case 'external-hexalobular':
      return `E${drive.number}`;
    case 'square':
    case 'spline':
      return `${drive.kind} ${drive.number}`;
    case 'cross':
      return `${drive.form}${drive.number}`;
    case 'slotted':
    case 'push-in':
    case 'pull-out':
      return drive.kind;
  }
}

/** A drive as the page prints it: `7 mm hexagon`, `5 mm hexagon socket`, `T15`, `PH2`, `slot`. */
export function formatDrive(drive: Drive): string {
  switch (drive.kind) {
    case 'hexagon':
    case 'hexagon-socket':
    case 'twelve-point':
    case 'square-flats': {
      const noun = {
        hexagon: 'hexagon',
        'hexagon-socket': 'hexagon socket',
        'twelve-point': 'twelve-point',
        'square-flats': 'square',
      };
      return `${drive.size.replace(/ /g, '\u00a0')} ${noun[drive.kind]}`;
    }
    case 'slotted':
      return 'slot';
    case 'push-in':
    case 'pull-out':
      return `${drive.kind} fastener`;
    default:
      return writtenDrive(drive);
  }
}
