import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { changedLines, sureMends } from '../../src/desk/sure-mends.ts';
import { sourceFile } from '../../src/source/source-file.ts';
import { asked, bench } from '../driver.ts';
import { exampleWorkspace } from '../example-workspace.ts';

const guide = 'example/guide.md';
const slips = [
  '::part[Trim]{#trim}',
  '::part[Cover]{#cover}',
  '::fastener[Clip]{#clip holds=“trim” count=2}',
  '::fastener[Tab]{#tab holds="trim,cover"}',
  '',
  '::step[Free the trim]{#free time=3 min}',
  '',
  ':remove[clip] {when=fog}, :remove[tab], :remove[trim] and :remove[cover].',
  '',
].join('\n');

it('mends what needs no judgement, shows it first, and finds nothing more the second time', async () => {
  const { folder, check } = await bench({
    ...exampleWorkspace(slips),
    'shop.yaml': '\uFEFFname: Example Fitting\n',
  });
  const path = join(folder, 'guides', guide);
  const written = await readFile(path, 'utf8');

  const shown = await check('--fix');
  expect(shown.out).toContain(
    '- ::step[Free the trim]{#free time=3 min}\n+ ::step[Free the trim]{#free time="3 min"}\n',
  );
  expect(shown.out).toContain('nothing was written; --fix --yes writes it\n');
  expect(await readFile(path, 'utf8')).toBe(written);
  await asked(folder, ['n'], 'check', '--fix');
  expect(await readFile(path, 'utf8')).toBe(written);

  const answer = await asked(folder, ['y'], 'check', '--fix');
  expect(answer.out).toContain('mended guides/example/guide.md\n');
  const mended = await readFile(path, 'utf8');
  expect(mended).toBe(
    written
      .replace('“trim”', '"trim"')
      .replace('"trim,cover"', '"trim cover"')
      .replace('time=3 min', 'time="3 min"')
      .replace('[clip] {', '[clip]{'),
  );
  expect((await check('--fix', '--yes')).out).toContain('nothing can be mended without judgement\n');
  expect(await readFile(path, 'utf8')).toBe(mended);
});

it('never touches an id, a count, a torque or a none, nor any word or number', () => {
  const text = '::kit[Nut]{#my_nut count=“4” torque=“25 N·m” on=a_b}\n::none{of=“kit”}\n';
  const source = sourceFile(guide, text);
  const suggest = (code: string, from: string, to: string) => {
    const start = text.indexOf(from);
    const at = { file: guide, start, end: start + from.length };
    return sureMends(
      [{ code, severity: 'error', message: '', at, notes: [], suggestion: { at, text: to } }],
      new Map([[guide, source]]),
    );
  };
  expect(suggest('attribute-value', 'my_nut', 'my-nut')).toEqual([]);
  expect(suggest('quotes-curly', '“4”', '"4"')).toEqual([]);
  expect(suggest('quotes-curly', '“25 N·m”', '"25 N·m"')).toEqual([]);
  expect(suggest('quotes-curly', '“kit”', '"kit"')).toEqual([]);
  expect(suggest('attribute-value', 'a_b', 'a-b')).toEqual([]);
  expect(suggest('directive-unknown', 'kit', 'fit')).toEqual([]);
  expect(suggest('quotes-curly', 'Nut', 'Bolt')).toEqual([]);
  expect(suggest('directive-form', '::kit', ':::kit')).toHaveLength(1);
});

it('shows what differs', () => {
  expect(changedLines('a.md', 'one\ntwo\n', 'one\n"two"\n')).toBe('a.md:2\n- two\n+ "two"\n');
  expect(changedLines('a.md', '\n\n---\nx\n', '---\nx\n')).toBe('a.md:1\n- \n- \n');
});
