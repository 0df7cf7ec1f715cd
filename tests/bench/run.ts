import { mkdir, mkdtemp, readFile, rm, symlink, writeFile } from 'node:fs/promises';
import { arch, cpus, platform, tmpdir, totalmem } from 'node:os';
import { dirname, join, resolve } from 'node:path';
import { parseArgs } from 'node:util';
import { build } from 'esbuild';
import { corpus, templateOfSixteenSheets } from './corpus.ts';
import { drawnSheets } from './drawn-sheets.ts';
import { measured, spread, timed, type Usage } from './measure.ts';

/**
 * How fast the built Baybook is, as ratios to what the same work costs without it. Each round measures everything
 * once, one after the other, so that a machine that slows down slows both sides of a ratio; printed are the median
 * of the rounds, the least and the most.
 *
 *   npm run bench                                       1,000 and 4,000 guides, three rounds
 *   npm run bench -- --guides 50 --large 0 --rounds 1   a quick try, without the large workspace
 */
const { values: options } = parseArgs({
  options: {
    guides: { type: 'string', default: '1000' },
    large: { type: 'string', default: '4000' },
    rounds: { type: 'string', default: '3' },
  },
});
const [guides, large, rounds] = [options.guides, options.large, options.rounds].map(Number) as [
  number,
  number,
  number,
];
if (![guides, large, rounds].every(Number.isInteger) || guides < 1 || rounds < 1)
  throw new Error('--guides and --rounds are whole numbers from 1, --large from 0');

/** How often the short ones (start-up, one template) are measured in a round. */
const shortRuns = 5;

const repository = resolve(import.meta.dirname, '../..');
const baybook = join(repository, 'dist/cli/main.js');
const top = await mkdtemp(join(tmpdir(), 'baybook-bench-'));

interface Round {
  readonly bare: Usage;
  readonly cold: Usage;
  readonly unchanged: Usage;
  readonly edited: Usage;
  readonly large: Usage | null;
  readonly start: number;
  readonly help: number;
  readonly bareSheets: number;
  readonly cut: number;
}

try {
  await writeBareScripts();
  await writeWorkspace('usual', corpus(guides));
  if (large > 0) await writeWorkspace('large', corpus(large));
  await writeWorkspace('sheets', templateOfSixteenSheets());
  const fonts = join(repository, 'node_modules/dejavu-fonts-ttf/ttf');
  await writeFile(join(top, 'sheets.json'), JSON.stringify(drawnSheets()));

  const done: Round[] = [];
  for (let round = 1; round <= rounds; round += 1) {
    process.stderr.write(`round ${round} of ${rounds}\n`);
    const bare = await measured([join(top, 'bare-pipeline.mjs'), 'usual/guides', 'bare'], top);
    const cold = await buildOf('usual');
    const unchanged = await buildOf('usual');
    await edit(round);
    const edited = await buildOf('usual');
    await forget('usual');
    const whole = large > 0 ? await buildOf('large') : null;
    await forget('large');
    const short = { start: [], help: [], bareSheets: [], cut: [] } as Record<
      'start' | 'help' | 'bareSheets' | 'cut',
      number[]
    >;
    for (let run = 0; run < shortRuns; run += 1) {
      short.start.push(await timed(['-e', '0'], top));
      short.help.push(await timed([baybook, '--help'], top));
      short.bareSheets.push(
        await timed(
          [
            'bare-sheets.mjs',
            'sheets.json',
            `${fonts}/DejaVuSans.ttf`,
            `${fonts}/DejaVuSans-Bold.ttf`,
            'bare.pdf',
          ],
          top,
        ),
      );
      short.cut.push(await timed([baybook, 'cut', 'job-1', '--paper', 'a4'], join(top, 'sheets')));
    }
    const middle = (of: keyof typeof short) => spread(short[of]).median;
    done.push({
      ...{ bare, cold, unchanged, edited, large: whole },
      ...{
        start: middle('start'),
        help: middle('help'),
        bareSheets: middle('bareSheets'),
        cut: middle('cut'),
      },
    });
  }
  process.stdout.write(table(done));
} finally {
  await rm(top, { recursive: true, force: true });
}

/** The bare programs as JavaScript, so that no compiler's start-up is counted for them. */
async function writeBareScripts(): Promise<void> {
  await build({
    entryPoints: ['bare-pipeline.ts', 'bare-sheets.ts'].map((name) => join(import.meta.dirname, name)),
    outdir: top,
    format: 'esm',
    outExtension: { '.js': '.mjs' },
  });
  await symlink(join(repository, 'node_modules'), join(top, 'node_modules'));
}

