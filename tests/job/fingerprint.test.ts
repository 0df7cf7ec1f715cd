import { describe, expect, it } from 'vitest';
import { fingerprints } from '../../src/job/fingerprint.ts';
import { fastener, type GuideWords, guide, part, prose, text, written } from './builder.ts';

const words: GuideWords = {
  items: [part('cover'), fastener('screw', { count: 3 })],
  steps: [
    { id: 'a', do: ['remove screw'], blocks: [prose(text('Mind the\nedge.'))] },
    { id: 'b', do: ['remove cover'] },
  ],
};
const plain = fingerprints(guide(words));

describe('a fingerprint', () => {
  it('stays when only the layout of the text changes', () => {
    const moved = guide({
      ...words,
      items: [...words.items],
      steps: [
        { id: 'a', do: ['remove screw'], blocks: [prose(text('Mind the   edge.'))] },
        { id: 'b', do: ['remove cover'] },
      ],
    });
    const later = { ...moved, revision: written('9'), updated: written('2027-01-01') };
    expect(fingerprints(later)).toEqual(plain);
    expect(plain.guide).toMatch(/^[0-9a-f]{64}$/);
  });

  it('changes with a declaration, in the steps that print it and in no other', () => {
    const other = fingerprints(guide({ ...words, items: [part('cover'), fastener('screw', { count: 4 })] }));
    expect(other.guide).not.toBe(plain.guide);
    expect(other.steps.get('a')).not.toBe(plain.steps.get('a'));
    expect(other.steps.get('b')).toBe(plain.steps.get('b'));
  });

  it('changes with the words of a step', () => {
    const [, second] = words.steps ?? [];
    const other = fingerprints(
      guide({ ...words, steps: [{ id: 'a', do: ['remove screw'] }, second ?? { do: [] }] }),
    );
    expect(other.steps.get('a')).not.toBe(plain.steps.get('a'));
    expect(other.steps.get('b')).toBe(plain.steps.get('b'));
  });
});
