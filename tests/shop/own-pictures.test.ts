import { expect, it } from 'vitest';
import { inspect, memoryFiles } from '../../src/shop/index.ts';
import { noStore } from '../../src/store/store.ts';
import { exampleWorkspace } from '../example-workspace.ts';

const drawing = '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 9 9"><path d="M0 0h9v9z"/></svg>';

async function found(files: { readonly [path: string]: string }) {
  const { findings, shop } = await inspect(memoryFiles(exampleWorkspace(files)), noStore);
  return {
    shop,
    told: findings.map(({ code, at, message }) => [code, at.file, message]),
  };
}

it('a picture of a tool and of a kind of fastener is found from the folder of the list', async () => {
  const { shop, told } = await found({
    'tools.yaml': 'bit-t25: {name: T25 bit, drive: T25, picture: pictures/bit.svg}\n',
    'fasteners.yaml': 'push-clip: {name: Push clip, picture: pictures/clip.svg}\n',
    'pictures/bit.svg': drawing,
    'pictures/clip.svg': drawing,
  });
  expect(told).toEqual([]);
  expect([...shop.ownPictures].map(([of, { path, alt }]) => [of, path, alt?.value])).toEqual([
    ['tool bit-t25', 'pictures/bit.svg', 'T25 bit'],
    ['fastener push-clip', 'pictures/clip.svg', 'Push clip'],
  ]);
});

it('one that is not there, that leaves the workspace or that fetches another is a finding in the list', async () => {
  const { told } = await found({
    'tools.yaml':
      'bit-t25: {name: T25 bit, picture: pictures/bti.svg}\nbit-t30: {name: T30 bit, picture: ../bit.svg}\nlever: {name: Lever, picture: pictures/lever.svg}\n',
    'pictures/bit.svg': drawing,
    'pictures/lever.svg': drawing.replace('<path', '<image href="https://example.org/x.png"/><path'),
  });
  expect(told.map(([code, file]) => [code, file])).toEqual([
    ['picture-missing', 'tools.yaml'],
    ['picture-missing', 'tools.yaml'],
    ['drawing-part-unsupported', 'tools.yaml'],
  ]);
  expect(told[0]?.[2]).toBe('there is no picture "pictures/bti.svg"; looked for pictures/bti.svg');
});
