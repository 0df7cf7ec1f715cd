import { mkdir, readdir, readFile, symlink, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { adopted } from '../../src/adopt/index.ts';
import { directiveNames } from '../../src/guide/index.ts';
import { diskFiles } from '../../src/shop/files/disk-files.ts';
import { openWorkspace } from '../../src/shop/open-workspace.ts';
import { sourceFile } from '../../src/source/source-file.ts';
import { readMarkdown } from '../../src/syntax/read.ts';
import { baybook, bench } from '../driver.ts';
import { runs } from '../samples.ts';
import { officeFile, p, picture, zip } from './office-file.ts';

const shop = join(import.meta.dirname, 'shop');

const opened = openWorkspace(diskFiles(shop));

/** Drafts a guide from bytes, with nothing beside them. */
async function draft(name: string, content: string | Uint8Array): Promise<string> {
  const workspace = await opened;
  const given = { shop: workspace.shop, platform: 'sable-cob', from: name, title: null };
  return (await adopted(name, new Uint8Array(Buffer.from(content)), () => null, given)).text;
}

/** What the reader of guides finds wrong with the syntax of a text. */
function faults(text: string): readonly string[] {
  const found: string[] = [];
  const { sound } = readMarkdown(sourceFile('guide.md', text), directiveNames, ({ code }) =>
    found.push(code),
  );
  return sound ? found : [...found, 'not sound'];
}

describe('a file that means harm or is broken', () => {
  const part = (content: string | Uint8Array) => zip([['word/document.xml', content]]);

  it.each<[string, string, string | Uint8Array, string]>([
    [
      'a part that unpacks to far more',
      'a.docx',
      part(new Uint8Array(20 * 1024 * 1024)),
      'its part word/document.xml unpacks to more than a guide can hold',
    ],
    [
      'a file that was cut short',
      'a.docx',
      part('<w:document/>').subarray(0, 60),
      'its end is missing, as of a file that was cut short',
    ],
    ['a damaged part', 'a.docx', damaged(part('<w:document/>')), 'its part word/document.xml is damaged'],
    ['another zip', 'a.docx', zip([['a.txt', 'a']]), 'it is a zip, but holds no text of a word processor'],
    [
      'XML that declares entities',
      'a.docx',
      part('<!DOCTYPE a [<!ENTITY b "c">]><a/>'),
      'it declares entities, which no word processor does',
    ],
    ['broken XML', 'a.docx', part('<w:document><w:p>'), 'its text is damaged'],
    [
      'a text by the name of a word processor’s',
      'a.docx',
      'Remove it.',
      'it is no file of a word processor, whatever its name says',
    ],
    [
      'the old format',
      'a.doc',
      new Uint8Array([0xd0, 0xcf, 0x11, 0xe0, 0xa1]),
      'it is in the word processor’s old format; save it as .docx',
    ],
    [
      'a print',
      'a.pdf',
      '%PDF-1.7',
      'it is a PDF, which holds no order of its words; take the file that it was printed from, or save its text',
    ],
    ['bytes', 'a.txt', 'a\0b', 'it is no text; .docx, .html, .md and .txt are read'],
  ])('is refused with its cause: %s', async (_, name, content, message) => {
    await expect(draft(name, content)).rejects.toThrow(message);
  });

  it('is read as far as words go where it is nested without end', async () => {
    const text = await draft('a.html', `${'<div>'.repeat(3_000)}Remove the cover.${'</div>'.repeat(3_000)}`);
    expect(text).toContain('the cover');
    expect(faults(text)).toEqual([]);
  });

  it('brings no script, no live link and nothing from outside', async () => {
    const html = `<h1>Lamp</h1><script>alert('stolen')</script><style>p{}</style><p onclick="run()">Fit it. <a href="javascript:steal()">More</a>
      <a href="https://example.com/a">there</a><img src="https://example.com/spy.png" alt="Far"><img src="../secret.png"><img src="file:///etc/hostname"></p>`;
    const text = await draft('a.html', html);
    expect(text).not.toMatch(/stolen|onclick|javascript|steal|\]\(|<(?!!--)/);
    expect(text).toContain('“there: https://example.com/a”');
    expect(text).toContain('it was a picture at https://example.com/spy.png');
    const linked = officeFile({
      body: p(`<w:r><w:t>Fit it.</w:t></w:r>${picture('far', 'Roof', true)}`),
      outside: { far: ['image', 'file:///etc/hostname'] },
    });
    expect(await draft('a.docx', linked)).toContain('it was a picture that lies outside the file');
  });

  it('cannot write directives, marks or a way out of a comment', async () => {
    const lines = [
      'Lamp',
      '::step[Mine]{#mine}',
      ':::danger[No]',
      'Run :remove[x]{with=y} and {#id} and `code` --> <b>now</b>.',
      'Remove the four T25 screws --> ::tool{#x} <!-- from the "arch" [a|b] liner.',
      '# heading *one* _two_ ~~three~~ &amp; &#58;',
      '---',
    ];
    for (const name of ['a.txt', 'a.md', 'a.html']) {
      const text = await draft(name, lines.join('\n\n'));
      expect(faults(text), `${name}\n${text}`).toEqual([]);
      expect(text).not.toMatch(/^::step\[Mine|^:::danger|(?<!\\)\{#mine\}/m);
    }
  });
});

/** The same file with a byte within its first packed part changed. */
function damaged(file: Uint8Array): Uint8Array {
  const changed = Uint8Array.from(file);
  changed[50] = 0xff;
  return changed;
}

it('reads a heading, a name and a title as they are meant', async () => {
  const text = await draft(
    'a.html',
    `<h1>Awning</h1><h3>What's supplied</h3><table><tr><td>Bracket</td><td>x3</td></tr><tr><td>Case</td><td>x1</td></tr></table>
    <h3>How to fit it</h3><p>1. Attach the three brackets loosely.</p><p>2. With a helper, lift the case up.</p>`,
  );
  expect(text).toContain('::kit[Bracket]{#bracket count=3}');
  expect(text).toContain(':fit[bracket]{say=attach} loosely.');
  expect(text).toContain('::step[Lift the case up]');
});

it('drafts a sound guide from any text, and loses none of it', async () => {
  const pieces = [
    'Remove the four T25 screws',
    ' from the arch',
    'WARNING: ',
    '1. ',
    'Step 2 - ',
    '\n',
    '\n\n',
    '\n- ',
    '. ',
    ' to 8 Nm',
    ' | ',
    '{#a}',
    '::x[',
    ']',
    '`',
    '*',
    '"',
    '“',
    '<b>',
    '-->',
    '&lt;',
    ':a[b]',
    'Tools',
    '---',
    '$',
    '\\',
    '(4)',
    'é',
    'FIT',
    'Refit the two screws',
    '#',
    '>',
    '~~',
  ];
  const words = fc.array(fc.constantFrom(...pieces), { minLength: 1, maxLength: 25 });
  await fc.assert(
    fc.asyncProperty(words, fc.constantFrom('a.txt', 'a.md', 'a.html'), async (parts, name) => {
      const text = await draft(name, parts.join(''));
      expect(faults(text)).toEqual([]);
      // In a text file, nothing is a mark: whatever has letters must be there.
      const letters = (one: string) => one.replace(/[^\p{L}\p{N}]+/gu, '').toLowerCase();
      if (name === 'a.txt')
        for (const part of parts)
          if (/^[A-Z][a-z]+ the/.test(part)) expect(letters(text)).toContain(letters(part));
    }),
    runs(10, 3000),
  );
});

it('never overwrites, takes pictures from beside the old guide alone, and writes all or nothing', async () => {
  const { folder } = await bench(shop);
  const old = join(folder, 'old');
  await mkdir(old);
  const png = await readFile(join(import.meta.dirname, 'old/pictures/rail.png'));
  await writeFile(join(folder, 'secret.png'), png);
  await writeFile(join(old, 'near.png'), png);
  await symlink(join(folder, 'secret.png'), join(old, 'link.png'));
  await writeFile(
    join(old, 'lamp.md'),
    '# Lamp\n\n![a](../secret.png) ![b](link.png) ![c](near.png)\n\n1. Fit the lamp.\n',
  );
  await writeFile(join(old, 'other.md'), '# Lamp\n\n1. Fit it.\n');
  await writeFile(join(old, 'broken.docx'), 'no');

  const both = await baybook(folder, 'adopt', 'old/lamp.md', 'old/other.md');
  expect(both).toEqual({
    code: 2,
    out: '',
    err: 'baybook: old/other.md has the title of another one, lamp; give each its own run, with --title\n',
  });
  const broken = await baybook(folder, 'adopt', 'old/lamp.md', 'old/broken.docx');
  expect(broken.err).toBe(
    'baybook: old/broken.docx is not read: it is no file of a word processor, whatever its name says\n',
  );
  expect((await baybook(folder, 'adopt', 'old/none.md')).err).toBe(
    'baybook: there is no file "old/none.md"\n',
  );
  expect(await readdir(join(folder, 'guides'))).not.toContain('lamp');

  const made = await baybook(folder, 'adopt', 'old/lamp.md');
  expect(made.out.split('\n').slice(0, 2)).toEqual([
    'wrote guides/lamp/guide.md',
    'wrote guides/lamp/pictures/near.png',
  ]);
  const text = await readFile(join(folder, 'guides/lamp/guide.md'), 'utf8');
  expect(text).toContain('it was a picture at ../secret.png, which is not beside the old guide');
  expect(text).toContain('it was a picture at link.png, which is not beside the old guide');
  await writeFile(join(folder, 'guides/lamp/guide.md'), 'mine\n');
  const again = await baybook(folder, 'adopt', 'old/lamp.md');
  expect(again.err).toBe('baybook: guides/lamp/guide.md is there already, and is left as it is\n');
  expect(await readFile(join(folder, 'guides/lamp/guide.md'), 'utf8')).toBe('mine\n');
});
