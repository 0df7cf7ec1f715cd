import { cp, readFile } from 'node:fs/promises';
import { dirname, join } from 'node:path';
import { kitTyped, type NewOption, readOption } from '../../desk/facts.ts';
import { guideFrom } from '../../desk/guide-from.ts';
import { newGuide } from '../../desk/new-guide.ts';
import { newPlatform, newProcedure, newSchemas, newWorkspace } from '../../desk/new-shared.ts';
import { didYouMean, nearest } from '../../diagnostics/suggest.ts';
import { diskFiles } from '../../shop/files/disk-files.ts';
import { fillIn } from '../../shop/marked-places.ts';
import { openWorkspace, type Workspace } from '../../shop/open-workspace.ts';
import { guideId } from '../../site/site-pages.ts';
import { type ExitCode, type Io, UsageError } from '../io.ts';
import { workspaceFolder } from '../workspace.ts';
import { given, idOf, platformOf, writeNew } from '../write-new.ts';

/** What a script says of a new guide; what it leaves out is asked of a person, where there is one. */
interface NewGuideOptions {
  readonly guides: string;
  readonly title?: string;
  readonly platform?: string;
  readonly option: readonly string[];
  readonly kit: readonly string[];
  readonly from?: string;
}

/** `baybook new workspace`: a shop, a crib and fasteners to begin with, in a folder that has none. */
export async function newWorkspaceFolder(
  options: { readonly guides: string; readonly name?: string; readonly units?: 'metric' | 'us' },
  io: Io,
): Promise<ExitCode> {
  const name = await given(options.name, '--name', 'What is the shop called?', io);
  const units = options.units ?? (await askedUnits(io));
  await writeNew(join(io.cwd, options.guides), newWorkspace({ name, units }), io);
  io.out('Next: baybook new platform, then baybook new guide\n');
  return 0;
}

async function askedUnits({ ask }: Io): Promise<'metric' | 'us'> {
  const answer = ask ? await ask('Which units come first, metric or us? [metric] ') : '';
  return answer.trim().toLowerCase() === 'us' ? 'us' : 'metric';
}

/** `baybook new schemas`: what editors that know nothing of Baybook go by, for a workspace that was begun without. */
export async function newSchemaFiles(options: { readonly guides: string }, io: Io): Promise<ExitCode> {
  const { root } = await workspaceFolder(options.guides, io);
  await writeNew(root, newSchemas(), io);
  io.out(
    'Next: the first line of a file, # yaml-language-server: $schema=.schemas/tools.json, names its own\n',
  );
  return 0;
}

/** `baybook new platform`: a vehicle that guides are for. */
export async function newPlatformFile(
  id: string | undefined,
  options: { readonly guides: string; readonly title?: string; readonly option: readonly string[] },
  io: Io,
): Promise<ExitCode> {
  const { root } = await workspaceFolder(options.guides, io);
  const title = await given(options.title, '--title', 'Which vehicle is it, as it is headed?', io);
  const asked = options.title === undefined ? await askOptions([], io) : [];
  const all = [...options.option.map(optionOf), ...asked];
  const name = idOf(id, title);
  await writeNew(root, new Map([[`platforms/${name}.md`, newPlatform(title, all)]]), io);
  io.out(`Next: baybook new guide --platform ${name}\n`);
  return 0;
}

/** `baybook new procedure`: strip-down that several guides share. */
export async function newProcedureFile(
  id: string | undefined,
  options: { readonly guides: string; readonly title?: string },
  io: Io,
): Promise<ExitCode> {
  const { root } = await workspaceFolder(options.guides, io);
  const title = await given(options.title, '--title', 'What is done, as it is headed?', io);
  const name = idOf(id, title);
  await writeNew(root, new Map([[`procedures/${name}.md`, newProcedure(name, title)]]), io);
  io.out(`Place it in a guide: ::procedure{of=${name} #${name}-here}\n`);
  return 0;
}

/** `baybook new guide`: a guide that says what is known and marks what is not, or one from a guide for another platform. */
export async function newGuideFolder(
  id: string | undefined,
  options: NewGuideOptions,
  io: Io,
): Promise<ExitCode> {
  const { root } = await workspaceFolder(options.guides, io);
  const workspace = await openWorkspace(diskFiles(root));
  const byHand = options.title === undefined;
  const title = await given(options.title, '--title', 'What is fitted, and where?', io);
  const name = idOf(id, title);
  const platform = await platformOf(options.platform, workspace, io);
  const declared = new Set(workspace.shop.platforms.get(platform)?.builds.options.map((one) => one.id));
  const path = `${name}/guide.md`;
  if (options.from !== undefined) {
    const other = otherGuide(options.from, workspace);
    const text = await readFile(join(root, other), 'utf8');
    const made = guideFrom({ text, title, platform, platformOptions: declared });
    await writeNew(root, new Map([[path, made]]), io);
    await copyBeside(join(root, dirname(other)), join(root, name));
  } else {
    const typed = options.option.map(optionOf);
    const optionsOfGuide = [...typed, ...(byHand ? await askOptions([...declared], io) : [])];
    const kit = [...options.kit, ...(byHand ? await askList(kitQuestion, io) : [])];
    const facts = {
      title,
      platform,
      options: optionsOfGuide.filter((one) => !declared.has(one.id)),
      kit: kitTyped(kit),
    };
    await writeNew(root, new Map([[path, newGuide(facts)]]), io);
  }
  io.out(`Next: fill what is marked "${fillIn}"; baybook check ${name} lists what is left\n`);
  return 0;
}

const kitQuestion = 'What is in the box? One thing a line, as in "M8 nut x4"; an empty line ends';

/** Pictures and outlines that stand beside a guide; its text is written anew. */
async function copyBeside(from: string, to: string): Promise<void> {
  await cp(from, to, {
    recursive: true,
    force: false,
    errorOnExist: false,
    filter: (path) => !/(?:^|[\\/])(?:guide\.md|releases(?:\.yaml)?)$/.test(path),
  });
}

function otherGuide(id: string, { found }: Workspace): string {
  const path = found.guides.find((one) => guideId(one) === id);
  if (path !== undefined) return path;
  const ids = found.guides.map(guideId);
  const help =
    didYouMean(nearest(id, ids)) || (ids.length > 0 ? `there are ${ids.join(', ')}` : 'there is none');
  throw new UsageError(`--from: there is no guide "${id}"; ${help}`);
}

async function askOptions(declared: readonly string[], io: Io): Promise<readonly NewOption[]> {
  const known = declared.length > 0 ? ` (the platform has ${declared.join(', ')})` : '';
  const question = `What do some vehicles have and others not${known}? One a line, as in "fog=Front fog lamps"; a vehicle without it asks for no line; an empty line ends`;
  return (await askList(question, io)).map(optionOf);
}

function optionOf(typed: string): NewOption {
  const option = readOption(typed);
  if (option) return option;
  throw new UsageError(`"${typed}" gives no id for an option; write it as in fog=Front fog lamps`);
}

/** The answers up to an empty one; none where nobody can be asked. */
async function askList(question: string, { ask, out }: Io): Promise<readonly string[]> {
  if (!ask) return [];
  out(`${question}\n`);
  const answers: string[] = [];
  for (let answer = await ask('  '); answer.trim() !== ''; answer = await ask('  '))
    answers.push(answer.trim());
  return answers;
}
