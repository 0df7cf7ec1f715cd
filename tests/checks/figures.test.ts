import { describe, expect, it } from 'vitest';
import { inspect, memoryFiles } from '../../src/shop/index.ts';
import { noStore } from '../../src/store/store.ts';
import { exampleWorkspace } from '../example-workspace.ts';

const declared = `::part[Edge trim]{#trim}
::fastener[Trim screw]{#screw holds=trim}
::tool[Lever]{#lever}
`;

/** What is found in a guide that takes a trim off and refits it, with `shown` under the sentence. */
async function found(shown: string, sentence = 'With the :tool[lever], :remove[screw] and :remove[trim].') {
  const body = `${declared}\n::step[Take off the trim]{#off}\n\n${sentence}\n\n${shown}\n\n::step[Refit the trim]{#on}\n\n:refit[trim] and :refit[screw].\n`;
  const files = exampleWorkspace({
    'example/guide.md': body,
    'example/edge.svg':
      '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 9 6"><path d="M0 0h9v6H0z"/></svg>',
  });
  const { findings } = await inspect(memoryFiles(files), noStore);
  return findings.map(({ code, message }) => `${code}: ${message}`);
}

const figure = (key: string, attributes = '') =>
  `:::figure[The edge]{src=edge.svg alt="Edge of the trim"${attributes}}\n${key}\n:::`;

describe('an item that is handled', () => {
  it('is marked on any of the step’s pictures, once however often it is handled', async () => {
    expect(await found(figure('- :mark[A]{at="20%,40%"} :part[trim]'))).toEqual([
      'item-unpictured: this step handles the trim screw, and none of its pictures marks it',
    ]);
    const two = [
      figure('- :mark[A]{at="20%,40%"} :part[trim]'),
      figure('- :mark[A]{at="20%,40%"} behind it, :fastener[screw]'),
    ];
    expect(await found(two.join('\n\n'))).toEqual([]);
  });

  it.each([
    ['a step without a picture', ''],
    ['a picture without marks', figure('')],
    ['a picture whose marks name no item', figure('- :mark[A]{at="20%,40%"} lip of the trim')],
    [
      'a tool that is not marked',
      figure('- :mark[A]{at="2%,4%"} :part[trim]\n- :mark[B]{at="3%,4%"} :fastener[screw]'),
    ],
  ])('is not asked for by %s', async (_, shown) => {
    expect(await found(shown)).toEqual([]);
  });

  it('is not missed where a mark could not be read, which is told once', async () => {
    const codes = await found(
      figure('- :mark[A]{at="2%,4%"} :part[trim]\n- :mark[B]{at="here"} :fastener[screw]'),
    );
    expect(codes).toHaveLength(1);
    expect(codes[0]).toMatch(/^attribute-value/);
  });
});

describe('a mark', () => {
  it.each([
    ['0%,0%', []],
    ['100%,100%', []],
  ])('may stand on the edge of the picture: %s', async (at, expected) => {
    expect(await found(figure(`- :mark[A]{at="${at}"} lip`))).toEqual(expected);
  });

  it.each([
    ['50%,40%', true],
    ['75%,60%', true],
    ['49%,40%', false],
    ['76%,40%', false],
    ['60%,61%', false],
  ])('at %s of a picture cropped to its right middle is inside: %s', async (at, inside) => {
    const codes = await found(figure(`- :mark[A]{at="${at}"} lip`, ' crop="50%,20%,75%,60%"'));
    expect(codes).toEqual(
      inside ? [] : ['mark-outside-picture: the mark A points outside the part that is shown'],
    );
  });

  it('has a letter of its own, on each picture', async () => {
    const key = '- :mark[A]{at="2%,4%"} lip';
    expect(await found(`${figure(key)}\n\n${figure(key)}`)).toEqual([]);
    expect(await found(figure(`${key}\n${key}\n${key}`))).toHaveLength(2);
  });
});
