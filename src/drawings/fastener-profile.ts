import type { Element } from 'hast';
import { s } from 'hastscript';
import type { Drive } from '../trade/drives.ts';
import type { FastenerShape } from '../trade/glossary/glossary-term.ts';
import { NARROW, WIDE } from './shapes.ts';

/** Words of the trade that name a shape, most telling first. */
const byWord: readonly (readonly [RegExp, FastenerShape])[] = [
  [/\b(rivet|insert|blind) nut\b/, 'rivet-nut'],
  [/\bflanged? nut\b/, 'flange-nut'],
  [/\bnut\b/, 'nut'],
  [/\bwasher\b/, 'washer'],
  [/\bstud\b/, 'stud'],
  [/\bspring clip\b/, 'spring-clip'],
  [/\b(countersunk|flat)[ -]?(head)?\b/, 'countersunk'],
  [/\bpan[ -]head\b/, 'pan-head'],
  [/\bflanged?\b/, 'flange-head'],
];

/** The profile for a fastener by its name and its drive, or `null` where neither tells. */
export function profileFor(name: string, drive: Drive | null): FastenerShape | null {
  const lower = name.toLowerCase();
  for (const [word, profile] of byWord) if (word.test(lower)) return profile;
  switch (drive?.kind) {
    case undefined:
      return null;
    case 'push-in':
    case 'pull-out':
      return drive.kind;
    case 'hexagon':
    case 'twelve-point':
    case 'square-flats':
    case 'external-hexalobular':
      return 'hexagon-head';
    case 'hexagon-socket':
    case 'spline':
      return 'socket-head';
    default:
      return 'pan-head';
  }
}

/** A fastener from the side, head up, 32 × 40 units, in the colour of the text. Proportions are typical, not a size. */
export function fastenerProfile(profile: FastenerShape): Element {
  const { wide, narrow } = profiles[profile];
  return s(
    'svg',
    {
      className: ['profile', `fastener-${profile}`],
      viewBox: '0 0 32 40',
      ariaHidden: 'true',
      focusable: 'false',
    },
    s('path', {
      d: wide,
      fill: 'none',
      stroke: 'currentColor',
      'stroke-width': WIDE,
      'stroke-linejoin': 'round',
    }),
    s('path', { d: narrow, fill: 'none', stroke: 'currentColor', 'stroke-width': NARROW }),
  );
}

/** Threads are drawn after ISO 6410: wide lines for the crests, narrow ones for the roots. */
const shank = 'M11 13V37L12.5 38.5H19.5L21 37V13';
const thread = 'M13 20V38M19 20V38M11 20H21';

/** Wide and narrow lines of each, as path data. */
const profiles: Readonly<Record<FastenerShape, { readonly wide: string; readonly narrow: string }>> = {
  'hexagon-head': { wide: `M6 4.5L8 3H24L26 4.5V13H6Z${shank}`, narrow: `M11 4V13M21 4V13${thread}` },
  'flange-head': {
    wide: `M8.5 3.5L10 2H22L23.5 3.5V10H8.5ZM8.5 10L4 12.2V14H28V12.2L23.5 10${shank}`,
    narrow: `M12.4 3V10M19.6 3V10${thread}`,
  },
  'socket-head': {
    wide: `M7.5 3L8.5 2H23.5L24.5 3V13H7.5Z${shank}`,
    narrow: `M12 2V8.5L16 10.5L20 8.5V2${thread}`,
  },
  'pan-head': {
    wide: `M6 13V9C6 5.5 10 4 16 4S26 5.5 26 9V13Z${shank}`,
    narrow: `M13 4.2V9H19V4.2${thread}`,
  },
  countersunk: { wide: 'M5 3H27L21 10V37L19.5 38.5H12.5L11 37V10L5 3Z', narrow: `M13 3V7H19V3${thread}` },
  nut: { wide: 'M4 13.5L6 12H26L28 13.5V26.5L26 28H6L4 26.5Z', narrow: 'M10 12.5V27.5M22 12.5V27.5' },
  'flange-nut': {
    wide: 'M7 11.5L8.5 10H23.5L25 11.5V23H7ZM7 23L3 26.5V29H29V26.5L25 23',
    narrow: 'M11.6 10.5V23M20.4 10.5V23',
  },
  'rivet-nut': {
    wide: 'M3 6H29V9H3ZM8 9V17C8 19 10 19 10 21V35H22V21C22 19 24 19 24 17V9',
    narrow: 'M12.5 6V9M19.5 6V9M12.5 21V35M19.5 21V35',
  },
  stud: {
    wide: 'M11 4L12.5 2.5H19.5L21 4V36L19.5 37.5H12.5L11 36Z',
    narrow: 'M13 3V14M19 3V14M11 14H21M13 26V37M19 26V37M11 26H21',
  },
  washer: {
    wide: 'M2 17.5H30V22.5H2Z',
    narrow:
      'M11 17.5V22.5M21 17.5V22.5M2 20L4.5 17.5M3 22.5L8 17.5M8 22.5L11 19.5M21 20L23.5 17.5M22 22.5L27 17.5M27 22.5L30 19.5',
  },
  'push-in': {
    wide: 'M10.5 2H21.5V5H10.5ZM14.2 5V12M17.8 5V12M4 12H28V15.5H4ZM10.5 15.5V29L13 37H14.5V22M21.5 15.5V29L19 37H17.5V22',
    narrow: 'M14.5 22V15.5M17.5 22V15.5M10.5 27L8.5 25.5V19.5L10.5 18M21.5 27L23.5 25.5V19.5L21.5 18',
  },
  'pull-out': {
    wide: 'M4 4H28V7.5H4ZM14.4 7.5V37L16 39L17.6 37V7.5',
    narrow:
      'M14.4 12L7 15.5L14.4 14.5M17.6 12L25 15.5L17.6 14.5M14.4 19L7.5 22.5L14.4 21.5M17.6 19L24.5 22.5L17.6 21.5M14.4 26L8 29.5L14.4 28.5M17.6 26L24 29.5L17.6 28.5',
  },
  'spring-clip': {
    wide: 'M13 15L6.5 23L12.5 37M19 15L25.5 23L19.5 37M13 15V3H19V15',
    narrow: 'M13 15L16 12L19 15M15 22L16 33L17 22',
  },
};