async function writeWorkspace(name: string, files: Iterable<readonly [string, string]>): Promise<void> {
  for (const [path, text] of files) {
    const full = join(top, name, 'guides', path);
    await mkdir(dirname(full), { recursive: true });
    await writeFile(full, text);
  }
}

/** Builds a workspace with stores of its own; `--strict`, since a corpus with findings would measure the wrong thing. */
function buildOf(name: string): Promise<Usage> {
  return measured([baybook, 'build', '--strict'], join(top, name), {
    XDG_CACHE_HOME: join(top, name, 'cache'),
  });
}

/** Takes away all that builds of a workspace left: the next one is cold. */
async function forget(name: string): Promise<void> {
  for (const left of ['site', 'cache']) await rm(join(top, name, left), { recursive: true, force: true });
}

/** Another word in one step of a guide in the middle. */
async function edit(round: number): Promise<void> {
  const path = join(top, 'usual/guides', `job-${Math.ceil(guides / 2)}/guide.md`);
  const text = await readFile(path, 'utf8');
  const edited = text.replace(/\nWork the /, `\nIn round ${round}, work the `);
  if (edited === text) throw new Error(`${path} has no sentence to edit`);
  await writeFile(path, edited);
}

function table(done: readonly Round[]): string {
  // Limits that stand for other numbers of guides would mislead.
  const usual = guides === 1000 && (large === 4000 || large === 0);
  const line = (what: string, values: readonly number[], unit: string, limit = '') => {
    const { median, least, most } = spread(values);
    const asked = usual ? limit : '';
    const cells = [median, least, most].map((value) => written(value, unit).padStart(12)).join('');
    return `${what.padEnd(52)}${cells}${asked && `   ${asked}`}\n`;
  };
  const of = (value: (round: Round) => number) => done.map(value);
  const larges = done.flatMap((round) => (round.large ? [{ large: round.large, cold: round.cold }] : []));
  const [some, many] = [guides, large].map((count) => count.toLocaleString('en'));
  return [
    `${cpus().length} cores (${cpus()[0]?.model.trim()}), ${(totalmem() / 1e9).toFixed(0)} GB of memory, ${platform()} ${arch()}, Node ${process.version}\n`,
    `${some} guides${larges.length > 0 ? ` and ${many}` : ''}, ${done.length} ${done.length === 1 ? 'round' : 'rounds'}\n\n`,
    `${''.padEnd(52)}${['median', 'least', 'most'].map((head) => head.padStart(12)).join('')}${usual ? '   at most' : ''}\n`,
    line(
      'bare pipeline, wall',
      of(({ bare }) => bare.wall),
      's',
    ),
    line(
      'bare pipeline, CPU',
      of(({ bare }) => bare.cpu),
      's',
    ),
    line(
      'cold build, wall',
      of(({ cold }) => cold.wall),
      's',
    ),
    line(
      'cold build, wall, of the bare pipeline',
      of(({ cold, bare }) => cold.wall / bare.wall),
      '',
      '1.5',
    ),
    line(
      'cold build, CPU, of the bare pipeline',
      of(({ cold, bare }) => cold.cpu / bare.cpu),
      '',
      '1.8',
    ),
    line(
      'nothing changed, wall, of the cold build',
      of(({ unchanged, cold }) => unchanged.wall / cold.wall),
      '',
      '0.03',
    ),
    line(
      'one guide edited, wall, of the cold build',
      of(({ edited, cold }) => edited.wall / cold.wall),
      '',
      '0.06',
    ),
    line(
      `most memory, ${some} guides`,
      of(({ cold }) => cold.memory),
      'MB',
      '600 MB',
    ),
    ...(larges.length > 0
      ? [
          line(
            `most memory, ${many} guides`,
            larges.map((one) => one.large.memory),
            'MB',
            '800 MB',
          ),
          line(
            `${many} guides, wall, of ${some}`,
            larges.map((one) => one.large.wall / one.cold.wall),
            '',
            '4.2',
          ),
        ]
      : []),
    line(
      'node -e 0',
      of(({ start }) => start),
      's',
    ),
    line(
      '--help, of node -e 0',
      of(({ help, start }) => help / start),
      '',
      '4',
    ),
    line(
      '16 sheets drawn by bare pdfkit',
      of(({ bareSheets }) => bareSheets),
      's',
    ),
    line(
      'cut of the same 16 sheets, of bare pdfkit',
      of(({ cut, bareSheets }) => cut / bareSheets),
      '',
      '2',
    ),
  ].join('');
}

function written(value: number, unit: string): string {
  if (unit === 'MB') return `${value.toFixed(0)} MB`;
  const digits = value < 0.1 ? 3 : 2;
  return unit === '' ? value.toFixed(digits) : `${value.toFixed(digits)} ${unit}`;
}
