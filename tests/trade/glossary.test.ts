import { describe, expect, it } from 'vitest';
import {
  glossary,
  isTermOf,
  namesOfDrive,
  standardWords,
  termOfDrive,
} from '../../src/trade/glossary/glossary.ts';
import { signalWords } from '../../src/trade/signal-words.ts';
import { drive as readDrive } from './read.ts';

/** One of each drive that the format knows. */
const drives = [
  'hex 13',
  'hex 1/2 in',
  'hex-socket 5',
  'twelve-point 14',
  'square 8 mm',
  'T15',
  'T15 security',
  'E10',
  'square 2',
  'spline 8',
  'PH2',
  'PZ2',
  'JIS2',
  'slotted',
  'push-in',
  'pull-out',
];

describe('the glossary', () => {
  it('has one entry for each drive, and tells the three cross recesses apart', () => {
    for (const written of drives) {
      const drive = readDrive(written);
      expect(
        glossary.filter((term) => isTermOf(term, drive)),
        written,
      ).toHaveLength(1);
    }
    expect(new Set(['PH2', 'PZ2', 'JIS2'].map((written) => termOfDrive(readDrive(written)).id)).size).toBe(3);
  });

  it('has the four words of ANSI Z535.6, most severe first', () => {
    const words = glossary.filter((term) => term.kind === 'signal-word').map(({ term }) => term);
    expect(words).toEqual(signalWords.map((word) => word.toUpperCase()));
  });

  it('gives each entry an anchor of its own, a meaning in whole sentences, and a standard by its body and number', () => {
    expect(new Set(glossary.map(({ id }) => id)).size).toBe(glossary.length);
    for (const { id, meaning, standard } of glossary) {
      expect(id).toMatch(/^[a-z]+(?:-[a-z]+)*$/);
      expect(meaning).toMatch(/^[A-Z].{30,}\.$/);
      if (standard !== null)
        expect(standard).toMatch(/^(?:(?:ISO|DIN|ANSI|ASME|JIS) (?:[A-Z] ?)?\d[\d.-]*(?:, |$))+$/);
    }
  });

  it('names the standard that fixes the shape (ISO 10664 six lobes, ISO 4757 cross recesses)', () => {
    expect(termOfDrive(readDrive('T25')).standard).toBe('ISO 10664');
    expect(termOfDrive(readDrive('PH2')).standard).toBe('ISO 4757');
  });

  it('says of a standard that nobody looked up that it is from memory, and names none where it is doubtful', () => {
    const words = new Map(glossary.map((term) => [term.id, standardWords(term)]));
    expect(words.get('hexalobular')).toBe('ISO 10664');
    expect(words.get('hexagon')).toBe('ISO 272 (from memory, not checked)');
    // ISO 10664 fixes the lobes and knows no pin; ISO 1711-1 is about the torque that sockets stand.
    expect(words.get('security-hexalobular')).toBeNull();
    expect(words.get('twelve-point')).toBeNull();
    for (const { standard, readIn } of glossary) if (standard === null) expect(readIn).toBeNull();
  });

  it('says a size with every name of its drive', () => {
    expect(namesOfDrive(readDrive('T25'))).toContain('torx 25');
    expect(namesOfDrive(readDrive('hex-socket 5'))).toContain('allen key 5 mm');
    expect(namesOfDrive(readDrive('slotted'))).toContain('flat blade');
  });
});

it('prints no maker’s name, by which search finds an entry all the same', () => {
  const printed = glossary.flatMap(({ term, meaning, synonyms }) => [term, meaning, ...synonyms]).join(' ');
  // Names that are, or were, registered by makers of drives and rivet nuts: from memory.
  expect(printed).not.toMatch(/\b(torx|allen|inbus|phillips|pozi\w*|supadriv|robertson|nutsert|rivnut)\b/i);
  expect(glossary.flatMap(({ tradeMarks = [] }) => tradeMarks)).toContain('torx');
});
