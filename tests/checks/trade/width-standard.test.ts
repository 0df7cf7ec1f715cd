import { describe, expect, it } from 'vitest';
import { told } from '../told.ts';

const guide = (attributes: string, across: number) => `::tool[Socket]{#socket drive="hex ${across}"}
::fastener[Beam bolt]{#beam-bolt drive="hex ${across}" ${attributes}}

::step[Turn the bolt]{#bolt}

:loosen[beam-bolt]{with=socket} and :tighten[beam-bolt]{with=socket}.
`;

/*
 * Widths of M10 and M12 by standard, as in tests/reference/widths.test.ts (FreeCAD FastenersWB, BOLTS,
 * neji-trivia.jp); that ISO 272 is the parent of ISO 4014 is from memory.
 */
describe('a fastener that names the standard of its width', () => {
  it.each([
    ['ISO 4014', 'M10x1.5', 16, 17],
    ['ISO 272', 'M12x1.75', 18, 19],
    ['DIN 933', 'M10x1.5', 17, 16],
    ['JIS small series', 'M12x1.25', 17, 18],
    ['EN 1661', 'M10x1.5', 16, 15],
    ['ISO 4161', 'M10x1.5', 15, 16],
  ])('%s, %s: hex %d is right and hex %d is not', async (standard, thread, right, wrong) => {
    const attributes = `thread=${thread} standard="${standard}"`;
    expect(await told(guide(attributes, right))).toEqual([]);
    expect(await told(guide(attributes, wrong))).toEqual([`width-not-standard: hex ${wrong}`]);
  });

  it('is not held against any other, though none gives that width', async () => {
    expect(await told(guide('thread=M10x1.5 standard="ISO 4014"', 12))).toEqual([
      'width-not-standard: hex 12',
    ]);
    expect(await told(guide('thread=M10x1.5', 12))).toEqual(['width-clash: hex 12']);
  });

  it('may not name one that makes another drive', async () => {
    expect(await told(guide('thread=M10x1.5 standard="ISO 4762"', 16))).toEqual([
      'width-not-standard: hex 16',
    ]);
  });

  it('may have it from its type', async () => {
    const files = {
      'fasteners.yaml': 'push-clip: {name: Push clip}\nbolt: {name: Bolt, standard: ISO 4014}\n',
      'example/guide.md': guide('thread=M10x1.5 type=bolt', 17),
    };
    expect(await told(files)).toEqual(['width-not-standard: hex 17']);
  });

  it('names one that is known', async () => {
    expect(await told(guide('thread=M10x1.5 standard="ISO 4041"', 17))).toEqual([
      'attribute-value: ISO 4041',
    ]);
  });
});
