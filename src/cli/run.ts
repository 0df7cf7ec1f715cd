import { Command, CommanderError, Option } from 'commander';
import type { ShardPart } from '../site/shards.ts';
import { paperNames } from '../trade/paper.ts';
import { formats } from './formats.ts';
import {
  adoptFooter,
  compareFooter,
  cutFooter,
  dayFooter,
  mainFooter,
  newFooter,
  recallFooter,
  releaseFooter,
  visitFooter,
} from './help-footers.ts';
import { type ExitCode, type Io, UsageError } from './io.ts';
import { isRefusal, refusalWords } from './refusals.ts';
import { version } from './version.ts';

/**
 * Runs a command line and returns its exit code. Never throws: what goes wrong inside Baybook itself is told in
 * one line, without a stack trace.
 *
 * @param args without the names of Node and of the script
 */
export async function run(args: readonly string[], io: Io): Promise<ExitCode> {
  let code: ExitCode = 0;
  const program = commandLine(io, (result) => {
    code = result;
  });
  try {
    await program.parseAsync(args, { from: 'user' });
    return code;
  } catch (error) {
    return failed(error, io);
  }
}

/** The commands; each is loaded only when it is run. */
function commandLine(io: Io, done: (code: ExitCode) => void): Command {
  const program = new Command('baybook');
  program
    .description('Checked install guides: a site, a print and cut templates at full scale, from Markdown.')
    .version(version, '-V, --version', 'print the version')
    .helpOption('-h, --help', 'print this help')
    .helpCommand('help [command]', 'print the help of a command')
    .exitOverride()
    .configureOutput({
      writeOut: io.out,
      writeErr: io.err,
      getOutHelpWidth: () => io.width,
      outputError: (text, write) => write(text.replace(/^error: /, 'baybook: ')),
    })
    .addHelpText('after', mainFooter);

  withCommonOptions(program.command('check'))
    .argument('[guides...]', 'the names of their folders, or of visits; without them, all of them')
    .description('check guides and write nothing')
    .option('--read', 'print each step of each build as the technician will read it')
    .option('--fix', 'mend what needs no judgement: quotes, fences, forms, commas; shows it and asks first')
    .option('--yes', 'with --fix, write without asking')
    .action(async (guides, options) =>
      done(await (await import('./commands/check.ts')).check(guides, options, io)),
    );

  withCommonOptions(program.command('build'))
    .description('check every guide, then write the site')
    .option('--out <folder>', 'where the site goes; without it, site')
    .option('--keep-going', 'publish the sound guides even where others have errors')
    .addOption(
      new Option('--shard <part>', 'work out a part of the guides alone, as in 2/4, for merge').argParser(
        readPart,
      ),
    )
    .option('--reuse <folders...>', 'take over what still holds of parts that were worked out before')
    .action(async ({ shard, reuse, ...options }) => {
      if (shard) return done(await (await import('./commands/shard.ts')).buildShard(shard, options, io));
      if (reuse) return done(await (await import('./commands/shard.ts')).buildReusing(reuse, options, io));
      return done(await (await import('./commands/build.ts')).build(options, io));
    });

  withCommonOptions(program.command('merge'))
    .argument('<shards...>', 'the folders of all parts')
    .description('write the site from parts that other machines have worked out')
    .option('--out <folder>', 'where the site goes; without it, site')
    .option('--keep-going', 'publish the sound guides even where others have errors')
    .action(async (shards, options) =>
      done(await (await import('./commands/shard.ts')).merge(shards, options, io)),
    );

  withWorkspace(program.command('cut'))
    .argument('<guide>', 'the name of its folder')
    .argument('[template]', 'the id of one cut template; without it, all of the guide')
    .description('write the cut templates of a guide alone: sheets at full scale, SVG and DXF')
    .option('--out <folder>', 'where they go, in a folder of the guide’s name', 'cut-templates')
    .option('--paper <names>', `${paperNames.join(', ')}, parted by commas; else what shop.yaml says`)
    .option('--measured <across,up>', 'the 100 mm square as a printer made it, to correct the sheets for it')
    .addHelpText('after', cutFooter)
    .action(async (guide, template, options) =>
      done(await (await import('./commands/cut.ts')).cut(guide, template, options, io)),
    );

  addReleases(program, io, done);

  withWorkspace(program.command('visit'))
    .argument('<guides...>', 'the names of their folders, or the name of one file in visits/')
    .description('plan several guides on one vehicle as one job: what is shared is done once')
    .option('--build <traits>', 'what is known of the vehicle, parted by commas, as in "led, no lining"')
    .addOption(new Option('--format <format>', 'how it is printed').choices(['text', 'json']).default('text'))
    .addHelpText('after', visitFooter)
    .action(async (guides, options) =>
      done(await (await import('./commands/visit.ts')).visit(guides, options, io)),
    );

  withWorkspace(program.command('day'))
    .argument('<jobs...>', 'a file that lists the jobs, or visits and guides by their names')
    .description('sum up what the jobs of a day need from the counter: boxes, packs, tools that are short')
    .addOption(
      new Option('--format <format>', 'how it is printed').choices(['text', 'csv', 'html']).default('text'),
    )
    .option('--out <file>', 'where it is written; without it, to the terminal')
    .addHelpText('after', dayFooter)
    .action(async (jobs, options) => done(await (await import('./commands/day.ts')).day(jobs, options, io)));

  withWorkspace(program.command('preview'))
    .argument('[guide]', 'the name of the guide, or of the visit, that is shown first')
    .description('show the guides in a browser while they are written')
    .addOption(
      new Option('--port <number>', 'where it is served; without it, the first that is free').argParser(
        readPort,
      ),
    )
    .option('--open', 'open the browser too')
    .action(async (guide, options) =>
      done(await (await import('./commands/preview.ts')).preview(guide, options, io)),
    );

  withWorkspace(program.command('language-server'))
    .description('serve an editor: findings as they are typed, completion, renaming and more')
    // What editors pass on their own accord; there is no other way to speak.
    .addOption(new Option('--stdio', 'speak over standard input and output, which it does anyway').hideHelp())
    .action(async (options) =>
      done(await (await import('./commands/language-server.ts')).languageServer(options, io)),
    );

  addNew(program.command('new'), io, done);

  withWorkspace(program.command('adopt'))
    .argument('<files...>', 'old guides: .docx, .html, .md or .txt, in English')
    .description('draft a guide from each old one, with what is left to decide marked beside the old words')
    .option('--platform <id>', 'the vehicle')
    .option('--title <title>', 'what is fitted, and where, in the place of the old title')
    .addHelpText('after', adoptFooter)
    .action(async (files, options) =>
      done(await (await import('./commands/adopt.ts')).adopt(files, options, io)),
    );

  program
    .command('explain')
    .argument(
      '[word]',
      'a directive, an attribute, a file or its key, a rule or a chapter; without it, a list',
    )
    .description('the handbook: how something is written, what it means, why a rule exists')
    .action(async (word: string | undefined) =>
      done(await (await import('./commands/explain.ts')).explain(word, io)),
    );

  return program;
}

