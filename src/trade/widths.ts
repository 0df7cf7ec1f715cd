import { inchFraction } from '../units/fraction.ts';
import { base, type Millimetres } from '../units/quantity.ts';
import type { FlatsDrive } from './drives.ts';
import type { Thread } from './thread.ts';

/** A standard that fixes the width across flats of a hexagon by thread. */
interface WidthStandard {
  /** As cited: `ISO 4014`. */
  readonly name: string;
  /** What it makes: "bolt or nut". */
  readonly makes: string;
  readonly kind: 'hexagon' | 'hexagon-socket';
  /** Other standards with the same widths. */
  readonly alsoFor: readonly string[];
  /** By size, as {@link Thread.size} has it. */
  readonly widths: ReadonlyMap<string, Millimetres>;
}

/** Metric sizes in the order of the columns below. */
const columns = ['M3', 'M4', 'M5', 'M6', 'M8', 'M10', 'M12', 'M14', 'M16', 'M20'];
/** Inch sizes in the order of the columns below. */
const inchColumns = ['#6', '#8', '#10', '1/4', '5/16', '3/8', '7/16', '1/2', '9/16', '5/8', '3/4'];

/**
 * Hexagons in mm that vehicles have and that none of the standards below gives: wheel nuts and bolts, and the bolts
 * of seat-belt anchors (common practice, no source). They are accepted, and no standard is named for them.
 */
const customary: { readonly [size: string]: readonly number[] } = {
  M12: [17, 19, 21],
  M14: [17, 19, 21, 22],
  '7/16': [17, 19.05],
  '1/2': [19, 20.6375, 21],
};

type Row = readonly [name: string, makes: string, also: string, widths: string];

/*
 * ISO 272 is the parent list of the widths of ISO 4014 (from memory).
 * There is no width of "an M10": 16, 17, 15 and 14 mm are all standard, and so on for other sizes. A dash is a
 * size that the standard's table here does not hold.
 */
const hexagons: readonly Row[] = [
  [
    'ISO 4014',
    'bolt or nut',
    'ISO 272, ISO 4017, ISO 4032, ISO 8673, ISO 8765',
    '- 7 8 10 13 16 18 21 24 30',
  ],
  ['DIN 931', 'bolt or nut, older series', 'DIN 933, DIN 934', '- 7 8 10 13 17 19 22 24 30'],
  ['JIS small series', 'bolt or nut, Japanese vehicles', '', '- - - 10 12 14 17 19 22 27'],
  ['ISO 4162', 'small flange bolt', 'ISO 15071, JIS B 1189', '- - 7 8 10 13 15 18 21 -'],
  ['EN 1662', 'small flange bolt', '', '- - 7 8 10 13 16 18 21 -'],
  ['EN 1665', 'flange bolt', '', '- - 8 10 13 16 18 21 24 30'],
  ['ISO 4161', 'flange nut', 'ISO 7043, ISO 7044, ISO 10663', '- - 8 10 13 15 18 21 24 30'],
  ['EN 1661', 'flange nut', '', '- - 8 10 13 16 18 21 24 30'],
  ['ISO 21670', 'weld nut with flange', '', '- - 8 10 13 16 18 21 - -'],
];

const sockets: readonly Row[] = [
  ['ISO 4762', 'socket-head screw', '', '2.5 3 4 5 6 8 10 12 14 -'],
  ['ISO 10642', 'countersunk socket screw', '', '2 2.5 3 4 5 6 8 10 10 -'],
  ['ISO 7380', 'button-head screw', 'ISO 7380-1, ISO 7380-2', '2 2.5 3 4 5 6 8 - 10 -'],
  ['ISO 4026', 'set screw', '', '1.5 2 2.5 3 4 5 6 - 8 -'],
];

/** In 64ths of an inch. */
const inchHexagons: readonly Row[] = [
  ['ASME B18.2.1', 'cap screw', '', '- - - 28 32 36 40 48 52 60 72'],
  ['ASME B18.2.2', 'nut', '', '20 22 24 28 32 36 44 48 56 60 72'],
  ['ASME B18.2.2 heavy', 'heavy nut', '', '- - - - - - - 56 - 68 80'],
  ['ASME B18.2.1 flange', 'flange screw', '', '- - - 24 32 36 40 48 - 60 72'],
];

