import { readdir, readFile } from 'node:fs/promises';
import { transform } from 'esbuild';
import { expect, it } from 'vitest';
import { compactStyle } from '../../src/html/compact-style.ts';

const folder = new URL('../../templates/styles/', import.meta.url);

it('leaves a style sheet as it is for a browser: esbuild makes the same of both', async () => {
  for (const name of await readdir(folder)) {
    const style = await readFile(new URL(name, folder), 'utf8');
    const compact = compactStyle(style);
    const smallest = async (text: string) =>
      // esbuild leaves custom properties alone; blanks after a colon or a comma part no words in them.
      (await transform(text, { loader: 'css', minify: true, charset: 'utf8' })).code.replace(
        /([:,]) /g,
        '$1',
      );
    expect(await smallest(compact), name).toBe(await smallest(style));
    expect(compact.length, name).toBeLessThan(style.length);
  }
});

it('keeps what stands in quotes, and blanks that part words', () => {
  expect(
    compactStyle(`a :hover > b , c { content : "/* a ;  b: c */" ; margin: 0  calc( 1px + 2px ) ; }`),
  ).toBe(`a :hover > b,c{content :"/* a ;  b: c */";margin:0 calc( 1px + 2px )}`);
  expect(compactStyle('/* one */ @media (min-width: 46rem) and print { a{b:c;} } /* open')).toBe(
    '@media (min-width:46rem) and print{a{b:c}}',
  );
});
