import { type Drive, writtenDrive } from './drives.ts';

/** Drives of one kind, as a line of the gather list names them. */
interface DriveSet {
  readonly kind: string;
  /** Each once, smallest first. */
  readonly drives: readonly Drive[];
  /** `T15, T20 bits`, `7, 10, 13 mm hexagon`, `slotted driver`. */
  readonly text: string;
}

/** Merges drives into sets by kind, so that the gather list shows "T15, T20 bits" and not two lines. */
export function mergeDrives(drives: readonly Drive[]): readonly DriveSet[] {
  const groups = new Map<string, Map<string, Drive>>();
  for (const drive of drives) {
    const key = groupOf(drive);
    const group = groups.get(key) ?? new Map<string, Drive>();
    groups.set(key, group.set(writtenDrive(drive), drive));
  }
  return [...groups]
    .sort(([a], [b]) => (a < b ? -1 : 1))
    .map(([kind, group]) => {
      const sorted = [...group.values()].sort((a, b) => sizeOf(a) - sizeOf(b));
      return { kind, drives: sorted, text: textOf(kind, sorted) };
    });
}

function groupOf(drive: Drive): string {
  if (drive.kind === 'cross') return drive.form;
  return 'across' in drive ? `${drive.kind} ${drive.size.endsWith(' in') ? 'in' : 'mm'}` : drive.kind;
}

function sizeOf(drive: Drive): number {
  if ('across' in drive) return drive.across;
  return 'number' in drive ? drive.number : 0;
}

const nouns: { readonly [kind in Exclude<Drive['kind'], 'cross'>]: string } = {
  hexagon: 'hexagon',
  'hexagon-socket': 'hexagon key',
  'twelve-point': 'twelve-point',
  'square-flats': 'square',
  hexalobular: 'bit',
  'security-hexalobular': 'bit',
  'external-hexalobular': 'socket',
  square: 'bit',
  spline: 'bit',
  slotted: 'slotted driver',
  'push-in': 'clip lifter',
  'pull-out': 'trim lever',
};

function textOf(kind: string, drives: readonly Drive[]): string {
  const first = drives[0];
  if (!first) throw new Error(`no drive of kind ${kind}`);
  const noun = first.kind === 'cross' ? 'bit' : nouns[first.kind];
  if ('across' in first) {
    const unit = first.size.endsWith(' in') ? 'in' : 'mm';
    const sizes = drives.map((drive) => ('across' in drive ? drive.size.slice(0, -3) : ''));
    return `${sizes.join(', ')}\u00a0${unit} ${plural(noun, drives.length)}`;
  }
  if (!('number' in first)) return noun;
  return `${drives.map(writtenDrive).join(', ')} ${plural(noun, drives.length)}`;
}

/** "hexagon" and "twelve-point" name the fit, not a thing, and stay as they are. */
function plural(noun: string, count: number): string {
  return count > 1 && /(bit|key|socket)$/.test(noun) ? `${noun}s` : noun;
}