const inchSockets: readonly Row[] = [
  ['ASME B18.3', 'socket-head screw', '', '- 9 10 12 16 20 24 24 - 32 40'],
  ['ASME B18.3 button', 'button-head screw', '', '- - 8 10 12 14 - 20 - 24 -'],
  ['ASME B18.3 flat', 'countersunk socket screw', '', '- - 8 10 12 14 - 20 - - -'],
];

/** Every standard known here; the data sets behind them are named in the reference test. */
const widthStandards: readonly WidthStandard[] = [
  ...hexagons.map((row) => standard('hexagon', row, columns, 1)),
  ...inchHexagons.map((row) => standard('hexagon', row, inchColumns, 25.4 / 64)),
  ...sockets.map((row) => standard('hexagon-socket', row, columns, 1)),
  ...inchSockets.map((row) => standard('hexagon-socket', row, inchColumns, 25.4 / 64)),
];

function standard(
  kind: WidthStandard['kind'],
  [name, makes, also, row]: Row,
  sizes: readonly string[],
  unit: number,
): WidthStandard {
  const widths = row.split(' ').flatMap((width, column): [string, Millimetres][] => {
    const size = sizes[column];
    return width === '-' || size === undefined ? [] : [[size, base(Number(width) * unit)]];
  });
  return { name, makes, kind, alsoFor: also === '' ? [] : also.split(', '), widths: new Map(widths) };
}

/** Every name by which a standard is known, as it is cited. */
export const widthStandardNames: readonly string[] = widthStandards.flatMap(({ name, alsoFor }) => [
  name,
  ...alsoFor,
]);

/** The standard with this name, its own or one that it is also for; spaces, hyphens and case are forgiven. */
export function widthStandardNamed(name: string): WidthStandard | undefined {
  const key = (text: string): string => text.toLowerCase().replace(/[\s-]/g, '');
  return widthStandards.find((one) => [one.name, ...one.alsoFor].some((known) => key(known) === key(name)));
}

/**
 * Judges a stated hexagon against the thread it is on: undefined where some standard (or the one named) gives
 * that width, or where none is known; else a message, ready for a finding. A width is never worked out from the
 * thread alone.
 */
export function clashOfWidth(drive: FlatsDrive, thread: Thread, named?: WidthStandard): string | undefined {
  const kind = drive.kind === 'twelve-point' ? 'hexagon' : drive.kind;
  if (named && named.kind !== kind) return `${named.name} makes ${nouns[named.kind]}, not ${nouns[kind]}`;
  const usual = named || kind !== 'hexagon' ? undefined : customary[thread.size];
  if (usual?.some((across) => Math.abs(across - drive.across) < 0.01)) return undefined;
  const byWidth = new Map<Millimetres, string[]>();
  for (const one of named ? [named] : widthStandards) {
    const across = one.kind === kind ? one.widths.get(thread.size) : undefined;
    if (across === undefined) continue;
    if (Math.abs(across - drive.across) < 0.01) return undefined;
    byWidth.set(across, [...(byWidth.get(across) ?? []), `${one.name} (${one.makes})`]);
  }
  if (byWidth.size === 0) return undefined;
  const listed = [...byWidth]
    .sort(([a], [b]) => a - b)
    .map(([across, names]) => `${printed(across, thread)} by ${names.join(', ')}`);
  const nobody = named ? `${named.name} does not give` : 'no standard known here gives';
  return `${nobody} ${thread.name} ${nouns[kind]} of ${drive.size}; it is ${listed.join('; ')}`;
}

/** Whether any standard known here gives the thread a hexagon of this kind, so that a stated one can be judged. */
export function hasWidthOf(drive: FlatsDrive, { size }: Thread): boolean {
  const kind = drive.kind === 'twelve-point' ? 'hexagon' : drive.kind;
  return widthStandards.some((one) => one.kind === kind && one.widths.has(size));
}

const nouns = {
  hexagon: 'a hexagon',
  'hexagon-socket': 'a hexagon socket',
  'square-flats': 'a square',
} as const;

function printed(across: Millimetres, { form }: Thread): string {
  return form === 'metric' ? `${across} mm` : `${inchFraction(across).text} in`;
}
