import { describe, expect, test } from 'vitest';
import { instructionsOf } from '../../../src/checks/language/clauses.ts';
import { sentencesOf } from '../../../src/checks/language/sentences.ts';
import { inspect, memoryFiles } from '../../../src/shop/index.ts';
import { exampleWorkspace } from '../../example-workspace.ts';

const declared =
  '::part[Cover]{#cover}\n::fastener[Arch screw]{#arch-screw count=3 side=each}\n::connector[Fog plug]{#fog-plug when=fog}\n\n';

/** The sentences of a step's text: as printed, as written, and where their instructions begin. */
async function read(text: string) {
  const files = exampleWorkspace(`${declared}::step[Free the arch edge]{#arch side=each}\n\n${text}`);
  const { guides } = await inspect(memoryFiles(files));
  const [{ guide } = {}] = guides;
  const step = guide?.sections.flatMap(({ steps }) => steps)[0];
  if (!guide || !step) throw new Error('the guide cannot be read');
  const blocks = step.blocks.flatMap((block) => (block.type === 'prose' ? [block.content] : []));
  return blocks.flatMap((prose) =>
    sentencesOf(prose, guide, 'each').map((sentence) => ({
      printed: sentence.words.map((word) => word.text + word.mark).join(' '),
      written: files[sentence.at.file]?.slice(sentence.at.start, sentence.at.end),
      instructions: instructionsOf(sentence).map((index) => sentence.words[index]?.text),
    })),
  );
}

describe('sentences', () => {
  test('are read as they are printed, and point at what was written', async () => {
    expect(await read('Ease it forward. :remove[arch-screw]{with=x}, then lift.')).toMatchObject([
      { printed: 'ease it forward', written: 'Ease it forward.' },
      { printed: 'remove the 3 arch screws, then lift', written: ':remove[arch-screw]{with=x}, then lift.' },
    ]);
  });

  test('take in what stands for some builds only', async () => {
    const [first, second] = await read(
      ':where[Reach behind and :disconnect[fog-plug].]{when=fog}\nThen :remove[cover]{say="lift away"}.',
    );
    expect(first).toMatchObject({ printed: 'reach behind and disconnect the fog plug' });
    expect(second).toMatchObject({
      printed: 'then lift away the cover',
      written: 'Then :remove[cover]{say="lift away"}.',
      instructions: ['lift'],
    });
  });

  test('end neither at a short form nor within a number', async () => {
    expect((await read('Leave a gap, e.g. 2.5 mm. Go on.')).map(({ printed }) => printed)).toEqual([
      'leave a gap, e.g 2.5',
      'go on',
    ]);
  });

  test('of list items stand for themselves, and tables are not read', async () => {
    const text =
      '- Keep the screws in a bag\n- Look at the **seal**\n\n| a | b |\n|---|---|\n| Pull | Push |\n';
    expect((await read(text)).map(({ printed }) => printed)).toEqual([
      'keep the screws in a bag',
      'look at the seal',
    ]);
  });
});

describe('instructions', () => {
  test.each([
    ['Remove the screws and the clips.', ['remove']],
    ['Wipe, prime and dry the edge.', ['wipe', 'prime', 'dry']],
    ['Once the glue is dry, take off the tape and bin it.', ['take', 'bin']],
    ['Tape covers the edge.', []],
    ['Tape the edge.', ['tape']],
    ['Screw heads face up.', []],
    ['Never lever under the pin.', ['lever']],
    ['Then slowly lower the tray.', ['lower']],
    ['The clip sits behind the lip and holds the edge.', []],
  ])('of "%s"', async (text, verbs) => {
    const [sentence] = await read(text);
    expect(sentence?.instructions).toEqual(verbs);
  });
});
