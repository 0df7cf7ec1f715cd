import { execFileSync } from 'node:child_process';
import {
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { build } from 'esbuild';
import { expect, it, onTestFinished } from 'vitest';
import { repository } from '../driver.ts';
import { long } from '../samples.ts';
import { licenceOf, runtimePackages } from './runtime-packages.ts';

/** Licences that ask for no more than their notice to be kept (the Open Source Initiative's list of approved licences). */
const permissive = ['MIT', 'ISC', 'BSD-2-Clause', 'BSD-3-Clause', '0BSD', 'Apache-2.0', 'BSL-1.0', 'Zlib'];

/** Whether an expression of licences (SPDX, annex D) can be met by permissive ones: one of a choice, all of a sum. */
function isPermissive(licence: string): boolean {
  const bare = licence.replace(/^\((.*)\)$/, '$1');
  if (bare.includes(' OR ')) return bare.split(' OR ').some(isPermissive);
  return bare.split(' AND ').every((one) => permissive.includes(one));
}

/** The fonts of the templates: their licence is that of Bitstream Vera, which lets them be embedded. */
const fonts = 'dejavu-fonts-ttf';

it('what comes with Baybook is under licences that ask for no more than their notice', () => {
  const others = runtimePackages().filter(({ licence }) => !isPermissive(licence));
  expect(others.map(({ name }) => name)).toEqual([fonts]);
});

/** The packages of which something stands in the site: in a script of its pages, or as the font of its sheets. */
async function packagesInSite(): Promise<readonly string[]> {
  const scripts = ['guide', 'alone', 'correct-print', 'search', 'offline', 'vehicle-record', 'worker'];
  const { metafile } = await build({
    entryPoints: scripts.map((name) => join(repository, `templates/scripts/${name}.ts`)),
    bundle: true,
    format: 'iife',
    outdir: 'nowhere',
    write: false,
    metafile: true,
  });
  const inputs = Object.values(metafile.outputs).flatMap((output) => Object.entries(output.inputs));
  const names = inputs.flatMap(([path, { bytesInOutput }]) => {
    const name = bytesInOutput > 0 ? path.match(/.*node_modules\/((?:@[^/]+\/)?[^/]+)/)?.[1] : undefined;
    return name ?? [];
  });
  return [...new Set([...names, fonts])].sort();
}

/** What a package says of its licence: its own file or, where it brings none, what its description names. */
function licenceText(folder: string): string {
  const description = JSON.parse(readFileSync(join(folder, 'package.json'), 'utf8'));
  const { author, homepage } = description;
  const texts = readdirSync(folder)
    .filter((name) => /^(?:licen[cs]e|copying|notice)(?!.*\.[jt]s$)/i.test(name))
    .sort()
    .map((name) => readFileSync(join(folder, name), 'utf8'));
  if (texts.length === 0)
    texts.push([licenceOf(description), author?.name ?? author, homepage].filter(Boolean).join(', '));
  return texts
    .join('\n')
    .replaceAll('\r\n', '\n')
    .replace(/[ \t]+$/gm, '')
    .trim();
}

/** The licences of the packages in some folders; one that several have word by word stands once, under all of them. */
function noticesOf(folders: readonly string[]): string {
  const named = new Map<string, string[]>();
  for (const folder of folders) {
    const { name, version } = JSON.parse(readFileSync(join(folder, 'package.json'), 'utf8'));
    const text = licenceText(folder);
    named.set(text, [...(named.get(text) ?? []), `${name} ${version}`]);
  }
  return [...named]
    .map(([text, names]) => `${names.join('\n')}\n${'='.repeat(names.at(-1)?.length ?? 0)}\n\n${text}\n`)
    .join('\n\n');
}

function holdsNotices(file: string, expected: string): void {
  if (process.env.UPDATE) writeFileSync(file, expected);
  expect(readFileSync(file, 'utf8')).toBe(expected);
}

it('the site names what it contains of others, each with its licence', async () => {
  const folders = (await packagesInSite()).map((name) => join(repository, 'node_modules', name));
  const expected = `What this site contains of others: in the scripts of its pages, and as the font of its sheets.\n\n${noticesOf(folders)}`;
  holdsNotices(join(repository, 'templates/notices.txt'), expected);
});

/** The folders of the packages of which something stands in the built program, from what its source maps name. */
function packagesInProgram(): readonly string[] {
  const program = join(repository, 'dist/cli');
  const sources = readdirSync(program)
    .filter((name) => name.endsWith('.map'))
    .flatMap((name): readonly string[] => JSON.parse(readFileSync(join(program, name), 'utf8')).sources)
    .filter((path) => path.includes('node_modules/'));
  const folders = new Set(sources.map((path) => packageFolder(join(program, path))));
  return [...folders].sort();
}

/** The folder of the package that a file belongs to: not each folder with a description names a package. */
function packageFolder(file: string): string {
  for (let folder = dirname(file); folder.includes('node_modules'); folder = dirname(folder)) {
    const description = join(folder, 'package.json');
    if (!existsSync(description)) continue;
    const { name, version } = JSON.parse(readFileSync(description, 'utf8'));
    if (name && version) return folder;
  }
  throw new Error(`${file} belongs to no package`);
}

it('the program comes with the licence of each package that is built into it', () => {
  const expected = `What the built program contains of others.\n\n${noticesOf(packagesInProgram())}`;
  holdsNotices(join(repository, 'NOTICES.txt'), expected);
});

// A release runs it: npm itself is five seconds of it.
it.runIf(long)('is whole when it is packed and installed elsewhere, and runs from any folder', () => {
  const elsewhere = mkdtempSync(join(tmpdir(), 'packed-'));
  onTestFinished(() => rmSync(elsewhere, { recursive: true, force: true }));
  const npm = (...args: string[]) => execFileSync('npm', args, { cwd: repository, encoding: 'utf8' });
  const [packed] = JSON.parse(npm('pack', '--json', '--ignore-scripts', '--pack-destination', elsewhere));
  const modules = join(elsewhere, 'node_modules');
  mkdirSync(join(modules, 'baybook'), { recursive: true });
  execFileSync('tar', [
    'xzf',
    join(elsewhere, packed.filename),
    '--strip-components=1',
    '-C',
    join(modules, 'baybook'),
  ]);
  // What the package asks for and no more stands beside it, as an installer would put it there.
  for (const name of new Set(runtimePackages().map((one) => one.name))) {
    mkdirSync(dirname(join(modules, name)), { recursive: true });
    symlinkSync(join(repository, 'node_modules', name), join(modules, name));
  }
  const guides = join(repository, 'tests/cases/lamp-cradle-fixture');
  const site = join(elsewhere, 'a site');
  execFileSync(
    process.execPath,
    [join(modules, 'baybook/dist/cli/main.js'), 'build', '--guides', guides, '--out', site],
    { cwd: elsewhere, encoding: 'utf8' },
  );
  expect(readFileSync(join(site, 'index.html'), 'utf8')).toContain('Install guides');
  expect(readFileSync(join(site, 'assets/notices.txt'), 'utf8')).toContain('Permission is hereby granted');
});
