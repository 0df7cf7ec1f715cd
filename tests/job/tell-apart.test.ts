import { describe, expect, it } from 'vitest';
import { nounOf } from '../../src/job/index.ts';
import { tellApart } from '../../src/job/words/tell-apart.ts';
import type { Item } from '../../src/model/item.ts';

function nouns(...labels: readonly string[]): readonly string[] {
  const items = labels.map(
    (label, index) => [`item-${index}`, { kind: 'kit', noun: nounOf(label) } as Item] as const,
  );
  return [...tellApart(new Map(items)).values()].map(({ noun }) => `${noun.singular} | ${noun.plural}`);
}

describe('look-alikes', () => {
  it('print their whole labels where their nouns coincide', () => {
    expect(nouns('Spacer, 12 mm', 'Spacer, 18 mm', 'Washer, plain')).toEqual([
      'spacer, 12 mm | spacers, 12 mm',
      'spacer, 18 mm | spacers, 18 mm',
      'washer | washers',
    ]);
  });

  it('are found whatever their capitals', () => {
    expect(nouns('LED lamp, left', 'Led lamp, right')).toEqual([
      'LED lamp, left | LED lamps, left',
      'led lamp, right | led lamps, right',
    ]);
  });

  it('leave a label without a comma as it is', () => {
    expect(nouns('Cable', 'Cable, black')).toEqual(['cable | cables', 'cable, black | cables, black']);
  });
});