/** The commands about what a shop stands behind. */
function addReleases(program: Command, io: Io, done: (code: ExitCode) => void): void {
  withWorkspace(program.command('release'))
    .argument('<guides...>', 'the names of their folders')
    .description('record what a guide is now, and who stands for it; asks for what is not said')
    .option('--date <date>', 'of the release, as in 2026-10-02; no clock is read')
    .option('--verified <name>', 'who has done the job by the guide, on a vehicle')
    .option('--build <options>', 'the build of that vehicle, as in fog=yes,lamps=led')
    .option('--measured <template=name>', 'who measured a cut template on paper; once for each', several, [])
    .option('--note <text>', 'what else is to be known')
    .addHelpText('after', releaseFooter)
    .action(async (guides, options) =>
      done(await (await import('./commands/release.ts')).release(guides, options, io)),
    );
  withWorkspace(program.command('compare'))
    .argument('<guide>', 'the name of its folder')
    .description('tell what has changed of a guide since it was released, or between two releases')
    .option('--from <revision>', 'a release; without it, the latest')
    .option('--to <revision>', 'a release; without it, the text as it stands')
    .addOption(new Option('--format <format>', 'how it is told').choices(['text', 'json']).default('text'))
    .option('--overlay <folder>', 'draw old and new lines to cut over one another at full size, as SVG')
    .addHelpText('after', compareFooter)
    .action(async (guide, options) =>
      done(await (await import('./commands/compare.ts')).compareGuide(guide, options, io)),
    );
  withWorkspace(program.command('recall'))
    .argument('<guide>', 'the name of its folder')
    .argument('<records...>', 'saved records of vehicles, or folders of them')
    .description('tell which vehicles were worked on under a revision of a guide, and what has changed since')
    .option('--revision <revision>', 'as it stood at the head of the guide')
    .option('--fingerprint <figures>', 'as it stood there, its first eight figures at least')
    .addOption(new Option('--format <format>', 'how it is told').choices(['text', 'json']).default('text'))
    .addHelpText('after', recallFooter)
    .action(async (guide, records, options) =>
      done(await (await import('./commands/recall.ts')).recall(guide, records, options, io)),
    );
}

