import { type FlatsDrive, formatDrive } from './drives.ts';
import type { Thread } from './thread.ts';

/** A standard that fixes the width across flats of a hexagon by thread. */
export interface WidthStandard {
  /** As cited: `ISO 4014`. */
  readonly name: string;
  /** What it makes: "bolt or nut". */
  readonly makes: string;
  /** Other standards with the same widths. */
  readonly alsoFor: readonly string[];
  /** Millimetres by size; inch standards hold inches by size. */
  readonly widths: { readonly [size: string]: number };
  readonly unit: 'mm' | 'in';
}

/*
 * There is no width of "an M10": 16, 17, 15 and 14 mm are all standard. The tables agree in the data sets named
 * in tests/reference; where those disagree, the test says so.
 */
export const widthStandards: readonly WidthStandard[] = [
  metric('ISO 4014', 'bolt or nut', 'ISO 4017, ISO 4032, ISO 8673, ISO 8765', {
    M4: 7,
    M5: 8,
    M6: 10,
    M8: 13,
    M10: 16,
    M12: 18,
    M14: 21,
    M16: 24,
    M20: 30,
  }),
  metric('DIN 931', 'bolt or nut, older series', 'DIN 933, DIN 934, JIS B 1180 annex', {
    M4: 7,
    M5: 8,
    M6: 10,
    M8: 13,
    M10: 17,
    M12: 19,
    M14: 22,
    M16: 24,
    M20: 30,
  }),
  metric('JIS small series', 'bolt or nut, Japanese vehicles', '', {
    M6: 10,
    M8: 12,
    M10: 14,
    M12: 17,
    M14: 19,
    M16: 22,
    M20: 27,
  }),
  metric('ISO 4162', 'small flange bolt', 'ISO 15071, JIS B 1189', {
    M5: 7,
    M6: 8,
    M8: 10,
    M10: 13,
    M12: 15,
    M14: 18,
    M16: 21,
  }),
  metric('EN 1662', 'small flange bolt', '', { M5: 7, M6: 8, M8: 10, M10: 13, M12: 16, M14: 18, M16: 21 }),
  metric('EN 1665', 'flange bolt', '', {
    M5: 8,
    M6: 10,
    M8: 13,
    M10: 16,
    M12: 18,
    M14: 21,
    M16: 24,
    M20: 30,
  }),
  metric('ISO 4161', 'flange nut', 'ISO 7043, ISO 7044, ISO 10663', {
    M5: 8,
    M6: 10,
    M8: 13,
    M10: 15,
    M12: 18,
    M14: 21,
    M16: 24,
    M20: 30,
  }),
  metric('EN 1661', 'flange nut', '', { M5: 8, M6: 10, M8: 13, M10: 16, M12: 18, M14: 21, M16: 24, M20: 30 }),
  metric('ISO 21670', 'weld nut with flange', '', { M5: 8, M6: 10, M8: 13, M10: 16, M12: 18, M14: 21 }),
  inch('ASME B18.2.1', 'cap screw', {
    '1/4': 7 / 16,
    '5/16': 1 / 2,
    '3/8': 9 / 16,
    '7/16': 5 / 8,
    '1/2': 3 / 4,
    '9/16': 13 / 16,
    '5/8': 15 / 16,
    '3/4': 9 / 8,
  }),
  inch('ASME B18.2.2', 'nut', {
    '1/4': 7 / 16,
    '5/16': 1 / 2,
    '3/8': 9 / 16,
    '7/16': 11 / 16,
    '1/2': 3 / 4,
    '9/16': 7 / 8,
    '5/8': 15 / 16,
    '3/4': 9 / 8,
    '#6': 5 / 16,
    '#8': 11 / 32,
    '#10': 3 / 8,
  }),
  inch('ASME B18.2.2 heavy', 'heavy nut', { '1/2': 7 / 8, '5/8': 17 / 16, '3/4': 5 / 4 }),
  inch('ASME B18.2.1 flange', 'flange screw', {
    '1/4': 3 / 8,
    '5/16': 1 / 2,
    '3/8': 9 / 16,
    '7/16': 5 / 8,
    '1/2': 3 / 4,
    '5/8': 15 / 16,
    '3/4': 9 / 8,
  }),
];

function metric(name: string, makes: string, also: string, widths: WidthStandard['widths']): WidthStandard {
  return { name, makes, alsoFor: also === '' ? [] : also.split(', '), widths, unit: 'mm' };
}

function inch(name: string, makes: string, widths: WidthStandard['widths']): WidthStandard {
  return { name, makes, alsoFor: [], widths, unit: 'in' };
}

/** The standards that give this size a width, each with the width in mm. */
export function widthsFor(
  size: string,
): readonly { readonly standard: WidthStandard; readonly across: number }[] {
  return widthStandards.flatMap((standard) => {
    const width = standard.widths[size];
    return width === undefined ? [] : [{ standard, across: width * (standard.unit === 'in' ? 25.4 : 1) }];
  });
}

/** The standard with this name, its own or one that it is also for; spelling is forgiven, not guessed. */
export function widthStandardNamed(name: string): WidthStandard | undefined {
  const key = (text: string): string => text.toLowerCase().replace(/[\s-]/g, '');
  return widthStandards.find((one) => [one.name, ...one.alsoFor].some((known) => key(known) === key(name)));
}

/**
 * Judges a stated hexagon against the thread it is on: undefined where some standard (or the one named) gives
 * that width, or where none is known; else a message, ready for a finding. A width is never worked out from the
 * thread alone.
 */
export function widthClash(drive: FlatsDrive, thread: Thread, standard?: WidthStandard): string | undefined {
  const known = widthsFor(thread.size).filter((one) => !standard || one.standard === standard);
  if (known.length === 0 || known.some((one) => Math.abs(one.across - drive.across) < 0.01)) return undefined;
  const listed = known.map(
    ({ standard: { name, makes, widths, unit } }) =>
      `${inWords(widths[thread.size] ?? 0, unit)} ${name} (${makes})`,
  );
  return `a ${formatDrive(drive)} is not a width that ${standard ? standard.name : 'any standard known here'} gives ${thread.size}: ${listed.join(', ')}`;
}

function inWords(width: number, unit: 'mm' | 'in'): string {
  if (unit === 'mm') return `${width} mm`;
  const whole = Math.floor(width);
  const top = (width - whole) * 32;
  const divisor = [32, 16, 8, 4, 2, 1].find((size) => top % size === 0 && 32 % size === 0) ?? 1;
  const part = top === 0 ? '' : `${top / divisor}/${32 / divisor}`;
  return `${[whole || '', part].join(' ').trim()} in`;
}
