import { readFile, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { asked, type Bench, baybook, bench } from '../driver.ts';
import { exampleWorkspace } from '../example-workspace.ts';

const guide = (revision: string, torque: string, more = '') => `---
title: Example guide
platform: example-van
revision: ${revision}
---

::none{of=wear}
::none{of=supplies}
::none{of=conditions}
::tool[Torque wrench]{#wrench range="5..60 N·m"}
::tool[13 mm socket]{#socket-13 drive="hex 13"}
::kit[Bracket]{#bracket}
::kit[M8 nut]{#m8-nut count=4 thread=M8x1.25 grade=8 drive="hex 13" torque="${torque}" holds=bracket}

## Fit {#fit}

::step[Hang the bracket]{#hang time="5 min"}

:fit[bracket] and :start[m8-nut].
${more}
::step[Tighten it]{#tight time="5 min"}

:tighten[m8-nut]{with="wrench socket-13"}.
`;

const said = ['--date', '2026-10-02', '--verified', 'M. Hart'];

async function shop(text = guide('1', '20 N·m')): Promise<Bench> {
  return bench(exampleWorkspace({ 'example/guide.md': text }));
}

describe('baybook release', () => {
  it('records a guide, refuses the same revision, and adds the next at the end', async () => {
    const { folder, write } = await shop();
    const first = await baybook(folder, 'release', 'example', ...said);
    expect(first).toMatchObject({ code: 0, err: '' });
    expect(first.out).toBe(
      'released example, revision 1: guides/example/releases.yaml, guides/example/releases/1.json\n',
    );
    const list = join(folder, 'guides/example/releases.yaml');
    const before = await readFile(list, 'utf8');
    expect(before).toContain('"1":\n  date: 2026-10-02\n  verified: "M. Hart"\n');

    const again = await baybook(folder, 'release', 'example', ...said);
    expect(again.code).toBe(1);
    expect(again.err).toContain('example was released as revision 1 on 2026-10-02; raise "revision: 1"');
    expect(await readFile(list, 'utf8')).toBe(before);

    await write('example/guide.md', guide('2', '22 N·m'));
    expect((await baybook(folder, 'release', 'example', ...said, '--note', 'nuts')).code).toBe(0);
    const after = await readFile(list, 'utf8');
    expect(after.startsWith(before)).toBe(true);
    expect(after).toContain('  note: "nuts"\n');
    expect((await baybook(folder, 'check')).out).toBe('1 guide checked: no errors, no warnings\n');
  });

  it('asks a person for what is not said, and takes no day that the calendar has not', async () => {
    const { folder } = await shop();
    const wrong = await asked(folder, ['2026-02-30'], 'release', 'example');
    expect(wrong).toMatchObject({ code: 2 });
    expect(wrong.err).toBe(
      'baybook: --date: "2026-02-30" is no date of the calendar; write it as in 2026-10-02\n',
    );
    const right = await asked(folder, ['2026-02-28', 'M. Hart', ''], 'release', 'example');
    expect(right.code).toBe(0);
    const nobody = await baybook(folder, 'release', 'example', '--date', '2026-10-02');
    expect(nobody.err).toContain('raise "revision: 1"');
  });

  it('refuses a guide with errors, and one without a revision', async () => {
    const { folder, write } = await shop(guide('1', '20 Nn'));
    const faulty = await baybook(folder, 'release', 'example', ...said);
    expect(faulty.code).toBe(1);
    expect(faulty.out).toContain('nothing was released: a guide with errors is not');
    await write('example/guide.md', guide('1', '20 N·m').replace('revision: 1\n', ''));
    const bare = await baybook(folder, 'release', 'example', ...said);
    expect(bare.err).toContain('example/guide.md has no revision');
    expect((await baybook(folder, 'release', 'exampel', ...said)).err).toContain('did you mean "example"?');
  });

  it('refuses a template that nobody has measured, and a build that decides nothing', async () => {
    const { folder } = await bench(join(import.meta.dirname, '../cases/lamp-cradle-fixture'));
    const unmeasured = await baybook(folder, 'release', 'lamp-cradle', ...said, '--build', 'fog=no');
    expect(unmeasured.err).toContain('--measured notch="…", for lamp-cradle, is missing');
    const stray = await baybook(folder, 'release', 'lamp-cradle', ...said, '--build', 'sunroof');
    expect(stray.err).toContain(
      '--build: "sunroof" is no option by which lamp-cradle differs; there are fog',
    );
    const measured = ['--measured', 'notch=J. Ode'];
    const done = await baybook(folder, 'release', 'lamp-cradle', ...said, '--build', 'fog', ...measured);
    expect(done.code).toBe(0);
    const list = await readFile(join(folder, 'guides/lamp-cradle/releases.yaml'), 'utf8');
    expect(list).toContain('  build: {fog: true}\n');
    expect(list).toMatch(/ {4}notch: \{by: "J. Ode", fingerprint: "[0-9a-f]{12}"\}\n/);
  });

  it('is told when a record or an entry was edited afterwards', async () => {
    const { folder } = await shop();
    await baybook(folder, 'release', 'example', ...said);
    const list = join(folder, 'guides/example/releases.yaml');
    const record = join(folder, 'guides/example/releases/1.json');
    const [entry, text] = [await readFile(list, 'utf8'), await readFile(record, 'utf8')];
    await writeFile(record, text.replaceAll('20', '30'));
    expect((await baybook(folder, 'check')).out).toContain('one of the two was edited');
    // Version control may give a file other line endings.
    await writeFile(record, text.replaceAll('\n', '\r\n'));
    expect((await baybook(folder, 'check')).code).toBe(0);
    await writeFile(record, text);
    await writeFile(list, entry.replace('M. Hart', 'A. Nother'));
    expect((await baybook(folder, 'check')).out).toContain('this entry does not say what');
    await writeFile(list, entry.replace('2026-10-02', 'yesterday'));
    expect((await baybook(folder, 'check')).out).toContain('releases.yaml:3:9: error');
  });
});

describe('baybook compare', () => {
  it('tells what changes the work apart from what is worded otherwise', async () => {
    const { folder, write } = await shop();
    await baybook(folder, 'release', 'example', ...said);
    const same = await baybook(folder, 'compare', 'example');
    expect(same.out).toMatch(
      /^example: revision 1 \(.*\) and the text as it stands \(.*\)\n\nNothing has changed\.\n$/,
    );
    await write(
      'example/guide.md',
      guide('2', '22 N·m', '\nMind the paint of the wing.\n').replace(
        '::step[Tighten it]',
        '::step[Make it tight]',
      ),
    );
    const { out, code } = await baybook(folder, 'compare', 'example');
    expect(code).toBe(0);
    expect(out.split('\n').slice(1).join('\n')).toBe(`
What changes the work
  M8 nut
    - torque 22\u00a0N·m (16.2\u00a0lbf·ft), was 20\u00a0N·m (14.8\u00a0lbf·ft)

Only worded or shown otherwise
  Step 1, “Hang the bracket”
    - text added: “Mind the paint of the wing.”
  Step 2, “Make it tight”
    - title Make it tight, was Tighten it
`);
    await baybook(folder, 'release', 'example', ...said);
    const between = await baybook(
      folder,
      'compare',
      'example',
      '--from',
      '1',
      '--to',
      '2',
      '--format',
      'json',
    );
    const told = JSON.parse(between.out);
    expect(told.changes.filter((one: { changesWork: boolean }) => one.changesWork)).toMatchObject([
      { of: 'item', id: 'm8-nut', touches: 'torque', usedIn: ['hang', 'tight'] },
    ]);
  });

  it('draws an old and a new line to cut over one another at full size', async () => {
    const { folder, change } = await bench(join(import.meta.dirname, '../cases/lamp-cradle-fixture'));
    await baybook(folder, 'release', 'lamp-cradle', ...said, '--build', 'fog', '--measured', 'notch=J. Ode');
    await change('lamp-cradle/guide.md', '62,38 r6 -62,38 r6', '62,40 r6 -62,40 r6');
    const { out, err } = await baybook(folder, 'compare', 'lamp-cradle', '--overlay', 'changed');
    expect(out).toContain('corner 3 62, 40 mm, radius 6 mm, was 62, 38 mm, radius 6 mm');
    expect(err).toBe('wrote changed/notch-since-3.svg\n');
    const svg = await readFile(join(folder, 'changed/notch-since-3.svg'), 'utf8');
    // Upright sides end where their corners begin: 6 mm below the upper edge, y down.
    expect(svg).toContain('id="before" d="M62 0L62 -32A6 6 0 0 0 56 -38L-56 -38A6 6 0 0 0 -62 -32L-62 0"');
    expect(svg).toContain('id="now" d="M62 0L62 -34A6 6 0 0 0 56 -40L-56 -40A6 6 0 0 0 -62 -34L-62 0"');
    const [, width, box] = /width="([\d.]+)mm".*viewBox="\S+ \S+ (\S+) /.exec(svg) ?? [];
    expect(width).toBe(box);
  });

  it('is used wrongly without a release, and with a revision that there is not', async () => {
    const { folder } = await shop();
    const none = await baybook(folder, 'compare', 'example');
    expect(none).toMatchObject({ code: 2 });
    expect(none.err).toContain('example was never released');
    await baybook(folder, 'release', 'example', ...said);
    const other = await baybook(folder, 'compare', 'example', '--from', '7');
    expect(other.err).toBe('baybook: --from: example was not released as revision 7; there are 1\n');
  });
});
