import { type Drive, parseDrive } from '../drives.ts';
import type { DriveTerm } from './glossary-term.ts';

/*
 * The meanings are our own. Where a standard was not read anywhere it is named from memory, and the page says so:
 * widths across flats ISO 272, hexagon keys ISO 2936, external hexalobular DIN 34800, cross recesses ISO 4757 and
 * JIS B 1012, blades for slots ISO 2380-1. None is named for the twelve-point head (ISO 1711-1 is about the torque
 * that sockets stand) and for the pin in a recess (ISO 10664 fixes the lobes alone). Else: common practice, no source.
 */
/** Every way in which a tool takes hold of a fastener. */
export const driveTerms: readonly Omit<DriveTerm, 'kind'>[] = [
  {
    example: drive('hex 13'),
    id: 'hexagon',
    term: 'Hexagon',
    standard: 'ISO 272',
    readIn: null,
    synonyms: ['hex', 'six-point', 'outer hexagon'],
    meaning:
      'Six flats on the outside of a head or nut, gripped by a socket or spanner. The size is the width across flats.',
  },
  {
    example: drive('hex-socket 6'),
    id: 'hexagon-socket',
    term: 'Hexagon socket',
    standard: 'ISO 2936',
    readIn: null,
    synonyms: ['hex key', 'inner hexagon', 'inhex'],
    tradeMarks: ['allen key', 'allen'],
    meaning:
      'A six-sided hole in the head that a hexagon key goes into. The size is the width across flats of the key.',
  },
  {
    example: drive('twelve-point 13'),
    id: 'twelve-point',
    term: 'Twelve-point',
    standard: null,
    readIn: null,
    synonyms: ['bi-hexagon', 'double hexagon', 'twelve-sided'],
    meaning:
      'Two hexagons turned against each other. A twelve-point socket also turns a hexagon, with less grip on its corners.',
  },
  {
    example: drive('square 8 mm'),
    id: 'square-flats',
    term: 'Square head',
    standard: null,
    readIn: null,
    synonyms: ['four-sided head', 'square flats'],
    meaning:
      'Four flats on the outside of a head, gripped by an open spanner. The size is the width across flats.',
  },
  {
    example: drive('T25'),
    id: 'hexalobular',
    term: 'Hexalobular recess',
    standard: 'ISO 10664',
    readIn: 'normdocs.ru, scope of EN ISO 10664',
    synonyms: ['TX', 'star', 'six-lobe', 'star bit'],
    tradeMarks: ['torx'],
    meaning:
      'A recess with six rounded lobes. The number counts up with the size; a bit one number too small rounds the lobes.',
  },
  {
    example: drive('T25 security'),
    id: 'security-hexalobular',
    term: 'Hexalobular recess with pin',
    standard: null,
    readIn: null,
    synonyms: ['security star'],
    tradeMarks: ['security torx', 'tamper torx', 'pin torx'],
    meaning: 'A hexalobular recess with a pin in the middle, so that only a bit with a bore goes in.',
  },
  {
    example: drive('E10'),
    id: 'external-hexalobular',
    term: 'External hexalobular head',
    standard: 'DIN 34800',
    readIn: null,
    synonyms: ['E-socket', 'star head'],
    tradeMarks: ['external torx', 'female torx'],
    meaning: 'Six rounded lobes on the outside of a head. Its E numbers are not the T numbers of the recess.',
  },
  {
    example: drive('square 2'),
    id: 'square',
    term: 'Square recess',
    standard: 'ASME B18.6.3',
    readIn: 'adfastcomponents.com, ASME B18.6.3 type 3 square recessed screws',
    synonyms: ['square drive bit'],
    tradeMarks: ['robertson'],
    meaning: 'A four-sided hole in the head, slightly tapered. Numbers from 0 to 4 count up with the size.',
  },
  {
    example: drive('spline 8'),
    id: 'spline',
    term: 'Spline recess',
    standard: null,
    readIn: null,
    synonyms: ['triple square', 'XZN', 'twelve-point recess'],
    meaning: 'A recess with twelve sharp points. Clean it and drive the bit home: half seated, it strips.',
  },
  {
    example: drive('PH2'),
    id: 'cross-ph',
    term: 'Cross recess, PH',
    standard: 'ISO 4757',
    readIn: null,
    synonyms: ['cross-head', 'crosspoint'],
    tradeMarks: ['phillips'],
    meaning: 'A cross with tapered wings that lifts the bit out when turned hard. Lean on the driver.',
  },
  {
    example: drive('PZ2'),
    id: 'cross-pz',
    term: 'Cross recess, PZ',
    standard: 'ISO 4757',
    readIn: null,
    synonyms: [],
    tradeMarks: ['pozidriv', 'pozi', 'supadriv'],
    meaning:
      'A cross with straight wings and four fine lines between them. A PH bit rides up in it and rounds it.',
  },
  {
    example: drive('JIS2'),
    id: 'cross-jis',
    term: 'Cross recess, JIS',
    standard: 'JIS B 1012',
    readIn: null,
    synonyms: ['Japanese cross-head'],
    meaning:
      'A cross that sits deeper than PH, often with one dimple on the head. A PH bit climbs out of it early.',
  },
  {
    example: drive('slotted'),
    id: 'slotted',
    term: 'Slot',
    standard: 'ISO 2380-1',
    readIn: null,
    synonyms: ['flat blade', 'flat-head', 'minus', 'slot head'],
    meaning: 'One straight slot. The blade should fill it in width and in thickness.',
  },
  {
    example: drive('push-in'),
    id: 'push-in',
    term: 'Push-in fastener',
    standard: null,
    readIn: null,
    synonyms: ['push pin', 'push clip'],
    meaning:
      'A plastic fastener whose pin spreads its legs when pushed in. Raise the pin first, then draw out the body.',
  },
  {
    example: drive('pull-out'),
    id: 'pull-out',
    term: 'Pull-out fastener',
    standard: null,
    readIn: null,
    synonyms: ['press-in clip', 'lever-out clip'],
    meaning: 'A fastener without a head to turn: a lever beside it pulls it out along its own line.',
  },
];

function drive(written: string): Drive {
  const parsed = parseDrive(written);
  if (!parsed.ok) throw new Error(parsed.message);
  return parsed.drive;
}