function several(value: string, before: readonly string[]): readonly string[] {
  return [...before, value];
}

/** The commands that write what an author begins with. */
function addNew(command: Command, io: Io, done: (code: ExitCode) => void): void {
  const load = () => import('./commands/new.ts');
  command
    .description('write what an author begins with; asks for what is not said, and never overwrites')
    .addHelpText('after', newFooter);
  withWorkspace(command.command('workspace'))
    .description('a shop, its tools and its fasteners')
    .option('--name <name>', 'of the shop')
    .addOption(new Option('--units <units>', 'which come first').choices(['metric', 'us']))
    .action(async (options) => done(await (await load()).newWorkspaceFolder(options, io)));
  withWorkspace(command.command('platform'))
    .argument('[id]', 'the name of its file; without it, from its title')
    .description('a vehicle that guides are for')
    .option('--title <title>', 'what it is called')
    .option('--option <id=name>', 'what some of these vehicles have; as often as needed', several, [])
    .action(async (id, options) => done(await (await load()).newPlatformFile(id, options, io)));
  withWorkspace(command.command('guide'))
    .argument('[id]', 'the name of its folder; without it, from its title')
    .description('a guide')
    .option('--title <title>', 'what is fitted, and where')
    .option('--platform <id>', 'the vehicle')
    .option('--option <id=name>', 'what some vehicles have; as often as needed', several, [])
    .option('--kit <thing>', 'what is in the box, as in "M8 nut x4"; as often as needed', several, [])
    .option('--from <guide>', 'begin with this guide, which is for another platform')
    .action(async (id, options) => done(await (await load()).newGuideFolder(id, options, io)));
  withWorkspace(command.command('procedure'))
    .argument('[id]', 'the name of its file; without it, from its title')
    .description('steps that several guides share')
    .option('--title <title>', 'what is done')
    .action(async (id, options) => done(await (await load()).newProcedureFile(id, options, io)));
  withWorkspace(command.command('schemas'))
    .description('what general editors go by in YAML files, for a workspace that has none yet')
    .action(async (options) => done(await (await load()).newSchemaFiles(options, io)));
}

function readPort(written: string): number {
  const port = Number(written);
  if (/^\d+$/.test(written) && port >= 1 && port <= 65535) return port;
  throw new UsageError(`--port: "${written}" is no port; 1 to 65535 can be asked for`);
}

function readPart(written: string): ShardPart {
  const [, part = 0, of = 0] = (/^(\d{1,4})\/(\d{1,4})$/.exec(written) ?? []).map(Number);
  if (part >= 1 && part <= of) return { part, of };
  throw new UsageError(`--shard: "${written}" is no part; the second of four is 2/4`);
}

function readThreads(written: string): number {
  if (!/^[1-9]\d?$/.test(written))
    throw new UsageError(`--threads: "${written}" is no number of threads; 1 to 99 can be asked for`);
  return Number(written);
}

function withWorkspace(command: Command): Command {
  return command.option(
    '--guides <folder>',
    'the workspace: shop.yaml and a folder for each guide',
    'guides',
  );
}

function withCommonOptions(command: Command): Command {
  return withWorkspace(command)
    .addOption(
      new Option('--format <format>', 'how findings are printed').choices([...formats]).default('text'),
    )
    .option('--strict', 'count warnings as errors')
    .addOption(
      new Option('--threads <number>', 'how many share the work; without it, one for each core').argParser(
        readThreads,
      ),
    );
}

function failed(error: unknown, io: Io): ExitCode {
  if (error instanceof CommanderError) return error.exitCode === 0 ? 0 : 2;
  if (error instanceof UsageError) {
    io.err(`baybook: ${error.message}\n`);
    return 2;
  }
  if (isRefusal(error)) {
    io.err(`baybook: ${refusalWords(error)}\n`);
    return 1;
  }
  const message = error instanceof Error ? error.message : String(error);
  io.err(`baybook: this is a fault of Baybook, not of your guides: ${message}\n`);
  if (process.env.BAYBOOK_TRACE && error instanceof Error) io.err(`${error.stack}\n`);
  return 1;
}
