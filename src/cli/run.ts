import { Command, CommanderError, Option } from 'commander';
import type { ShardPart } from '../site/shards.ts';
import { paperNames } from '../trade/paper.ts';
import { formats } from './formats.ts';
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
    .addHelpText('after', footer);

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

const newFooter = `
Examples:
  baybook new workspace                                  asks what it needs to know
  baybook new platform larkspur-dray --title "Larkspur Dray" --option "fog=Front fog lamps"
  baybook new guide lamp-cradle --title "Lamp cradle" --platform larkspur-dray --kit Cradle --kit "M8 nut x4"
  baybook new guide wicket-cradle --title "Lamp cradle" --from lamp-cradle --platform sorrel-wicket`;

const adoptFooter = `
Steps, numbers, torques, safety messages and tools of the crib go where the format has them; an action is written where
the old words leave no doubt. What is not sure stays in its own words, and "check" lists it. Every sentence is in the
draft, nothing is made up, nothing is fetched, and no file is overwritten.

Examples:
  baybook adopt "Mud flaps.docx"                        a folder with guide.md and its pictures
  baybook adopt old/*.html --platform larkspur-dray     one guide from each
  baybook adopt notes.txt --title "Roof vent"           under a title of its own`;

const releaseFooter = `
Raise "revision" in the guide's front matter first. Beside the guide, releases.yaml gets an entry, and releases/ a file
with what was released; keep both in version control. A guide with errors is refused, and a template that nobody is
named as having measured.

Examples:
  baybook release swivel-seat                           asks for the date, who proved it and on which vehicle
  baybook release lamp-cradle --date 2026-10-02 --verified "M. Hart" --build fog=yes,lamps=led \\
    --measured notch="J. Ode"`;

const compareFooter = `
Told apart are what changes the work and what is only worded otherwise: in doubt, as where a number or a "not" has
changed, it changes the work. A step that has changed places is told as moved.

Examples:
  baybook compare lamp-cradle                           since its latest release
  baybook compare lamp-cradle --from 3 --to 4           between two releases
  baybook compare lamp-cradle --overlay changed         and templates, old over new`;

const recallFooter = `
Records are the files that the page of a guide or a visit saves. Told is what has changed since that release and bears
on safety, torque or geometry. A file that is no sound record is told by its name, and the others are listed.

Examples:
  baybook recall lamp-cradle --revision 3 records       every record of a folder
  baybook recall lamp-cradle --fingerprint "3f2a 9c04 b7d1" records/*.json
  baybook recall lamp-cradle --revision 3 records --format json

Exit code: 1 where a file is no sound record.`;

const visitFooter = `
What the platform, the shop or a procedure declares is one thing in both guides; what a guide declares itself is its
own. Dirty work comes before clean, waits are filled, and the plan never takes longer than one job after the other.
A file visits/name.md says the same (title, platform, build, guides) and is published with the site.

Examples:
  baybook visit roof-vent side-awning                       for every build of the platform
  baybook visit roof-vent side-awning --build "led, lining" for the van that is booked
  baybook visit vent-and-awning --format json               what visits/vent-and-awning.md asks for, as data`;

const dayFooter = `
A file says title: and jobs:, a list of visits and guides; one with build: says which vehicle comes. "baybook explain
day.yaml" tells its keys. Supplies are summed and rounded up to whole packs; a tool that two jobs want at once and that
is there once is told.

Examples:
  baybook day thursday.yaml                             what its jobs need
  baybook day vent-and-awning "lamp-cradle swivel-seat" two vehicles, one of them with two guides
  baybook day thursday.yaml --format csv                for the counter's own program
  baybook day thursday.yaml --format html --out day.html  to print and tick off`;

const cutFooter = `
A correction is refused where a print setting explains the sides, and where one of them is not between 97.0 and
103.0 mm: then the setting is to be changed, not the sheet.

Examples:
  baybook cut lamp-cradle                               every template of a guide
  baybook cut lamp-cradle notch --paper a3,single       one, on larger papers
  baybook cut lamp-cradle notch --measured 99.6,100.2   for the printer that made this of the square`;

const footer = `
Exit code: 0 without errors, 1 with errors, 2 for wrong usage.

Examples:
  baybook new guide                      begin a guide
  baybook adopt old/flaps.docx           begin one from what the shop has
  baybook preview lamp-cradle            show a guide while it is written
  baybook language-server                serve an editor; "baybook explain editors" says how
  baybook check                          check the workspace in guides/
  baybook check lamp-cradle              check one guide, or one visit with its guides
  baybook build --out site               check it and write the site
  baybook build --shard 2/4              work out a part of it, on one of four machines
  baybook cut lamp-cradle                the templates of one guide, without the site
  baybook release lamp-cradle            record what it is now, and who stands for it
  baybook compare lamp-cradle            what has changed since
  baybook recall lamp-cradle --revision 3 records   which vehicles were worked on under it
  baybook visit lamp-cradle roof-vent    two guides on one vehicle, as one job
  baybook day thursday.yaml              what the counter fetches for a day
  baybook check --format sarif           findings for a code host
  baybook check --read                   and print the steps as they will be read
  baybook explain tool-undeclared        what a finding is about`;

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
