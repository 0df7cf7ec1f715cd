import { symlink, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { baybook, bench, repository } from '../driver.ts';
import { exampleWorkspace } from '../example-workspace.ts';

const sound = exampleWorkspace('::step[Look around]{#look}\n\nLook behind the edge.\n');
const broken = exampleWorkspace('::step[Look around]{#look}\n\nLook with the :tool[lamp].\n');
const doubtful = exampleWorkspace(
  '::tool[Lamp]{#lamp}\n\n::step[Look around]{#look}\n\nLook behind the edge.\n',
);

describe('check', () => {
  it('says nothing but a summary of a sound workspace, and answers 0', async () => {
    const { check } = await bench(sound);
    expect(await check()).toEqual({
      code: 0,
      out: '1 guide checked: no errors, no warnings\n',
      err: '',
    });
  });

  it('answers 1 for errors, with the way to the file as typed in the terminal', async () => {
    const { check } = await bench(broken);
    const { code, out } = await check();
    expect(code).toBe(1);
    expect(out).toMatch(/^guides\/example\/guide\.md:\d+:\d+: error tool-undeclared\n/);
    expect(out).toMatch(/\n1 guide checked: 1 error, no warnings\n$/);
  });

  it('answers 0 for warnings, and 1 where they count', async () => {
    const { check } = await bench(doubtful);
    expect((await check()).code).toBe(0);
    expect((await check('--strict')).code).toBe(1);
  });

  it('prints JSON and SARIF, and nothing else, on request', async () => {
    const { check } = await bench(broken);
    const json = await check('--format', 'json');
    expect(json.code).toBe(1);
    expect(JSON.parse(json.out)).toMatchObject({ version: 1, guides: 1, errors: 1, warnings: 0 });
    const sarif = await check('--format=sarif');
    expect(JSON.parse(sarif.out).runs[0].results[0].ruleId).toBe('tool-undeclared');
  });

  it('checks the workspace that it is pointed at', async () => {
    const { folder, check } = await bench(sound);
    expect((await check('--guides', join(folder, 'guides'))).code).toBe(0);
    expect((await baybook(join(folder, 'guides'), 'check', '--guides', '.')).code).toBe(0);
  });

  it('ends with findings in a workspace without anything in it', async () => {
    const { check } = await bench({});
    const { code, out, err } = await check();
    expect(code).toBe(1);
    expect(err).toBe('');
    expect(out).toBe(
      [
        'guides/shop.yaml: error guides-missing',
        '  there is no guide here; a guide is a file guide.md in a folder of its own',
        '',
        'guides/shop.yaml: error shop-missing',
        '  this workspace has no shop.yaml; the least it says is "name: …"',
        '',
        'no guides checked: 2 errors, no warnings',
        '',
      ].join('\n'),
    );
  });
});

describe('wrong usage', () => {
  it.each([
    [['chek'], /^baybook: unknown command 'chek'\n\(Did you mean check\?\)/],
    [['check', '--guide', 'x'], /unknown option '--guide'\n\(Did you mean --guides\?\)/],
    [
      ['check', '--guides', 'nowhere'],
      /^baybook: there is no folder "nowhere" here; --guides names the workspace, and "baybook new workspace" begins one\n$/,
    ],
    [['check', '--guides', 'file'], /^baybook: there is no folder "file" here/],
    [['check', '--format', 'xml'], /Allowed choices are text, json, sarif/],
    [['build', 'extra'], /too many arguments/],
    [['build', '--out', 'guides'], /^baybook: --out "guides" and the workspace lie inside one another/],
    [['build', '--out', 'guides/site'], /lie inside one another/],
    [['build', '--out', '.'], /lie inside one another/],
    [['build', '--out', 'way/site'], /lie inside one another/],
    [
      ['explain', 'xyzzy'],
      /^baybook: the handbook has nothing on "xyzzy"; "baybook explain" lists its pages\n$/,
    ],
    [[], /Usage: baybook/],
  ])('of %j is told and answers 2', async (args, message) => {
    const { folder } = await bench(sound);
    await writeFile(join(folder, 'file'), '');
    await symlink(join(folder, 'guides'), join(folder, 'way'));
    const { code, out, err } = await baybook(folder, ...args);
    expect(code).toBe(2);
    expect(out).toBe('');
    expect(err).toMatch(message);
    expect(err).not.toMatch(/\n\s+at /);
  });
});

describe('help', () => {
  it('says what the commands are', async () => {
    const { code, out, err } = await baybook(repository, '--help');
    expect({ code, err }).toEqual({ code: 0, err: '' });
    for (const word of ['check', 'build', 'explain', 'Exit code: 0 without errors'])
      expect(out).toContain(word);
  });

  it('says what a command takes, with what it does without', async () => {
    const { code, out } = await baybook(repository, 'build', '--help');
    expect(code).toBe(0);
    expect(out.replace(/\s+/g, ' ')).toContain('where the site goes; without it, site');
    for (const flag of ['--guides', '--out', '--format', '--strict', '--keep-going'])
      expect(out).toContain(flag);
  });

  it('prints the version of package.json', async () => {
    expect((await baybook(repository, '--version')).out).toMatch(/^\d+\.\d+\.\d+\n$/);
  });
});

describe('explain', () => {
  it('prints why a rule exists, with both examples', async () => {
    const { code, out } = await baybook(repository, 'explain', 'tool-undeclared');
    expect(code).toBe(0);
    expect(out).toMatch(/^A tool that the guide does not declare \(tool-undeclared, error\)\n\n/);
    expect(out).toContain('This is found:');
    expect(out).toContain('    ::tool[Heat gun]{#heat-gun}');
  });

  it('prints the reference of a directive in each of its forms', async () => {
    const { code, out } = await baybook(repository, 'explain', '::measure');
    expect(code).toBe(0);
    expect(out).toMatch(/^::measure, on a line of its own\n/);
    expect(out).toMatch(/\n {2}#id +an id, as in `trim-lever` \(needed\)\n/);
    expect(out).toContain(
      '    ::measure[Ground clearance under the cradle]{#clearance expect="180..240 mm"}\n',
    );
    expect(out).toContain('\n:measure, within a sentence\n');
  });

  it('lists every rule', async () => {
    const { out } = await baybook(repository, 'explain', 'rules');
    expect(out).toContain('tool-undeclared\n    A tool that the guide does not declare\n');
    expect(out.split('\n').length).toBeGreaterThan(40);
  });
});
